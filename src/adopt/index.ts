import { type AdoptedGuide, type DraftFor, draftOf } from './draft.ts';
import { lostWords } from './lost.ts';
import { oldOutline } from './outline.ts';
import { type ReadBeside, readOldGuide } from './read/read-old-guide.ts';

export type { AdoptedGuide } from './draft.ts';
export { Unreadable } from './read/old-guide.ts';

/** Reads an old guide and drafts one from it: see `readOldGuide` and `draftOf`. Throws `Unreadable`. */
export async function adopted(
  name: string,
  bytes: Uint8Array,
  readBeside: ReadBeside,
  given: DraftFor,
): Promise<AdoptedGuide> {
  const old = await readOldGuide(name, bytes, readBeside);
  const draft = draftOf(oldOutline(old), given);
  return { ...draft, text: draft.text + lostWords(old.blocks, draft.text).join('\n') };
}
