import { EndType, inflatePathsD, JoinType, type PathsD } from 'clipper2-ts';
import { chain, mergePieces } from './chain.ts';
import { area, type Contour, contourBounds, counterClockwise, flatten, perimeter } from './contour.ts';
import { meetings } from './crossings.ts';
import { distanceToContour } from './distance.ts';
import { isInside } from './inside.ts';
import { add, boundsMeet, cross, dot, leftOf, type Point, scale } from './point.ts';
import {
  arc,
  directionAt,
  endOf,
  lengthOf,
  line,
  pieceOf,
  pointAt,
  type Segment,
  segmentBounds,
  startOf,
} from './segment.ts';

/** A mitre that would run further than this many offsets from its corner is rounded instead. */
const MITRE_LIMIT = 4;

/**
 * The closed contours that lie `distance` mm from a closed one: outside it where positive, inside where
 * negative. Arcs stay arcs. An inner offset that leaves nothing gives an empty list. `null` says that the
 * result does not agree with an independent offset of a fine polygon, and must not be used.
 */
export function offset(
  contour: Contour,
  distance: number,
  join: 'round' | 'mitre' = 'round',
): Contour[] | null {
  const original = counterClockwise(contour);
  if (distance === 0) return [original];
  const raw = original.segments.flatMap((segment, i) => {
    const next = original.segments[(i + 1) % original.segments.length] as Segment;
    return [...shifted(segment, distance), ...corner(segment, next, distance, join)];
  });
  const kept = splitAtMeetings(raw).filter((piece) => isTrue(piece, original, distance));
  const contours = chain(kept, 1e-5, false)
    .filter((c) => c.closed)
    .map(mergePieces);
  return agrees(original, contours, distance, join) ? contours : null;
}

/** A segment moved to the right of its travel (outwards, as contours run counter-clockwise). */
function shifted(segment: Segment, distance: number): Segment[] {
  if (segment.kind === 'line') {
    const out = scale(leftOf(directionAt(segment, 0)), -distance);
    return [line(add(segment.from, out), add(segment.to, out))];
  }
  const radius = segment.radius + (segment.sweep > 0 ? distance : -distance);
  return radius > 1e-9 ? [arc(segment.centre, radius, segment.start, segment.sweep)] : [];
}

/** What fills the gap at a corner where the two moved segments come apart. */
function corner(before: Segment, after: Segment, distance: number, join: 'round' | 'mitre'): Segment[] {
  const u = directionAt(before, 1);
  const v = directionAt(after, 0);
  const turn = Math.atan2(cross(u, v), dot(u, v));
  if (Math.abs(turn) < 1e-9 || turn > 0 !== distance > 0) return [];
  const at = endOf(before);
  const from = add(at, scale(leftOf(u), -distance));
  const to = add(at, scale(leftOf(v), -distance));
  const reach = 1 / Math.cos(turn / 2);
  if (join === 'mitre' && reach > 0 && reach <= MITRE_LIMIT) {
    const along = Math.abs(distance * Math.tan(turn / 2));
    const tip = add(from, scale(u, along));
    return [line(from, tip), line(tip, to)];
  }
  const start = Math.atan2(from.y - at.y, from.x - at.x);
  return [arc(at, Math.abs(distance), start, turn)];
}

/** Cuts every segment where it meets another. */
function splitAtMeetings(segments: readonly Segment[]): Segment[] {
  const cuts = segments.map(() => [0, 1]);
  const boxes = segments.map(segmentBounds);
  segments.forEach((a, i) => {
    for (let j = i + 1; j < segments.length; j++) {
      const b = segments[j] as Segment;
      if (!boundsMeet(boxes[i] as never, boxes[j] as never)) continue;
      for (const { first, second } of meetings(a, b)) {
        cuts[i]?.push(first);
        cuts[j]?.push(second);
      }
    }
  });
  return segments.flatMap((segment, i) => {
    const at = (cuts[i] ?? []).sort((a, b) => a - b);
    const length = lengthOf(segment);
    return at.slice(1).flatMap((to, k) => {
      const from = at[k] ?? 0;
      return (to - from) * length > 1e-7 ? [pieceOf(segment, from, to)] : [];
    });
  });
}

/** True where a piece lies on the right side of the contour and nowhere nearer to it than the offset. */
function isTrue(piece: Segment, original: Contour, distance: number): boolean {
  const middle: Point = pointAt(piece, 0.5);
  if (isInside(original, middle) !== distance < 0) return false;
  return distanceToContour(original, middle) >= Math.abs(distance) - 1e-9;
}

/** Compares the area with what clipper2 makes of a fine polygon; a gross difference is a fault of ours. */
function agrees(
  original: Contour,
  result: readonly Contour[],
  distance: number,
  join: 'round' | 'mitre',
): boolean {
  const size = contourBounds(original);
  const extent = Math.max(size.maxX - size.minX, size.maxY - size.minY) + 2 * Math.abs(distance);
  const paths: PathsD = [flatten(original, 1e-3)];
  const kind = join === 'mitre' ? JoinType.Miter : JoinType.Round;
  const guard = inflatePathsD(paths, distance, kind, EndType.Polygon, MITRE_LIMIT, 5, 1e-3);
  const expected = Math.abs(guard.reduce((sum, path) => sum + polygonArea(path), 0));
  const outer = result.map((c) => ({ contour: c, start: startOf(c.segments[0] as Segment) }));
  const found = outer.reduce((sum, { contour, start }) => {
    const within = outer.filter((o) => o.contour !== contour && isInside(o.contour, start)).length;
    return sum + (within % 2 === 0 ? area(contour) : -area(contour));
  }, 0);
  // Mitre limits are cut differently there, by at most the tip beyond the limit at each corner.
  const corners = join === 'mitre' ? original.segments.length * distance * distance * MITRE_LIMIT : 0;
  return Math.abs(found - expected) <= 4e-3 * (perimeter(original) + extent) + corners;
}

function polygonArea(path: readonly { readonly x: number; readonly y: number }[]): number {
  return path.reduce((sum, p, i) => sum + cross(p, path[(i + 1) % path.length] as Point) / 2, 0);
}
