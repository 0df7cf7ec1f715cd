import type { Guide, Step } from '../../model/guide.ts';
import type { Span } from '../../source/span.ts';

/** The place in the guide's own file at which a step stands: its line, or that of what brought or derived it. */
export function ownPlace({ at, origins }: Step, { file }: Pick<Guide, 'file'>): Span {
  const last = origins.at(-1);
  if (last?.kind === 'reverse' && last.at.file === file) return last.at;
  return origins[0]?.at ?? at;
}
