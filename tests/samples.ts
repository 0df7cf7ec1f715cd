/** True under `npm run test:long`, which a release runs: every sample of every set is tried. */
export const long = process.env.LONG === '1';

/** How many of something a test tries: a few in each run, all in the long one. */
export function samples(few: number, all: number): number {
  return long ? all : few;
}

/**
 * Parameters for fast-check: the same few samples in each run, so that a run says the same each time; in the long
 * run as many as are asked for, and other ones each time (a failure prints the seed that brings it back).
 */
export function runs(few: number, all: number): { readonly numRuns: number; readonly seed?: number } {
  return long ? { numRuns: all } : { numRuns: few, seed: 1 };
}

/** Of a list, `few` members spread evenly over it, the same ones in each run; in the long run all of them. */
export function sampleOf<T>(list: readonly T[], few: number): readonly T[] {
  if (long || list.length <= few) return list;
  return Array.from({ length: few }, (_, i) => list[Math.floor((i * list.length) / few)] as T);
}

/** Colour schemes with widths in pixels to look at a page in: each scheme at one end in each run, all pairs in the long one. */
export function screens(...widths: readonly number[]): readonly (readonly ['light' | 'dark', number])[] {
  const [first = 390, last = first] = [widths[0], widths.at(-1)];
  if (!long) return [['light', first] as const, ['dark', last] as const];
  return widths.flatMap((width) => [['light', width] as const, ['dark', width] as const]);
}
