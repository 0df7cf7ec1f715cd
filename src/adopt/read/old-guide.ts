/** Where something stands in an old guide, as an author would look for it: `line 14`, `paragraph 8`. */
export type OldPlace = string;

/** A picture of an old guide: its bytes, or why there are none. */
export type OldPicture =
  | { readonly bytes: Uint8Array; readonly name: string; readonly alt: string }
  | { readonly bytes: null; readonly why: string; readonly alt: string };

/** A piece of an old guide, in the order of its text. Texts have single spaces; a line break parts paragraphs. */
export type OldBlock = { readonly place: OldPlace } & (
  | { readonly kind: 'heading'; readonly text: string }
  /** `lead` is the bold text with which it begins; all of it where all is bold. */
  | { readonly kind: 'paragraph'; readonly text: string; readonly lead: string; readonly inItem: boolean }
  /** An item of a list; `level` 0 is the outermost. */
  | { readonly kind: 'item'; readonly text: string; readonly level: number; readonly numbered: boolean }
  /** A row of a table, with the number of its table. */
  | { readonly kind: 'row'; readonly cells: readonly string[]; readonly table: number }
  | { readonly kind: 'picture'; readonly picture: OldPicture }
  /** What cannot come into a guide, and what it was. */
  | { readonly kind: 'aside'; readonly text: string; readonly was: string }
);

/** An old guide as it was read. */
export interface OldGuide {
  /** What the file itself calls it, apart from its text; empty where it does not. */
  readonly title: string;
  readonly blocks: readonly OldBlock[];
}

/** An old guide that cannot be read; the message tells the author why, and what to do. */
export class Unreadable extends Error {}

/** Letters and digits of a text, by which words are found again however they are set. */
export function lettersOf(text: string): string {
  return text
    .normalize('NFKC')
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, '');
}

/** Text with its spaces, no-break ones too, made single. */
export function plainSpaces(text: string): string {
  return text.replace(/[\s\u00a0\u2007\u202f]+/gu, ' ').trim();
}

/** All words that a piece holds. */
export function wordsIn(block: OldBlock): string {
  switch (block.kind) {
    case 'row':
      return block.cells.join(' ');
    case 'picture':
      return block.picture.alt;
    default:
      return block.text;
  }
}
