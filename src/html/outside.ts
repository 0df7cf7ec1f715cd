/**
 * A function that changes a page outside of the elements of some names: these stay as they are, to the byte.
 *
 * @param names of elements that hold none of their own kind
 */
export function outside(
  names: readonly string[],
  change: (part: string) => string,
): (html: string) => string {
  const any = names.join('|');
  const kept = new RegExp(`(<(?:${any})\\b.*?</(?:${any})>)`, 's');
  // Every second part is kept as it is, since it is caught.
  return (html) =>
    html
      .split(kept)
      .map((part, index) => (index % 2 === 1 ? part : change(part)))
      .join('');
}
