import { SaxesParser, type SaxesTagNS } from 'saxes';
import { Refused } from './refused.ts';

/** An element of a drawing, with the line on which its tag ends. */
export interface SvgElement {
  /** Its local name; empty for an element of another namespace. */
  readonly name: string;
  readonly attributes: ReadonlyMap<string, string>;
  readonly children: readonly SvgElement[];
  /** What stands in it as text, for a style sheet; other text is not kept. */
  readonly text: string;
  readonly line: number;
}

type Growing = SvgElement & { children: SvgElement[]; text: string };

const SVG = 'http://www.w3.org/2000/svg';
const XLINK = 'http://www.w3.org/1999/xlink';
const INKSCAPE = 'http://www.inkscape.org/namespaces/inkscape';

const MAX_CHARACTERS = 4_000_000;

/** More elements than this, or deeper ones, are no outline of a part. */
export const MAX_ELEMENTS = 20_000;
export const MAX_DEPTH = 64;

/** Characters that are handed to the parser at a time. */
const PIECE = 16_384;

/** Attributes keep their local name; those of other namespaces carry its usual prefix, or are dropped. */
function attributesOf({ attributes }: SaxesTagNS): Map<string, string> {
  const kept = new Map<string, string>();
  for (const { uri, local, value } of Object.values(attributes)) {
    if (uri === '') kept.set(local, value);
    else if (uri === XLINK) kept.set(`xlink:${local}`, value);
    else if (uri === INKSCAPE) kept.set(`inkscape:${local}`, value);
  }
  return kept;
}

/** Reads a drawing with a strict XML parser that knows no entities of a document's own. */
export function readTree(text: string): SvgElement {
  if (text.length > MAX_CHARACTERS) throw new Refused(`the file is larger than ${MAX_CHARACTERS / 1e6} MB`);
  const parser = new SaxesParser({ xmlns: true });
  const open: Growing[] = [];
  let root: SvgElement | null = null;
  let count = 0;
  const refuse = (message: string): never => {
    throw new Refused(message, parser.line);
  };
  parser.on('error', (error) => {
    const what = error.message.replace(/^\d+:\d+:\s*/, '').replace(/\.$/, '');
    refuse(`this is not sound XML (${what})`);
  });
  parser.on('doctype', (doctype) => {
    if (doctype.includes('[')) refuse('the file declares entities; save it without its DOCTYPE');
  });
  parser.on('processinginstruction', ({ target }) => {
    if (target === 'xml-stylesheet') refuse('the file asks for a style sheet, which is not read');
  });
  parser.on('opentag', (tag) => {
    count += 1;
    if (count > MAX_ELEMENTS || open.length >= MAX_DEPTH)
      refuse(`the file has more than ${MAX_ELEMENTS} elements, or groups over ${MAX_DEPTH} deep`);
    const ours = tag.uri === SVG || tag.uri === '';
    const element: Growing = {
      name: ours ? tag.local : '',
      attributes: attributesOf(tag),
      children: [],
      text: '',
      line: parser.line,
    };
    open.at(-1)?.children.push(element);
    root ??= element;
    open.push(element);
  });
  parser.on('closetag', () => void open.pop());
  const keep = (words: string): void => {
    const element = open.at(-1);
    if (element?.name === 'style') element.text += words;
  };
  parser.on('text', keep);
  parser.on('cdata', keep);
  for (let start = 0; start < text.length; start += PIECE) parser.write(text.slice(start, start + PIECE));
  parser.close();
  const found = root as SvgElement | null;
  if (found?.name !== 'svg') throw new Refused('this is not an SVG file');
  return found;
}
