import { type Affine, compose, shiftBy, turnBy, UNMOVED } from './affine.ts';

/** CSS pixels for each absolute unit of length (CSS Values 4, 6.2). */
const PIXELS: Readonly<Record<string, number>> = {
  '': 1,
  px: 1,
  mm: 96 / 25.4,
  cm: 960 / 25.4,
  in: 96,
  pt: 96 / 72,
  pc: 16,
  q: 96 / 101.6,
};

/** Millimetres in a CSS pixel: an inch has 96 of them. */
export const MM_PER_PIXEL = 25.4 / 96;

/** A length as it is written: a number and its unit, lower case. */
interface WrittenLength {
  readonly value: number;
  readonly unit: string;
}

const NUMBER = '[-+]?(?:\\d+\\.?\\d*|\\.\\d+)(?:e[-+]?\\d+)?';
const LENGTH = new RegExp(`^(${NUMBER})([a-z]*|%)$`, 'i');

/** A length, or `null` for what is none. */
export function readLength(text: string): WrittenLength | null {
  const found = LENGTH.exec(text.trim());
  return found ? { value: Number(found[1]), unit: (found[2] ?? '').toLowerCase() } : null;
}

/** Whether a length is of a size that can be held against a rule. */
export function isReal({ unit }: WrittenLength): boolean {
  return unit !== '' && unit !== 'px' && unit in PIXELS;
}

/** A length in pixels; a percentage is of `whole`. `null` for a unit that depends on a font or a screen. */
export function pixelsOf({ value, unit }: WrittenLength, whole: number): number | null {
  if (unit === '%') return (value * whole) / 100;
  const factor = PIXELS[unit];
  return factor === undefined ? null : value * factor;
}

const SEPARATOR = /[ \t\n\r\f]*,?[ \t\n\r\f]*/y;
const ONE_NUMBER = new RegExp(NUMBER, 'iy');

/** Numbers with blanks or one comma between them; `null` where anything else stands there. Linear in the text. */
export function readNumbers(text: string): number[] | null {
  const numbers: number[] = [];
  const trimmed = text.trim();
  let at = 0;
  while (at < trimmed.length) {
    ONE_NUMBER.lastIndex = at;
    const found = ONE_NUMBER.exec(trimmed);
    if (!found) return null;
    numbers.push(Number(found[0]));
    SEPARATOR.lastIndex = ONE_NUMBER.lastIndex;
    SEPARATOR.exec(trimmed);
    at = SEPARATOR.lastIndex;
  }
  return numbers;
}

const ANGLES: Readonly<Record<string, number>> = { '': 1, deg: 1, grad: 0.9, rad: 180 / Math.PI, turn: 360 };

const ONE_STEP = /([a-z]+)[ \t\n\r\f]*\(([^()]*)\)[ \t\n\r\f]*,?[ \t\n\r\f]*/iy;

/**
 * The transform of an attribute or of a style property: `null` where it cannot be read. In a style lengths and
 * angles carry units (CSS Transforms 1), in an attribute they carry none.
 */
export function readTransform(text: string): Affine | null {
  const written = text.trim();
  if (written === '' || written === 'none') return UNMOVED;
  let whole = UNMOVED;
  let at = 0;
  while (at < written.length) {
    ONE_STEP.lastIndex = at;
    const found = ONE_STEP.exec(written);
    const step = found ? stepOf(found[1] ?? '', found[2] ?? '') : null;
    if (!step) return null;
    whole = compose(whole, step);
    at = ONE_STEP.lastIndex;
  }
  return whole;
}

function stepOf(name: string, inside: string): Affine | null {
  const words = inside.trim() === '' ? [] : inside.trim().split(/[ \t\n\r\f]*,[ \t\n\r\f]*|[ \t\n\r\f]+/);
  const all = words.length === 1 ? (readNumbers(inside)?.map(String) ?? words) : words;
  const values = all.map(readLength);
  if (values.some((one) => one === null)) return null;
  const given = values as WrittenLength[];
  const angle = (i: number): number => {
    const { value, unit } = given[i] ?? { value: 0, unit: '' };
    return value * (ANGLES[unit] ?? Number.NaN);
  };
  const shift = (i: number): number => {
    const one = given[i] ?? { value: 0, unit: '' };
    return one.unit === '%' ? Number.NaN : (pixelsOf(one, 0) ?? Number.NaN);
  };
  const plain = (i: number): number => (given[i]?.unit === '' ? (given[i]?.value ?? 0) : Number.NaN);
  const step = named(name, given.length, angle, shift, plain);
  return step?.every(Number.isFinite) ? step : null;
}

function named(
  name: string,
  count: number,
  angle: (i: number) => number,
  shift: (i: number) => number,
  plain: (i: number) => number,
): Affine | null {
  const slope = (degrees: number): number => Math.tan((degrees * Math.PI) / 180);
  const is = (...counts: number[]): boolean => counts.includes(count);
  switch (name) {
    case 'matrix':
      return is(6) ? [plain(0), plain(1), plain(2), plain(3), plain(4), plain(5)] : null;
    case 'translate':
      return is(1, 2) ? shiftBy(shift(0), count === 2 ? shift(1) : 0) : null;
    case 'translateX':
      return is(1) ? shiftBy(shift(0), 0) : null;
    case 'translateY':
      return is(1) ? shiftBy(0, shift(0)) : null;
    case 'scale':
      return is(1, 2) ? [plain(0), 0, 0, plain(count - 1), 0, 0] : null;
    case 'scaleX':
      return is(1) ? [plain(0), 0, 0, 1, 0, 0] : null;
    case 'scaleY':
      return is(1) ? [1, 0, 0, plain(0), 0, 0] : null;
    case 'rotate':
      if (is(1)) return turnBy(angle(0));
      return is(3) ? about(shift(1), shift(2), turnBy(angle(0))) : null;
    case 'skewX':
      return is(1) ? [1, 0, slope(angle(0)), 1, 0, 0] : null;
    case 'skewY':
      return is(1) ? [1, slope(angle(0)), 0, 1, 0, 0] : null;
    case 'skew':
      return is(1, 2) ? [1, count === 2 ? slope(angle(1)) : 0, slope(angle(0)), 1, 0, 0] : null;
    default:
      return null;
  }
}

/** A transform about a point instead of about zero. */
export function about(x: number, y: number, transform: Affine): Affine {
  return compose(shiftBy(x, y), compose(transform, shiftBy(-x, -y)));
}
