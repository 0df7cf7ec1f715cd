import { add, distanceBetween, leftOf, midpoint, type Point, scale, subtract } from './point.ts';
import { type Arc, arc } from './segment.ts';

/**
 * The arc between two points with a DXF bulge: the tangent of a quarter of its sweep, positive where it runs
 * counter-clockwise (DXF reference, LWPOLYLINE, group 42).
 */
export function arcOfBulge(from: Point, to: Point, bulge: number): Arc {
  const sweep = 4 * Math.atan(bulge);
  const chord = distanceBetween(from, to);
  const radius = chord / 2 / Math.sin(Math.abs(sweep) / 2);
  const rise = chord / 2 / Math.tan(sweep / 2);
  const left = scale(leftOf(subtract(to, from)), 1 / chord);
  const centre = add(midpoint(from, to), scale(left, rise));
  return arc(centre, radius, Math.atan2(from.y - centre.y, from.x - centre.x), sweep);
}

/** The bulge of an arc; a full circle has none and is drawn as a circle. */
export function bulgeOf(segment: Arc): number {
  return Math.tan(segment.sweep / 4);
}
