import { SaxesParser } from 'saxes';
import {
  lettersOf,
  type OldBlock,
  type OldGuide,
  type OldPicture,
  plainSpaces,
  Unreadable,
  wordsIn,
} from './old-guide.ts';
import { pageFromHtml } from './page-tree.ts';
import { readPage } from './read-page.ts';
import { xmlParts } from './zip-parts.ts';

/** Styles that mammoth does not know as headings. */
const styles = [
  'p.Title => h1:fresh',
  "p[style-name='Title'] => h1:fresh",
  "p[style-name='Subtitle'] => p:fresh",
];

/** What mammoth leaves out of a page, and what it was. */
const besides: readonly (readonly [RegExp, string])[] = [
  [/^word\/header\d*\.xml$/, 'the head of each page'],
  [/^word\/footer\d*\.xml$/, 'the foot of each page'],
  [/^word\/footnotes\.xml$/, 'a footnote'],
  [/^word\/endnotes\.xml$/, 'an endnote'],
  [/^word\/comments\.xml$/, 'a comment'],
  [/^word\/document\.xml$/, 'the text, where it could not be placed'],
];

/**
 * Reads what a word processor wrote (Office Open XML, ECMA-376): mammoth makes a page of it, and every paragraph of the
 * file that is not on that page is told besides. Throws `Unreadable`.
 */
export async function readDocx(bytes: Uint8Array): Promise<OldGuide> {
  const parts = xmlParts(bytes);
  if (!parts.has('word/document.xml'))
    throw new Unreadable('it is a zip, but holds no text of a word processor');
  const paragraphs = besides.flatMap(([name, was]) =>
    [...parts].flatMap(([path, xml]) =>
      name.test(path) ? paragraphsOf(xml).map((text) => ({ text, was })) : [],
    ),
  );
  const { html, pictures } = await pageOf(bytes);
  const { blocks } = readPage(
    pageFromHtml(html, false),
    (address, alt) => pictures.get(address) ?? lost(alt),
  );
  const told = lettersOf(blocks.map(wordsIn).join(' '));
  const asides = paragraphs.flatMap(({ text, was }, index): readonly OldBlock[] => {
    const first = paragraphs.findIndex((one) => one.text === text && one.was === was) === index;
    return first && !told.includes(lettersOf(text)) ? [{ kind: 'aside', text, was, place: '' }] : [];
  });
  return { title: '', blocks: [...blocks, ...asides] };
}

function lost(alt: string): OldPicture {
  return { bytes: null, why: 'a picture that lies outside the file', alt };
}

async function pageOf(bytes: Uint8Array): Promise<{
  readonly html: string;
  readonly pictures: ReadonlyMap<string, OldPicture>;
}> {
  const { default: mammoth } = await import('mammoth');
  const pictures = new Map<string, OldPicture>();
  const convertImage = mammoth.images.imgElement(async (image) => {
    const src = `picture:${pictures.size + 1}`;
    const alt = 'altText' in image && typeof image.altText === 'string' ? plainSpaces(image.altText) : '';
    const name = `picture-${pictures.size + 1}`;
    const content = await image.readAsBuffer().catch(() => null);
    pictures.set(src, content ? { bytes: new Uint8Array(content), name, alt } : lost(alt));
    return { src };
  });
  const options = { styleMap: styles, convertImage, externalFileAccess: false };
  try {
    const { value } = await mammoth.convertToHtml({ buffer: Buffer.from(bytes) }, options);
    return { html: value, pictures };
  } catch (error) {
    throw new Unreadable(
      `its text cannot be read (${error instanceof Error ? error.message : String(error)})`,
    );
  }
}

/** The paragraphs of a part in order, as they print: what was struck out by a tracked change is none of it. */
function paragraphsOf(xml: string): readonly string[] {
  const found: string[] = [];
  const open: string[] = [];
  let reads = false;
  const parser = new SaxesParser();
  parser.on('doctype', () => {
    throw new Unreadable('it declares entities, which no word processor does');
  });
  parser.on('opentag', ({ name }) => {
    if (name === 'w:p') open.push('');
    reads = name === 'w:t';
    if (name === 'w:tab' || name === 'w:br') append(' ');
  });
  parser.on('text', (text) => {
    if (reads) append(text);
  });
  parser.on('closetag', ({ name }) => {
    reads = false;
    if (name !== 'w:p') return;
    const text = plainSpaces(open.pop() ?? '');
    if (text !== '') found.push(text);
  });
  const append = (text: string) => {
    if (open.length > 0) open[open.length - 1] += text;
  };
  try {
    parser.write(xml).close();
  } catch (error) {
    if (error instanceof Unreadable) throw error;
    throw new Unreadable('its text is damaged');
  }
  return found;
}
