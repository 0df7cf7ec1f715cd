/**
 * A function that changes what a pattern finds in a page outside of the elements of some names: these stay as they are,
 * to the byte. A page is gone through once, since each time is another copy of it.
 *
 * @param names of elements that hold none of their own kind
 * @param pattern catches nothing, and has no dot
 */
export function outside(
  names: readonly string[],
  pattern: RegExp,
  change: (found: string) => string,
): (html: string) => string {
  const any = names.join('|');
  const either = new RegExp(`(<(?:${any})\\b.*?</(?:${any})>)|${pattern.source}`, `${pattern.flags}s`);
  return (html) => html.replace(either, (found, kept?: string) => kept ?? change(found));
}
