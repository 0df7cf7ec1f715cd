import type { Contour } from './contour.ts';
import { distanceBetween, type Point } from './point.ts';
import { arcThrough, endOf, line, pieceOf, pointAt, type Segment, startOf } from './segment.ts';

/** Length along a cylinder over a straight chord, mm: 2·R·asin(c / 2R). `NaN` where the chord is too long. */
export function arcOverChord(radius: number, chord: number): number {
  return 2 * radius * Math.asin(chord / (2 * radius));
}

/** The straight chord under a length along a cylinder, mm. */
export function chordUnderArc(radius: number, length: number): number {
  return 2 * radius * Math.sin(length / (2 * radius));
}

/** How far a cylinder stands above a chord at its middle, mm. */
export function sagitta(radius: number, chord: number): number {
  return radius - Math.sqrt(radius * radius - (chord * chord) / 4);
}

/** A panel curved about one axis; `crown` is the x (about a level axis the y) at which it faces the viewer squarely. */
export interface Curve {
  readonly radius: number;
  readonly crown: number;
  readonly axis: 'vertical' | 'horizontal';
}

/** Where a point of a straight projection lies when the panel is laid flat. `NaN` beyond the curve. */
export function unrollPoint({ x, y }: Point, { axis, radius, crown }: Curve): Point {
  const along = (at: number): number => crown + radius * Math.asin((at - crown) / radius);
  return axis === 'vertical' ? { x: along(x), y } : { x, y: along(y) };
}

/** Lays a contour of a straight projection flat, as lines and arcs that stay within `tolerance` mm of it. */
export function unrollContour(contour: Contour, curve: Curve, tolerance = 0.005): Contour {
  return {
    closed: contour.closed,
    segments: contour.segments.flatMap((segment) => unrollSegment(segment, curve, tolerance)),
  };
}

function unrollSegment(segment: Segment, curve: Curve, tolerance: number): Segment[] {
  const at = (t: number): Point => unrollPoint(pointAt(segment, t), curve);
  const fitted =
    segment.kind === 'line' && runsAlong(segment, curve)
      ? line(at(0), at(1))
      : arcThrough(at(0), at(0.5), at(1));
  const off = Math.max(...[0.125, 0.25, 0.375, 0.625, 0.75, 0.875].map((t) => distanceFrom(fitted, at(t))));
  const long = distanceBetween(startOf(segment), endOf(segment)) > 1e-3;
  const wide = segment.kind === 'arc' && Math.abs(segment.sweep) > Math.PI;
  if (!wide && (off <= tolerance || !long)) return [fitted];
  return [pieceOf(segment, 0, 0.5), pieceOf(segment, 0.5, 1)].flatMap((half) =>
    unrollSegment(half, curve, tolerance),
  );
}

/** Whether a line runs along the axis, and so stays straight. */
function runsAlong(segment: Segment, { axis }: Curve): boolean {
  const across = axis === 'vertical' ? 'x' : 'y';
  return Math.abs(startOf(segment)[across] - endOf(segment)[across]) < 1e-12;
}

/** Distance of a point from the whole line or circle that a segment is part of. */
function distanceFrom(segment: Segment, point: Point): number {
  if (segment.kind === 'arc') return Math.abs(distanceBetween(segment.centre, point) - segment.radius);
  const [dx, dy] = [segment.to.x - segment.from.x, segment.to.y - segment.from.y];
  const length = Math.hypot(dx, dy);
  if (length === 0) return distanceBetween(segment.from, point);
  return Math.abs(dx * (point.y - segment.from.y) - dy * (point.x - segment.from.x)) / length;
}
