import type { Contour } from './contour.ts';
import { polygon } from './corners.ts';
import { type Point, polar, subtract } from './point.ts';
import { arc, line } from './segment.ts';

/** A circle, counter-clockwise. */
export function circle(centre: Point, radius: number): Contour {
  return { closed: true, segments: [arc(centre, radius, 0, Math.PI), arc(centre, radius, Math.PI, Math.PI)] };
}

/** A rectangle with its lower left corner at a point, its corners rounded by `radius` (0 is sharp). */
export function rectangle(corner: Point, width: number, height: number, radius = 0): Contour {
  const { x, y } = corner;
  const points = [corner, { x: x + width, y }, { x: x + width, y: y + height }, { x, y: y + height }];
  return polygon(points.map((point) => ({ point, radius })));
}

/** A slot between the centres of its two round ends; equal centres give a circle. */
export function slot(from: Point, to: Point, width: number): Contour {
  const along = subtract(to, from);
  const radius = width / 2;
  if (Math.hypot(along.x, along.y) < 1e-9) return circle(from, radius);
  const right = Math.atan2(along.y, along.x) - Math.PI / 2;
  const left = right + Math.PI;
  return {
    closed: true,
    segments: [
      line(polar(from, radius, right), polar(to, radius, right)),
      arc(to, radius, right, Math.PI),
      line(polar(to, radius, left), polar(from, radius, left)),
      arc(from, radius, left, Math.PI),
    ],
  };
}

/** Points evenly spaced from one point to another, both included. One point stands at `from`. */
export function pointsOnLine(from: Point, to: Point, count: number): Point[] {
  return Array.from({ length: count }, (_, i) => {
    const t = count > 1 ? i / (count - 1) : 0;
    return { x: from.x + (to.x - from.x) * t, y: from.y + (to.y - from.y) * t };
  });
}

/** Points evenly spaced on a circle, counter-clockwise; `start` in degrees from +x. */
export function pointsOnCircle(centre: Point, diameter: number, count: number, start: number): Point[] {
  return Array.from({ length: count }, (_, i) =>
    polar(centre, diameter / 2, ((start + (360 * i) / count) * Math.PI) / 180),
  );
}
