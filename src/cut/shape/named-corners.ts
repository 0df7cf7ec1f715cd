import type { Contour } from '../../geometry/contour.ts';
import type { Corner } from '../../geometry/corners.ts';
import { cross, dot, type Point, polar, samePoint } from '../../geometry/point.ts';
import { directionAt, fractionOfAngle, type Segment, startOf } from '../../geometry/segment.ts';

/** Where a line turns by more than this, radians, it has a corner; a curve made of short lines turns by less. */
const TURNS = (5 * Math.PI) / 180;

/** More corners than this cannot be told apart on a sheet: then the sharpest are named. */
const MOST = 40;

/**
 * The points of a maker's outline that are named and measured: its corners, where a line runs into an arc, and
 * the points that lie furthest to the left, to the right, above and below where it has no more than one corner.
 */
export function cornersToName({ segments }: Contour): readonly Corner[] {
  const joints = segments.flatMap((segment, i) => {
    const before = segments[i - 1] ?? segments.at(-1);
    if (!before) return [];
    const [u, v] = [directionAt(before, 1), directionAt(segment, 0)];
    const turn = Math.abs(Math.atan2(cross(u, v), dot(u, v)));
    const isJoint = turn > TURNS || before.kind !== segment.kind;
    return isJoint ? [{ i, turn, point: startOf(segment) }] : [];
  });
  const sharpest = joints.toSorted((a, b) => b.turn - a.turn || a.i - b.i).slice(0, MOST);
  const points = sharpest.sort((a, b) => a.i - b.i).map(({ point }) => point);
  return (points.length > 1 ? points : [...points, ...extremes(segments)]).map((point) => ({
    point,
    radius: 0,
  }));
}

function extremes(segments: readonly Segment[]): readonly Point[] {
  const all = segments.flatMap((segment) => [startOf(segment), ...turningPoints(segment)]);
  const reach: readonly ((p: Point) => number)[] = [(p) => -p.x, (p) => -p.y, (p) => p.x, (p) => p.y];
  const furthest = reach.map((far) => all.reduce((best, p) => (far(p) > far(best) + 1e-9 ? p : best)));
  return furthest.filter((p, i) => furthest.findIndex((other) => samePoint(other, p)) === i);
}

/** Where an arc runs upright or level. */
function turningPoints(segment: Segment): Point[] {
  if (segment.kind === 'line') return [];
  return [0, 1, 2, 3]
    .map((quarter) => (quarter * Math.PI) / 2)
    .filter((angle) => fractionOfAngle(segment, angle) !== null)
    .map((angle) => polar(segment.centre, segment.radius, angle));
}
