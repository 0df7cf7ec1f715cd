import { inOneForm } from './number.ts';
import { findUnit, type Unit } from './table.ts';

/** One thing to look for in a text: a word, or a size with its unit. */
interface Piece {
  /** What a query looks for. */
  readonly main: string;
  /** What else the text is found by: the bare number of a size, the parts of a hyphenated word. */
  readonly more: readonly string[];
}

/** Words that tell one page from another nowhere. */
const empty = new Set('a an the of for to in on at by with and or is it how do i my'.split(' '));

const number = String.raw`(?:\d+ )?\d+\/\d+|\d+(?:\.\d+)?`;
/** A number or a range of two, with up to two words that may be its unit. */
const size = String.raw`(?<![\p{L}\d.\-])(${number})(?: ?(?:-|–|\.\.| to ) ?(${number}))?(?: ?-?([\p{L}°"']+[²³]?(?:[ ·.\-][\p{L}]+)?))?`;
const word = String.raw`[\p{L}\d]+(?:[-.·/][\p{L}\d]+)*`;
const scanner = new RegExp(`${size}(?![\\p{L}\\d])|${word}`, 'gu');

/**
 * The terms that a text is found by. Sizes are in one form, so that `13mm`, `13 mm` and `13 millimetres` are
 * one term and `25 Nm` and `25 N·m` another; a torque is also found by its whole number of the unit, and every
 * size by its bare number.
 */
export function indexTerms(text: string): readonly string[] {
  return [...new Set(piecesOf(text).flatMap(({ main, more }) => [main, ...more]))];
}

/** The terms that a query asks for, in the order of typing; a unit that was typed must be met. */
export function queryTerms(text: string): readonly string[] {
  return [...new Set(piecesOf(text).map(({ main }) => main))];
}

function piecesOf(text: string): readonly Piece[] {
  const plain = inOneForm(text)
    .toLowerCase()
    .replace(/(\d),(\d)/g, '$1.$2')
    .replace(/×/g, 'x')
    .replace(/(\p{L})'(?=\p{L})/gu, '$1');
  const pieces: Piece[] = [];
  scanner.lastIndex = 0;
  for (let found = scanner.exec(plain); found; found = scanner.exec(plain)) {
    const [all, first, second, unitText] = found;
    if (first === undefined) {
      pieces.push(...wordPieces(all));
      continue;
    }
    const unit = unitText === undefined ? null : unitAt(unitText);
    // What was no unit is a word of its own: the scan goes on behind the number.
    if (unitText !== undefined) scanner.lastIndex -= unitText.length - (unit?.length ?? 0);
    pieces.push(...[first, second].flatMap((value) => (value ? [sizePiece(value, unit?.unit)] : [])));
  }
  return pieces.filter(({ main }) => !empty.has(main));
}

/** The unit that a text begins with, and how many characters of it name the unit. */
function unitAt(text: string): { readonly unit: Unit; readonly length: number } | null {
  const alone = /^[^ ·.-]+/.exec(text)?.[0] ?? text;
  for (const candidate of [text, alone]) {
    const unit = findUnit(candidate, 'torque');
    if (unit) return { unit, length: candidate.length };
  }
  return null;
}

function sizePiece(written: string, unit: Unit | undefined): Piece {
  const value = valueIn(written);
  if (!unit) return { main: String(value), more: [] };
  const name = unit.name.toLowerCase().replace(/ /g, '');
  // People say "18 foot-pounds" of a torque that is printed as 18.4.
  const whole = unit.dimension === 'torque' ? [`${Math.round(value)}${name}`] : [];
  return { main: `${value}${name}`, more: [String(value), ...whole] };
}

function valueIn(written: string): number {
  const parts = written.split(' ').map((part) => {
    const [top = '', bottom] = part.split('/');
    return bottom === undefined ? Number(top) : Number(top) / Number(bottom);
  });
  return Number(parts.reduce((sum, part) => sum + part, 0).toFixed(4));
}

/** `fir-tree` asks for both words; `QL-220`, which holds a number, for one, as which it is also found. */
function wordPieces(text: string): readonly Piece[] {
  const parts = text.split(/[-·/]/).map(singular);
  if (parts.length === 1) return [{ main: singular(text), more: threadOf(text) }];
  const joined = parts.join('');
  if (/\d/.test(joined)) return [{ main: joined, more: parts }];
  return parts.map((part, index) => ({ main: part, more: index === 0 ? [joined] : [] }));
}

/** The diameter of a thread with its pitch: `m8` of `m8x1.25`. */
function threadOf(text: string): readonly string[] {
  const [, diameter] = /^(m\d+(?:\.\d+)?)x[\d.]+$/.exec(text) ?? [];
  return diameter ? [diameter] : [];
}

/** Without the s of a plural, so that "sensors" finds "sensor". */
function singular(text: string): string {
  return text.length > 3 && /[^s\d]s$/.test(text) ? text.slice(0, -1) : text;
}
