import type { Element } from 'hast';
import { s } from 'hastscript';
import { SaxesParser, type SaxesTagNS } from 'saxes';
import type { PictureBox } from '../../model/block.ts';
import type { Outcome, PictureCode, PictureProblem } from '../picture.ts';
import {
  allowedElements,
  SVG_NAMESPACE,
  silentElements,
  textElements,
  unsafeElements,
} from './svg-allowed.ts';
import { keptSvgAttributes } from './svg-attributes.ts';
import { elementsOf, references, unfoldedSize } from './svg-references.ts';
import { parseViewBox, prefixPaint, userLength } from './svg-values.ts';

/** A drawing that is safe to put into a page, as a tree in hast's SVG space. */
interface CleanDrawing {
  readonly element: Element;
  /** In user units, from the `viewBox`. */
  readonly width: number;
  readonly height: number;
  /** Whether the drawing says which way things go back on too. */
  readonly turns: boolean;
}

/** How a drawing is cleaned. */
export interface CleanOptions {
  /** Path from the workspace's root, for the messages. */
  readonly file: string;
  /** Put before every id, so that two drawings in one page do not clash. */
  readonly prefix: string;
  /** The part that is shown, as fractions of the drawing; without it, all. */
  readonly crop?: PictureBox | null;
  /** Shows which way things go back on, not which way they come off. */
  readonly turned?: boolean;
}

/** The layers of a drawing, by their ids, that show which way things come off, and go back on; one of them is shown. */
const WAY_OFF = 'way';
const WAY_BACK = 'way-back';

const MAX_CHARACTERS = 4_000_000;
const MAX_ELEMENTS = 20_000;
const MAX_DEPTH = 64;
const MAX_PROBLEMS = 20;

/** Characters that are handed to the parser at a time. */
const PIECE = 16_384;

/**
 * Reads a drawing with a strict XML parser that knows no entities of a document's own, and keeps only what the
 * allow-list names: shapes, paths, groups, text, gradients, clip paths, markers and own-id `use`. What is unsafe,
 * reaches outside or would look different once it is gone is a problem; what nobody sees goes without a word.
 */
export function cleanSvg(text: string, options: CleanOptions): Outcome<CleanDrawing> {
  const { file } = options;
  if (text.length > MAX_CHARACTERS) return { ok: false, problems: [tooComplex(file)] };
  const reading = readDrawing(text, file);
  if (!reading.root || reading.problems.length > 0) return { ok: false, problems: reading.problems };
  const { root } = reading;
  const problems = referenceProblems(root, file);
  if (problems.length > 0) return { ok: false, problems };
  const box = viewBoxOf(root);
  if (!box) {
    const message = `${file} has no size; its svg element needs a viewBox such as "0 0 400 300"`;
    return { ok: false, problems: [{ code: 'drawing-unreadable', message }] };
  }
  const turns = showWay(root, options.turned ?? false);
  prefixIds(root, options.prefix);
  return { ok: true, value: { ...framed(root, box, options.crop ?? null), turns } };
}

/** Leaves one of the two ways in the drawing, and tells whether it has the way back at all. */
function showWay(root: Element, turned: boolean): boolean {
  const { all, byId } = elementsOf(root);
  const turns = byId.has(WAY_BACK);
  if (!turns) return false;
  const [kept, dropped] = turned ? [WAY_BACK, WAY_OFF] : [WAY_OFF, WAY_BACK];
  // Whoever drew it may have hidden either.
  delete byId.get(kept)?.properties.display;
  const gone = byId.get(dropped);
  for (const element of all) element.children = element.children.filter((child) => child !== gone);
  return true;
}

interface Reading {
  readonly root: Element | null;
  readonly problems: readonly PictureProblem[];
}

/** One element that is open while the parser reads; what stands in a dropped one is dropped with it. */
interface Open {
  readonly element: Element | null;
}

function readDrawing(text: string, file: string): Reading {
  const problems = new Map<string, PictureProblem>();
  const parser = new SaxesParser({ xmlns: true });
  const stack: Open[] = [];
  let root: Element | null = null;
  let elements = 0;
  const problem = (code: PictureCode, what: string) => {
    const message = `${file}, line ${parser.line}: ${what}`;
    if (!problems.has(code + what)) problems.set(code + what, { code, message });
  };

  parser.on('doctype', (doctype) => {
    if (doctype.includes('[')) problem('drawing-unsafe', 'it declares entities; save it without its DOCTYPE');
  });
  parser.on('processinginstruction', ({ target }) => {
    if (target === 'xml-stylesheet')
      problem('drawing-reaches-outside', 'it asks for a style sheet; remove that line');
  });
  parser.on('opentag', (tag) => {
    elements += 1;
    if (elements > MAX_ELEMENTS || stack.length >= MAX_DEPTH) {
      problems.set('too-complex', tooComplex(file));
      stack.push({ element: null });
      return;
    }
    const parent = stack.at(-1);
    const dropped = parent !== undefined && parent.element === null;
    const element = dropped ? null : openElement(tag, parent === undefined, problem);
    if (element && parent?.element) parent.element.children.push(element);
    if (!parent) root = element;
    stack.push({ element });
  });
  parser.on('closetag', () => void stack.pop());
  const addText = (value: string) => {
    const element = stack.at(-1)?.element;
    if (element && textElements.has(element.tagName)) element.children.push({ type: 'text', value });
  };
  parser.on('text', addText);
  parser.on('cdata', addText);
  parser.on('error', (error) => {
    const what = error.message.replace(/^\d+:\d+:\s*/, '').replace(/\.$/, '');
    if (problems.size === 0) problem('drawing-unreadable', `it is not sound XML (${what})`);
  });
  // In pieces, so that reading stops soon after it has become pointless.
  for (let start = 0; start < text.length && problems.size < MAX_PROBLEMS; start += PIECE) {
    if (problems.has('too-complex')) break;
    parser.write(text.slice(start, start + PIECE));
  }
  if (!problems.has('too-complex') && problems.size < MAX_PROBLEMS) parser.close();
  if (!root && problems.size === 0) problem('drawing-unreadable', 'it does not begin with an svg element');
  return { root, problems: [...problems.values()] };
}

function openElement(
  tag: SaxesTagNS,
  isRoot: boolean,
  problem: (code: PictureCode, what: string) => void,
): Element | null {
  const name = tag.local;
  if (unsafeElements.has(name)) {
    problem('drawing-unsafe', `${name} can run code in the reader's browser; remove it`);
    return null;
  }
  if (tag.uri !== SVG_NAMESPACE && tag.uri !== '') return null;
  if (silentElements.has(name)) return null;
  const allowed = allowedElements.get(name);
  if (!allowed || (name === 'svg') !== isRoot) {
    problem('drawing-part-unsupported', unsupported(name));
    return null;
  }
  const attributes = keptSvgAttributes(tag, allowed, problem);
  if (isRoot && attributes.viewBox === undefined) Object.assign(attributes, sizeAsViewBox(tag));
  return s(name, attributes);
}

function unsupported(name: string): string {
  switch (name) {
    case 'style':
      return 'its style sheet would change the page around it; set colours and lines on the shapes themselves';
    case 'image':
      return 'it holds a photo; show the photo as a picture of its own';
    default:
      return `${name} is not kept in drawings; convert it to plain shapes`;
  }
}

/** A drawing that states its size without a `viewBox` means one of that size. */
function sizeAsViewBox(tag: SaxesTagNS): { viewBox?: string } {
  const width = userLength(tag.attributes.width?.value ?? '');
  const height = userLength(tag.attributes.height?.value ?? '');
  return width && height ? { viewBox: `0 0 ${width} ${height}` } : {};
}

function referenceProblems(root: Element, file: string): PictureProblem[] {
  const { all, byId } = elementsOf(root);
  const missing = new Set(all.flatMap(references).filter((id) => !byId.has(id)));
  if (missing.size === 0) return unfoldedSize(root) > MAX_ELEMENTS ? [tooComplex(file)] : [];
  return [...missing].map((id) => ({
    code: 'drawing-reaches-outside',
    message: `${file} points at #${id}, which is not in the drawing; draw it there, or remove what points at it`,
  }));
}

function prefixIds(root: Element, prefix: string): void {
  for (const { properties } of elementsOf(root).all) {
    for (const [name, value] of Object.entries(properties)) {
      if (typeof value !== 'string') continue;
      if (name === 'id') properties.id = prefix + value;
      else if (name === 'href') properties.href = `#${prefix}${value.slice(1)}`;
      else properties[name] = prefixPaint(value, prefix);
    }
  }
}

function viewBoxOf(root: Element): readonly [number, number, number, number] | null {
  const { viewBox } = root.properties;
  return typeof viewBox === 'string' ? parseViewBox(viewBox) : null;
}

function framed(
  root: Element,
  [x, y, width, height]: readonly [number, number, number, number],
  crop: PictureBox | null,
): Omit<CleanDrawing, 'turns'> {
  const part = crop ?? { left: 0, top: 0, width: 1, height: 1 };
  const shown = [x + part.left * width, y + part.top * height, part.width * width, part.height * height].map(
    round,
  );
  const [, , shownWidth = width, shownHeight = height] = shown;
  root.properties.viewBox = shown.join(' ');
  root.properties.width = String(shownWidth);
  root.properties.height = String(shownHeight);
  return { element: root, width: shownWidth, height: shownHeight };
}

function round(value: number): number {
  return Number(value.toFixed(3));
}

function tooComplex(file: string): PictureProblem {
  const message = `${file} has more than ${MAX_ELEMENTS} shapes, or groups over ${MAX_DEPTH} deep; simplify it`;
  return { code: 'drawing-too-complex', message };
}
