import type { Noun } from '../../model/item.ts';

/**
 * What an item is called: the label up to its first comma, for use within a sentence. The plural is the
 * regular one where the author gives none.
 */
export function nounOf(label: string, plural: string | null = null): Noun {
  const singular = lowered((label.split(',', 1)[0] ?? '').trim());
  return { label, singular, plural: plural ?? regularPlural(singular) };
}

/** Lowers the first letter, unless its word has a further capital or a digit: `LED lamp`, `M8 nut`, `T15 bit`. */
export function lowered(text: string): string {
  const word = /^\S*/.exec(text)?.[0] ?? '';
  if (/\p{Lu}|\p{Nd}/u.test(word.slice(1))) return text;
  return text.charAt(0).toLowerCase() + text.slice(1);
}

/** Raises the first letter, for the beginning of a sentence. */
export function capitalised(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** `wrench` → `wrenches`, `assembly` → `assemblies`, `bolt` → `bolts`; irregular ones are the author's. */
export function regularPlural(singular: string): string {
  if (/(?:[sxz]|[cs]h)$/.test(singular)) return `${singular}es`;
  if (/[^aeiou]y$/.test(singular)) return `${singular.slice(0, -1)}ies`;
  return `${singular}s`;
}

/** `a`, `a and b`, `a, b and c`; with another word for "and" where it is wanted. */
export function listed(words: readonly string[], last = 'and'): string {
  const head = words.slice(0, -1).join(', ');
  const tail = words.at(-1) ?? '';
  return head === '' ? tail : `${head} ${last} ${tail}`;
}
