/** What carries an id that the page has too: a step, a cut template, a heading. */
const placed =
  /^(?:::step\b|:::cut-template\b)[^\n]*\{[^}\n]*#([a-z0-9-]+)|^#{1,6} [^\n]*\{#([a-z0-9-]+)\}\s*$/;

/**
 * The id of the place in a text to which its first changed line belongs: the step, template or section above it.
 * `null` where nothing has changed, or nothing with an id stands above.
 */
export function editedPlace(before: string, after: string): string | null {
  if (before === after) return null;
  const [old, now] = [before.split(/\r\n|\n|\r/), after.split(/\r\n|\n|\r/)];
  const first = now.findIndex((line, index) => line !== old[index]);
  for (let index = first < 0 ? now.length - 1 : first; index >= 0; index -= 1) {
    const [, place, section] = placed.exec(now[index] ?? '') ?? [];
    const id = place ?? section;
    if (id !== undefined) return id;
  }
  return null;
}
