import type { CutCorner, CutPoint } from '../../model/cut-template.ts';
import type { Span } from '../../source/span.ts';
import { parseQuantity } from '../../units/parse.ts';
import { base, type Millimetres } from '../../units/quantity.ts';
import { type AttributeType, bad, good, type Meant, type Reading } from './attribute.ts';
import { placedWords } from './attribute-types.ts';

/** Coordinates as typed, before the directive's unit is known. */
interface TypedPoint {
  readonly x: number;
  readonly y: number;
  readonly radius: number | null;
  readonly at: Span;
}

const PAIR = /^(-?\d+(?:\.\d+)?|-?\.\d+),(-?\d+(?:\.\d+)?|-?\.\d+)$/;
const RADIUS = /^r(\d+(?:\.\d+)?)$/;

function readPoints(text: string, at: Span, radii: boolean): Reading<readonly TypedPoint[]> {
  const points: TypedPoint[] = [];
  for (const word of placedWords(text, at)) {
    const pair = PAIR.exec(word.value);
    if (pair) {
      points.push({ x: Number(pair[1]), y: Number(pair[2]), radius: null, at: word.at });
      continue;
    }
    const last = points.at(-1);
    const radius = RADIUS.exec(word.value);
    if (radii && radius && last && last.radius === null) {
      points[points.length - 1] = {
        ...last,
        radius: Number(radius[1]),
        at: { ...last.at, end: word.at.end },
      };
      continue;
    }
    if (/\d\s*(?:mm|cm|in)\b/.test(text)) {
      return bad(
        'coordinates are bare numbers "x,y"; their one unit stands in unit=mm (or in)',
        undefined,
        at,
      );
    }
    const comma = /^-?\d+,\d+,-?\d+/.test(word.value) ? '; decimals have a point, as in "0.5,40"' : '';
    const form = radii ? 'a point "x,y" or a corner\'s radius after it, "r6",' : 'a point "x,y"';
    return bad(
      `"${word.value}" was found where ${form} was expected${comma}${/,$/.test(word.value) ? '; no space stands after the comma' : ''}`,
      undefined,
      word.at,
    );
  }
  return points.length > 0 ? good(points) : bad('the value is empty; points "x,y" were expected');
}

/** Points, each of which may round its corner. */
export const corners: AttributeType<readonly TypedPoint[]> = {
  expects:
    'points set apart by spaces, each with a corner radius after it where it has one, as in `0,0 62,0 62,38 r6`',
  read: (text, at) => readPoints(text, at, true),
};

/** Plain points. */
export const points: AttributeType<readonly TypedPoint[]> = {
  expects: 'points, across and up, set apart by spaces, as in `0,0 40,0`',
  read: (text, at) => readPoints(text, at, false),
};

/** One point. */
export const onePoint: AttributeType<TypedPoint> = {
  expects: 'a point, across and up, as in `40,12.5`',
  read: (text, at) => {
    const reading = readPoints(text, at, false);
    if (!reading.ok) return reading;
    const [point, more] = reading.value;
    return point && !more ? good(point) : bad(`"${text}" was found where one point "x,y" was expected`);
  },
};

/** The unit of every bare coordinate of a directive, as millimetres to one of it. */
export const coordinateUnit: Meant<number> = {
  means: 'The unit of every coordinate on this line.',
  expects: 'the unit of the coordinates: `mm`, `cm` or `in`',
  read: (text) => {
    const one = parseQuantity(`1 ${text}`, 'length');
    return one.ok
      ? good(one.quantity.base)
      : bad(`"${text}" is no unit of length; "mm" or "in" was expected`);
  },
};

/** A typed point in millimetres. */
export function pointIn(typed: TypedPoint, millimetres: number): CutPoint {
  return { x: base<'length'>(typed.x * millimetres), y: base<'length'>(typed.y * millimetres) };
}

/** A typed corner in millimetres. */
export function cornerIn(typed: TypedPoint, millimetres: number): CutCorner {
  const radius: Millimetres | null =
    typed.radius === null ? null : base<'length'>(typed.radius * millimetres);
  return { point: pointIn(typed, millimetres), radius, at: typed.at };
}
