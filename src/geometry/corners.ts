import type { Contour } from './contour.ts';
import {
  add,
  cross,
  distanceBetween,
  dot,
  leftOf,
  type Point,
  samePoint,
  scale,
  subtract,
  unit,
} from './point.ts';
import { arcAround, line, type Segment } from './segment.ts';

/** A corner of a polygon; radius 0 leaves it sharp. */
export interface Corner {
  readonly point: Point;
  readonly radius: number;
}

/** A radius that does not fit: the two sides have less length left than the rounding takes. */
export interface CornerMisfit {
  readonly corner: number;
  /** The largest radius that would fit with the other corners left as they are, mm. */
  readonly largest: number;
}

/** Turn at a corner, and how much of each side a rounding of radius 1 takes. */
function turnAt(before: Point, at: Point, after: Point): { readonly takes: number; readonly left: boolean } {
  const incoming = unit(subtract(at, before));
  const outgoing = unit(subtract(after, at));
  const turn = Math.atan2(cross(incoming, outgoing), dot(incoming, outgoing));
  return { takes: Math.tan(Math.abs(turn) / 2), left: turn > 0 };
}

/** The corners whose radius does not fit between its neighbours; an empty list where all fit. */
export function cornerMisfits(corners: readonly Corner[]): CornerMisfit[] {
  const n = corners.length;
  const corner = (i: number): Corner => corners[(i + n) % n] as Corner;
  const takes = corners.map((c, i) => turnAt(corner(i - 1).point, c.point, corner(i + 1).point).takes);
  const taken = (i: number): number => (takes[(i + n) % n] ?? 0) * corner(i).radius || 0;
  return corners.flatMap(({ point, radius }, i) => {
    if (radius <= 0) return [];
    const room = [i - 1, i + 1].map((j) => distanceBetween(point, corner(j).point) - taken(j));
    const least = Math.min(...room);
    if (taken(i) <= least + 1e-9) return [];
    return [{ corner: i, largest: Math.max(0, least) / (takes[i] ?? 1) }];
  });
}

/** The closed contour through some corners, each rounded by its radius. The radii must fit. */
export function polygon(corners: readonly Corner[]): Contour {
  const n = corners.length;
  const ends = corners.map((c, i) => {
    const before = corners[(i + n - 1) % n] as Corner;
    const after = corners[(i + 1) % n] as Corner;
    const { takes, left } = turnAt(before.point, c.point, after.point);
    const back = scale(unit(subtract(before.point, c.point)), takes * c.radius);
    const ahead = scale(unit(subtract(after.point, c.point)), takes * c.radius);
    if (c.radius <= 0 || takes < 1e-12) return { enter: c.point, leave: c.point, rounding: null };
    const enter = add(c.point, back);
    const leave = add(c.point, ahead);
    const inward = scale(leftOf(unit(subtract(c.point, before.point))), left ? c.radius : -c.radius);
    return { enter, leave, rounding: arcAround(add(enter, inward), enter, leave, left) };
  });
  const segments: Segment[] = [];
  ends.forEach(({ leave, rounding }, i) => {
    if (rounding) segments.push(rounding);
    const next = ends[(i + 1) % n] as (typeof ends)[number];
    if (!samePoint(leave, next.enter, 1e-9)) segments.push(line(leave, next.enter));
  });
  return { segments, closed: true };
}
