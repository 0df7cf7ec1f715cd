import type { Point } from '../../geometry/point.ts';
import { parseQuantity } from '../../units/parse.ts';
import type { Done } from './bench.ts';
import { type SquareUp, squareUp } from './square-up.ts';

/** What was pressed on a photograph of a panel, in pixels of the upright picture. */
export interface PanelOrder {
  /** Two known lengths that are square to each other on the panel, as they were typed: "600 mm". */
  readonly known: readonly [PressedLength, PressedLength];
  /** The corners of the outline, one after the other. */
  readonly corners: readonly Point[];
  /** The corner from which all is measured, by its place in the list. */
  readonly zero: number;
  /** How many pixels of the picture one of the screen was at the coarsest press. */
  readonly within: number;
}

interface PressedLength {
  readonly from: Point;
  readonly to: Point;
  readonly typed: string;
}

/** What a photograph tells of a panel. */
export interface PanelReading {
  /** The outline as a template has it, in millimetres; empty where it has fewer than three corners. */
  readonly points: string;
  /** What the photograph was measured by, and how far off that can be, a sentence each. */
  readonly facts: readonly string[];
}

/** What writing a place to a tenth of a millimetre can take off it, mm. */
const ROUNDED = 0.05 * Math.SQRT2;

/** Reads what was pressed on a photograph of a panel. */
export function readPanel({ known, corners, zero, within }: PanelOrder): Done<PanelReading> {
  const lengths = known.map(({ typed }) => parseQuantity(typed, 'length'));
  const [one, other] = lengths;
  if (!one?.ok) return { ok: false, problem: `the first known length: ${one?.message}` };
  if (!other?.ok) return { ok: false, problem: `the second known length: ${other?.message}` };
  if (one.quantity.base <= 0 || other.quantity.base <= 0)
    return { ok: false, problem: 'a known length is longer than nothing' };
  const square = squareUp(
    { ...known[0], length: one.quantity.base },
    { ...known[1], length: other.quantity.base },
  );
  if (!square)
    return {
      ok: false,
      problem:
        'the two known lengths are not nearly square to each other in the picture; press others, or photograph the panel straight on',
    };
  const from = corners[zero];
  const places = from ? corners.map((corner) => square.place(corner, from)) : [];
  return {
    ok: true,
    value: {
      points: places.length < 3 ? '' : places.map(({ x, y }) => `${tenth(x)},${tenth(y)}`).join(' '),
      facts: [
        ...seenIn(square),
        ...(from && corners.length > 2 ? errorOf(square, corners, from, within) : []),
      ],
    },
  };
}

function seenIn({ across, up, skew, angle }: SquareUp): readonly string[] {
  return [
    `scale: ${across.toFixed(2)} pixels to a millimetre across, ${up.toFixed(2)} upwards; they differ by ${(skew * 100).toFixed(1)} %`,
    `the right angle between the two lengths is ${angle.toFixed(1)}° in the picture`,
  ];
}

function errorOf(
  square: SquareUp,
  corners: readonly Point[],
  from: Point,
  within: number,
): readonly string[] {
  const pointing = ROUNDED + Math.max(...corners.map((corner) => square.offByPointing(corner, from, within)));
  if (pointing === Infinity)
    return ['the known lengths are too short in this picture to tell anything; press longer ones'];
  const skew = Math.max(...corners.map((corner) => square.offBySkew(corner, from)));
  return [
    `a press that is one pixel of the screen beside its point makes up to ${above(pointing)} mm at a corner`,
    `the skew of the camera is taken out where the two lengths lie; where it is another, up to ${above(skew)} mm more`,
    `so a corner can be ${above(pointing + skew)} mm off, and a bent lens or a curved panel adds to that: measure on the panel before anything is cut`,
  ];
}

/** Millimetres to a tenth, as they stand in a guide. */
function tenth(value: number): string {
  return String(Math.round(value * 10) / 10 + 0);
}

/** An error is never said smaller than it is. */
function above(millimetres: number): string {
  return (Math.ceil(millimetres * 10) / 10).toFixed(1);
}
