import { MAX_PICTURE_BYTES } from '../../pictures/limits.ts';
import { type OldGuide, type OldPicture, Unreadable } from './old-guide.ts';
import { pageFromHtml } from './page-tree.ts';
import { readMarkdownGuide } from './read-markdown.ts';
import { readPage } from './read-page.ts';
import { readPlainText } from './read-text.ts';

/** Bytes of an old guide at most, and characters of one that is text. */
const most = { bytes: 64 * 1024 * 1024, characters: 2_000_000 } as const;

/** Reads a file that lies beside the old guide or below it; `null` where there is none. */
export type ReadBeside = (path: string) => Uint8Array | null;

/** What other programs write, told by its first bytes, and what an author can do about it. */
const others: readonly (readonly [RegExp, string])[] = [
  [/^\xd0\xcf.\xe0/s, 'it is in the word processor’s old format; save it as .docx'],
  [
    /^%PDF/,
    'it is a PDF, which holds no order of its words; take the file that it was printed from, or save its text',
  ],
  [/^\{\\rtf/, 'it is rich text; save it as .docx'],
];

/**
 * Reads an old guide by what it is: the ending of its name, and its first bytes. Nothing is fetched; a picture comes from
 * within the file or from beside it. Throws `Unreadable`.
 */
export async function readOldGuide(
  name: string,
  bytes: Uint8Array,
  readBeside: ReadBeside,
): Promise<OldGuide> {
  if (bytes.length > most.bytes)
    throw new Unreadable(`it has ${Math.round(bytes.length / 1e6)} MB; 64 are read at most`);
  const begins = Buffer.from(bytes.subarray(0, 16)).toString('latin1');
  for (const [mark, why] of others) if (mark.test(begins)) throw new Unreadable(why);
  if (begins.startsWith('PK')) return (await import('./read-docx.ts')).readDocx(bytes);
  if (/\.docx$/i.test(name))
    throw new Unreadable('it is no file of a word processor, whatever its name says');
  const text = decoded(bytes);
  if (text.length > most.characters) throw new Unreadable('it is longer than any guide');
  const findPicture = (address: string, alt: string) => pictureAt(address, alt, readBeside);
  if (/\.html?$/i.test(name) || /^\s*<(?:!doctype|html)/i.test(text))
    return readPage(pageFromHtml(text, true), findPicture);
  if (/\.(?:md|markdown)$/i.test(name)) return readMarkdownGuide(text, findPicture);
  if (text.includes('\0')) throw new Unreadable('it is no text; .docx, .html, .md and .txt are read');
  return readPlainText(text);
}

/** Text by its byte order mark, else by what an HTML page says of itself, else UTF-8, else as older Windows wrote it. */
function decoded(bytes: Uint8Array): string {
  const begins = Buffer.from(bytes.subarray(0, 2048)).toString('latin1');
  if (begins.startsWith('\xff\xfe')) return new TextDecoder('utf-16le').decode(bytes);
  if (begins.startsWith('\xfe\xff')) return new TextDecoder('utf-16be').decode(bytes);
  const said = /<meta[^>]+charset\s*=\s*["']?([\w-]+)/i.exec(begins)?.[1] ?? 'utf-8';
  for (const encoding of [said, 'utf-8']) {
    if (/^(?:windows-1252|iso-8859-1|latin1|us-ascii)$/i.test(encoding)) break;
    try {
      return new TextDecoder(encoding, { fatal: true }).decode(bytes);
    } catch {
      // Not in this encoding, or it is none that is known: the next one is tried.
    }
  }
  return fromWindows1252(bytes);
}

/** What the bytes 80 to 9F mean (WHATWG Encoding, index windows-1252): Node 20 takes them for controls, as Latin-1 has them. */
const from80 = '€\u0081‚ƒ„…†‡ˆ‰Š‹Œ\u008dŽ\u008f\u0090‘’“”•–—˜™š›œ\u009džŸ';

function fromWindows1252(bytes: Uint8Array): string {
  const text = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength).toString('latin1');
  return text.replace(/[\u0080-\u009f]/g, (sign) => from80.charAt(sign.charCodeAt(0) - 0x80));
}

function pictureAt(address: string, alt: string, readBeside: ReadBeside): OldPicture {
  const [, encoded] = /^data:[\w/+.;=-]*;base64,([\s\S]*)$/.exec(address) ?? [];
  if (encoded !== undefined) {
    const bytes = new Uint8Array(Buffer.from(encoded, 'base64'));
    return { bytes, name: alt, alt };
  }
  if (/^(?:[a-z][a-z0-9+.-]*:|\/\/)/i.test(address)) {
    const shown = address.startsWith('data:')
      ? 'a picture in a form that is not read'
      : `a picture at ${address}`;
    return { bytes: null, why: shown, alt };
  }
  const path = pathOf(address);
  const bytes = path === '' ? null : readBeside(path);
  if (!bytes) return { bytes: null, why: `a picture at ${address}, which is not beside the old guide`, alt };
  if (bytes.length > MAX_PICTURE_BYTES)
    return { bytes: null, why: `a picture at ${address}, which is too large`, alt };
  return { bytes, name: path.replace(/^.*\//, '').replace(/\.\w+$/, ''), alt };
}

function pathOf(address: string): string {
  const path = (address.split(/[?#]/, 1)[0] ?? '').replaceAll('\\', '/');
  try {
    return decodeURIComponent(path);
  } catch {
    return path;
  }
}
