import { distance } from 'fastest-levenshtein';

/**
 * The names of a real list that are likely meant by a mistyped one: nearest first, at most three, none where
 * nothing is near. Near is one slip for every three letters (one for a short name), or a shared word of a
 * kebab-case name that is long enough to mean something (`socket` for `socket-7`).
 */
export function nearest(written: string, names: Iterable<string>): string[] {
  const typed = written.toLowerCase();
  const slips = Math.max(1, Math.floor(typed.length / 3));
  const words = typed.split('-').filter((word) => word.length >= 4);
  const ranked: { name: string; rank: number }[] = [];
  // What cannot come near the best so far is not worth a closer look: a crib may hold thousands.
  let worst = Number.POSITIVE_INFINITY;
  for (const name of new Set(names)) {
    if (name === written) continue;
    const other = name.toLowerCase();
    const longer = Math.abs(other.length - typed.length);
    if (longer > worst || (longer > slips && !sharesWord(words, other))) continue;
    const away = slipsBetween(typed, other);
    const rank = away <= slips ? away : slips + away;
    if (rank > worst || (away > slips && !sharesWord(words, other))) continue;
    ranked.push({ name, rank });
    worst = Math.min(worst, rank + 1);
  }
  ranked.sort((a, b) => a.rank - b.rank || (a.name < b.name ? -1 : 1));
  const best = ranked[0]?.rank ?? 0;
  return ranked
    .filter(({ rank }) => rank <= best + 1)
    .slice(0, 3)
    .map(({ name }) => name);
}

/** did you mean "a" or "b"? Empty for an empty list. */
export function didYouMean(names: readonly string[]): string {
  return names.length === 0 ? '' : `did you mean ${quotedList(names, 'or')}?`;
}

/** Names in quotes, as a person lists them: "a", "b" or "c". */
export function quotedList(names: readonly string[], word: 'and' | 'or'): string {
  const marked = names.map((name) => `"${name}"`);
  const last = marked.pop() ?? '';
  return marked.length === 0 ? last : `${marked.join(', ')} ${word} ${last}`;
}

/** Edits from one name to the other; two letters in the wrong order are one slip. */
function slipsBetween(a: string, b: string): number {
  const edits = distance(a, b);
  const letters = (name: string) => [...name].sort().join('');
  return edits === 2 && a.length === b.length && letters(a) === letters(b) ? 1 : edits;
}

function sharesWord(words: readonly string[], name: string): boolean {
  return words.some((word) => name.includes(word) && name.split('-').includes(word));
}
