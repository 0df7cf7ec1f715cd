import { fileURLToPath } from 'node:url';
import { setFlagsFromString } from 'node:v8';
import { Tinypool } from 'tinypool';
import type { FoldedResult } from './folded-result.ts';
import type { GroundPlan } from './ground.ts';

/** Several threads that take turns for guides side by side. */
export interface Crew {
  readonly takeTurn: (path: string) => Promise<FoldedResult>;
  readonly close: () => Promise<void>;
}

/** Megabytes of young heap in each thread: a guide's work is short-lived, and with room it is never copied about. */
const YOUNG_HEAP = 64;

/**
 * Megabytes of the rest of its heap: many times what the largest guide needs. Told a bound, a thread lets go of what
 * guides before left behind; told none, it holds on to a third more.
 */
const OLD_HEAP = 320;

/** Opens so many threads, each with its own reading of what the guides share. */
export function openCrew(plan: GroundPlan, size: number): Crew {
  const fromSource = import.meta.url.endsWith('.ts');
  // Every core has its guide: helpers that clear one thread's young heap would wait for, and take time from, the others.
  setFlagsFromString('--no-parallel-scavenge');
  const pool = new Tinypool({
    filename: fileURLToPath(new URL(`./crew-member.${fromSource ? 'ts' : 'js'}`, import.meta.url)),
    runtime: 'worker_threads',
    minThreads: size,
    maxThreads: size,
    // Run from source, a thread has to be told how to read it.
    execArgv: fromSource ? ['--import', 'tsx'] : [],
    resourceLimits: { maxYoungGenerationSizeMb: YOUNG_HEAP, maxOldGenerationSizeMb: OLD_HEAP },
  });
  return {
    takeTurn: (path) => pool.run({ path, plan }),
    close: () => pool.destroy(),
  };
}
