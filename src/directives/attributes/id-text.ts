/** Characters of an id at most: it becomes the name of a file and stands in the address of a printed code. */
const longestId = 64;

/** Whether a text is an id: lower-case letters, digits and single hyphens, 64 at most. */
export function isId(text: string): boolean {
  return text.length <= longestId && /^[a-z0-9]+(-[a-z0-9]+)*$/.test(text);
}

/** The id that an author most likely meant; undefined where nothing is left of it. */
export function idLike(text: string): string | undefined {
  const made = text
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .slice(0, longestId)
    .replace(/^-+|-+$/g, '');
  return made === '' ? undefined : made;
}

/** How long a text is that is too long for an id, in words for a finding; `null` where it is not. */
export function tooLongForId(text: string): string | null {
  return text.length > longestId
    ? `it has ${text.length} characters, and an id has ${longestId} at most`
    : null;
}
