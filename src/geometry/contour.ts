import { type Bounds, type Point, samePoint, unite } from './point.ts';
import {
  areaUnder,
  endOf,
  flattenSegment,
  lengthOf,
  reversed,
  type Segment,
  segmentBounds,
  startOf,
} from './segment.ts';

/** Lines and arcs, each beginning where the one before it ends; a closed one ends where it began. */
export interface Contour {
  readonly segments: readonly Segment[];
  readonly closed: boolean;
}

/** Area inside a closed contour, mm²: positive where it runs counter-clockwise. */
function signedArea(contour: Contour): number {
  return contour.segments.reduce((sum, segment) => sum + areaUnder(segment), 0);
}

/** Area inside a closed contour, mm². */
export function area(contour: Contour): number {
  return Math.abs(signedArea(contour));
}

/** Length along the contour, mm. */
export function perimeter(contour: Contour): number {
  return contour.segments.reduce((sum, segment) => sum + lengthOf(segment), 0);
}

/** The smallest upright rectangle around the contour, arcs taken exactly. */
export function contourBounds(contour: Contour): Bounds {
  return unite(contour.segments.map(segmentBounds));
}

/** The same contour run the other way. */
function reverseContour(contour: Contour): Contour {
  return { closed: contour.closed, segments: contour.segments.toReversed().map(reversed) };
}

/** The contour run counter-clockwise. */
export function counterClockwise(contour: Contour): Contour {
  return signedArea(contour) < 0 ? reverseContour(contour) : contour;
}

/** The end of the contour and the start it fails to meet, or `null` where it closes. */
export function gapOf(contour: Contour): { readonly from: Point; readonly to: Point } | null {
  const first = contour.segments[0];
  const last = contour.segments.at(-1);
  if (!first || !last) return null;
  const gap = { from: endOf(last), to: startOf(first) };
  return samePoint(gap.from, gap.to) ? null : gap;
}

/** Points around the contour whose chords stay within `tolerance` mm of it. */
export function flatten(contour: Contour, tolerance: number): Point[] {
  const first = contour.segments[0];
  if (!first) return [];
  const points = contour.segments.flatMap((segment) => flattenSegment(segment, tolerance));
  return contour.closed ? points : [startOf(first), ...points];
}

/** The circle that the contour is, or `null`. */
export function asCircle(contour: Contour): { readonly centre: Point; readonly radius: number } | null {
  const [first, ...others] = contour.segments;
  if (!contour.closed || first?.kind !== 'arc') return null;
  const alike = others.every(
    (s) => s.kind === 'arc' && samePoint(s.centre, first.centre) && Math.abs(s.radius - first.radius) < 1e-9,
  );
  return alike ? { centre: first.centre, radius: first.radius } : null;
}
