import { SingleBar } from 'cli-progress';
import type { Io } from './io.ts';

/** Shows how far a long piece of work is. */
export interface Progress {
  readonly show: (done: number, of: number) => void;
  readonly stop: () => void;
}

/** A bar on standard error where somebody watches; elsewhere it shows nothing. */
export function progressBar({ watched }: Io): Progress {
  if (!watched) return { show: () => undefined, stop: () => undefined };
  const bar = new SingleBar({ format: 'writing the site {bar} {value} of {total}', clearOnComplete: true });
  return {
    show: (done, of) => (bar.isActive ? bar.update(done) : bar.start(of, done)),
    stop: () => bar.stop(),
  };
}
