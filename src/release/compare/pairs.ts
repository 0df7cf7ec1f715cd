/** What became of the entries of a list: each old one is at most one new one, in places that count from 0. */
export interface Pairing {
  /** In the order of the new list. */
  readonly pairs: readonly Pair[];
  readonly gone: readonly number[];
  readonly added: readonly number[];
}

interface Pair {
  readonly from: number;
  readonly to: number;
  /** Whether it has changed places with others that stay: the fewest that make one order of the other. */
  readonly moved: boolean;
}

/**
 * Pairs the entries of two lists, by each of some passes in turn: a pass pairs what is left and has the same key. A
 * key of `null` pairs nothing, and of several with one key the first pairs with the first.
 */
export function pair<T>(
  old: readonly T[],
  now: readonly T[],
  passes: readonly ((entry: T, isOld: boolean) => string | null)[],
): Pairing {
  const found = new Map<number, number>();
  const taken = new Set<number>();
  for (const keyOf of passes) {
    const waiting = new Map<string, number[]>();
    old.forEach((entry, from) => {
      const key = found.has(from) ? null : keyOf(entry, true);
      if (key !== null) waiting.set(key, [...(waiting.get(key) ?? []), from]);
    });
    now.forEach((entry, to) => {
      const key = taken.has(to) ? null : keyOf(entry, false);
      const from = key === null ? undefined : waiting.get(key)?.shift();
      if (from === undefined) return;
      found.set(from, to);
      taken.add(to);
    });
  }
  return pairing(found, old.length, now.length);
}

/** The pairing that some pairs make, with what has moved. */
export function pairing(found: ReadonlyMap<number, number>, old: number, now: number): Pairing {
  const byPlace = [...found].map(([from, to]) => ({ from, to })).sort((a, b) => a.to - b.to);
  const stays = longestRising(byPlace.map(({ from }) => from));
  const taken = new Set(byPlace.map(({ to }) => to));
  return {
    pairs: byPlace.map((one, index) => ({ ...one, moved: !stays.has(index) })),
    gone: range(old).filter((from) => !found.has(from)),
    added: range(now).filter((to) => !taken.has(to)),
  };
}

/** The places of the longest part of a list of different numbers that rises: what need not move. */
function longestRising(numbers: readonly number[]): ReadonlySet<number> {
  const best: { readonly length: number; readonly before: number | null }[] = [];
  numbers.forEach((value, place) => {
    let own = { length: 1, before: null as number | null };
    for (let earlier = 0; earlier < place; earlier += 1) {
      const one = best[earlier];
      const rises = (numbers[earlier] ?? 0) < value;
      if (one && rises && one.length + 1 > own.length) own = { length: one.length + 1, before: earlier };
    }
    best.push(own);
  });
  const longest = Math.max(0, ...best.map(({ length }) => length));
  let place: number | null = best.findIndex(({ length }) => length === longest);
  const stays = new Set<number>();
  while (place !== null && place >= 0) {
    stays.add(place);
    place = best[place]?.before ?? null;
  }
  return stays;
}

function range(length: number): readonly number[] {
  return Array.from({ length }, (_, index) => index);
}
