import type { Contour } from './contour.ts';
import { fractionAt, meetings } from './crossings.ts';
import { isInside } from './inside.ts';
import { add, distanceBetween, dot, leftOf, type Point, scale, subtract, unit } from './point.ts';
import { endOf, pointAt, type Segment, startOf } from './segment.ts';

/** The point of a segment that lies nearest to a point. */
export function nearestOn(segment: Segment, point: Point): Point {
  const ends = [startOf(segment), endOf(segment)];
  const foot = footOn(segment, point);
  const all = foot ? [foot, ...ends] : ends;
  return all.reduce((best, p) => (distanceBetween(p, point) < distanceBetween(best, point) ? p : best));
}

/** Where the perpendicular from a point meets the segment, or `null` where it misses. */
function footOn(segment: Segment, point: Point): Point | null {
  if (segment.kind === 'arc') {
    const t = fractionAt(segment, point);
    return t === null ? null : pointAt(segment, t);
  }
  const along = unit(subtract(segment.to, segment.from));
  const foot = add(segment.from, scale(along, dot(subtract(point, segment.from), along)));
  return fractionAt(segment, foot) === null ? null : foot;
}

/** Least distance between two segments, mm; 0 where they meet. */
function segmentDistance(a: Segment, b: Segment): number {
  if (meetings(a, b).length > 0) return 0;
  return Math.min(
    ...facing(a, b).map(([segment, point]) => distanceBetween(nearestOn(segment, point), point)),
  );
}

/** Points of which one lies nearest to the other segment, where two do not meet: each with that segment. */
function facing(a: Segment, b: Segment): readonly [Segment, Point][] {
  const pairs: [Segment, Point][] = [
    [a, startOf(b)],
    [a, endOf(b)],
    [b, startOf(a)],
    [b, endOf(a)],
  ];
  // Between the ends the shortest way stands square on both: it runs through the centre of an arc.
  if (b.kind === 'arc') pairs.push(...throughCentre(a, b.centre, b));
  if (a.kind === 'arc') pairs.push(...throughCentre(b, a.centre, a));
  return pairs;
}

/** The ends of the shortest line between the lines of two contours that do not meet. */
export function shortestBetween(a: Contour, b: Contour): { readonly from: Point; readonly to: Point } | null {
  let best: { readonly from: Point; readonly to: Point } | null = null;
  for (const first of a.segments) {
    for (const [segment, to] of b.segments.flatMap((second) => facing(first, second))) {
      const from = nearestOn(segment, to);
      if (!best || distanceBetween(from, to) < distanceBetween(best.from, best.to)) best = { from, to };
    }
  }
  return best;
}

/** Points of `other` (an arc about `centre`) that face the nearest and the farthest point of a segment. */
function throughCentre(segment: Segment, centre: Point, other: Segment): [Segment, Point][] {
  const directions: Point[] = [];
  if (segment.kind === 'arc') directions.push(unit(subtract(segment.centre, centre)));
  else directions.push(leftOf(unit(subtract(segment.to, segment.from))));
  return directions.flatMap((u) =>
    [u, scale(u, -1)].flatMap((way): [Segment, Point][] => {
      if (other.kind !== 'arc' || (way.x === 0 && way.y === 0)) return [];
      const point = add(centre, scale(way, other.radius));
      return fractionAt(other, point) === null ? [] : [[segment, point]];
    }),
  );
}

/** Least distance from a point to the line of a contour, mm. */
export function distanceToContour(contour: Contour, point: Point): number {
  return Math.min(...contour.segments.map((s) => distanceBetween(nearestOn(s, point), point)));
}

/** Least distance between the lines of two contours, mm; 0 where they touch or cross. */
export function lineDistance(a: Contour, b: Contour): number {
  let least = Infinity;
  for (const first of a.segments) {
    for (const second of b.segments) least = Math.min(least, segmentDistance(first, second));
  }
  return least;
}

/** Least distance between two closed areas, mm; 0 where they touch, overlap, or one holds the other. */
export function areaDistance(a: Contour, b: Contour): number {
  const [first, second] = [a.segments[0], b.segments[0]];
  if (!first || !second) return Infinity;
  if (isInside(a, startOf(second)) || isInside(b, startOf(first))) return 0;
  return lineDistance(a, b);
}
