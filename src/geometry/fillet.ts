import { carrierMeetings, fractionAt } from './crossings.ts';
import { add, cross, distanceBetween, dot, leftOf, type Point, scale, subtract, unit } from './point.ts';
import { type Arc, arc, arcAround, directionAt, endOf, line, type Segment } from './segment.ts';

/** The rounding of a corner between two segments, and where it takes over from them. */
export interface Fillet {
  readonly rounding: Arc;
  readonly enter: Point;
  readonly leave: Point;
  /** Fractions of the segment before the corner at which it is left, and of the one after it where that goes on. */
  readonly before: number;
  readonly after: number;
}

/** Directions that turn by less than this go on smoothly: there is no corner to round. */
const SMOOTH = 1e-9;

/** Whether one segment goes on into the next without a corner. */
export function isSmooth(incoming: Segment, outgoing: Segment): boolean {
  const [u, v] = [directionAt(incoming, 1), directionAt(outgoing, 0)];
  return Math.abs(cross(u, v)) < SMOOTH && dot(u, v) > 0;
}

/**
 * The arc of a radius that touches both segments at the corner where the first hands over to the second; `null`
 * where none touches them between their ends. Its centre lies a radius from each, on the inner side of the
 * corner: where the line or circle of each, moved inwards by the radius, meet nearest to the corner.
 */
export function filletOf(incoming: Segment, outgoing: Segment, radius: number): Fillet | null {
  const turn = cross(directionAt(incoming, 1), directionAt(outgoing, 0));
  if (Math.abs(turn) < SMOOTH) return null;
  const left = turn > 0;
  const [first, second] = [movedInwards(incoming, radius, left), movedInwards(outgoing, radius, left)];
  if (!first || !second) return null;
  const corner = endOf(incoming);
  const centres = carrierMeetings(first, second).sort(
    (a, b) => distanceBetween(a, corner) - distanceBetween(b, corner),
  );
  for (const centre of centres) {
    const [enter, leave] = [touchOn(incoming, centre), touchOn(outgoing, centre)];
    const [before, after] = [fractionAt(incoming, enter), fractionAt(outgoing, leave)];
    if (before === null || after === null) continue;
    return { rounding: arcAround(centre, enter, leave, left), enter, leave, before, after };
  }
  return null;
}

/** A segment moved to its left or right; `null` where its circle has no room for the radius. */
function movedInwards(segment: Segment, radius: number, left: boolean): Segment | null {
  const side = left ? radius : -radius;
  if (segment.kind === 'line') {
    const shift = scale(leftOf(directionAt(segment, 0)), side);
    return line(add(segment.from, shift), add(segment.to, shift));
  }
  const { centre, start, sweep } = segment;
  const moved = segment.radius - side * Math.sign(sweep);
  return moved > 0 ? arc(centre, moved, start, sweep) : null;
}

/** Where a circle around a centre touches the line or circle of a segment. */
function touchOn(segment: Segment, centre: Point): Point {
  if (segment.kind === 'arc') {
    const out = unit(subtract(centre, segment.centre));
    return add(segment.centre, scale(out, segment.radius));
  }
  const along = directionAt(segment, 0);
  return add(segment.from, scale(along, dot(subtract(centre, segment.from), along)));
}
