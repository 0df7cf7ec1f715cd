import { cross, distanceBetween, type Point, subtract } from '../../geometry/point.ts';

/** A length that is known on the panel: its ends in the upright picture (pixels, y down), and how long it is (mm). */
interface KnownLength {
  readonly from: Point;
  readonly to: Point;
  readonly length: number;
}

/** How places of a picture become places on a panel: two lengths come out true, and square to each other. */
export interface SquareUp {
  /** Pixels to a millimetre, along the length that lies across and along the one that stands up. */
  readonly across: number;
  readonly up: number;
  /** By how much the two scales differ, as a fraction of the smaller one. */
  readonly skew: number;
  /** What the picture makes of the right angle between them, degrees. */
  readonly angle: number;
  /** A pixel as seen from the one at zero: millimetres, x along the length across, y along the one that stands up. */
  readonly place: (pixel: Point, zero: Point) => Point;
  /**
   * The farthest that a place can be off (mm) where each point was pressed within so many pixels, across and down, of
   * where it is; infinite where the known lengths are too short for that.
   */
  readonly offByPointing: (pixel: Point, zero: Point, within: number) => number;
  /**
   * How far a place is off (mm) where the skew of the picture is left in it whole. The square-up takes it out where the
   * two lengths lie; how much of it differs elsewhere, two lengths cannot show.
   */
  readonly offBySkew: (pixel: Point, zero: Point) => number;
}

/** The least that may lie between the two lengths in a picture, degrees: below it they tell too little of each other. */
const LEAST_ANGLE = 45;

/** Squares a picture up by two lengths that are square to each other on the panel; `null` where the picture hardly shows them so. */
export function squareUp(one: KnownLength, other: KnownLength): SquareUp | null {
  const [lying, standing] = slope(one) <= slope(other) ? [one, other] : [other, one];
  const rightwards = upright(lying.from, lying.to);
  const a = rightwards.x < 0 ? upright(lying.to, lying.from) : rightwards;
  const upwards = upright(standing.from, standing.to);
  // The face of the panel is never turned over: up lies to the left of across.
  const b = cross(a, upwards) < 0 ? upright(standing.to, standing.from) : upwards;
  const angle = (Math.atan2(cross(a, b), a.x * b.x + a.y * b.y) * 180) / Math.PI;
  if (!(angle >= LEAST_ANGLE && angle <= 180 - LEAST_ANGLE)) return null;

  const across = distanceBetween(lying.from, lying.to) / lying.length;
  const up = distanceBetween(standing.from, standing.to) / standing.length;
  const skew = Math.abs(across - up) / Math.min(across, up);
  const placed = (way: Point, x: Point, y: Point): Point => ({
    x: (cross(way, y) / cross(x, y)) * lying.length,
    y: (cross(x, way) / cross(x, y)) * standing.length,
  });
  const place = (pixel: Point, zero: Point) => placed(upright(zero, pixel), a, b);
  return {
    across,
    up,
    skew,
    angle,
    place,
    offByPointing: (pixel, zero, within) => {
      // One press is as far off as itself.
      if (pixel === zero) return 0;
      const at = place(pixel, zero);
      let [offX, offY] = [0, 0];
      // Both coordinates rise or fall all the way with each single number that goes in, as long as the two lengths
      // keep their turn: the worst case lies at a corner of what is possible. Either end of a way can be off.
      for (const x of around(a, 2 * within))
        for (const y of around(b, 2 * within)) {
          if (cross(x, y) <= 0) return Infinity;
          for (const way of around(upright(zero, pixel), 2 * within)) {
            const worse = placed(way, x, y);
            offX = Math.max(offX, Math.abs(worse.x - at.x));
            offY = Math.max(offY, Math.abs(worse.y - at.y));
          }
        }
      return Math.hypot(offX, offY);
    },
    offBySkew: (pixel, zero) => {
      const { x, y } = place(pixel, zero);
      return Math.hypot(x, y) * (skew + Math.abs(Math.cos((angle * Math.PI) / 180)));
    },
  };
}

/** How much a length stands up in the picture, 0 to 1; one without an extent lies. */
function slope({ from, to }: KnownLength): number {
  const length = distanceBetween(from, to);
  return length === 0 ? 0 : Math.abs(to.y - from.y) / length;
}

/** The way between two pixels with y up, as on a panel. */
function upright(from: Point, to: Point): Point {
  const { x, y } = subtract(to, from);
  return { x, y: -y };
}

/** The corners of the square around a point. */
function around({ x, y }: Point, off: number): readonly Point[] {
  return [-off, off].flatMap((dx) => [-off, off].map((dy) => ({ x: x + dx, y: y + dy })));
}
