import {
  add,
  type Bounds,
  boundsOf,
  cross,
  distanceBetween,
  leftOf,
  type Point,
  polar,
  scale,
  subtract,
  unit,
} from './point.ts';

/** A straight piece of a contour. */
export interface Line {
  readonly kind: 'line';
  readonly from: Point;
  readonly to: Point;
}

/** A piece of a circle. Angles in radians, counter-clockwise from +x; a negative sweep runs clockwise. */
export interface Arc {
  readonly kind: 'arc';
  readonly centre: Point;
  readonly radius: number;
  readonly start: number;
  readonly sweep: number;
}

export type Segment = Line | Arc;

const TURN = 2 * Math.PI;

export function line(from: Point, to: Point): Line {
  return { kind: 'line', from, to };
}

export function arc(centre: Point, radius: number, start: number, sweep: number): Arc {
  return { kind: 'arc', centre, radius, start, sweep };
}

/** The arc from one point to another through a third, or a line where the three lie on one. */
export function arcThrough(from: Point, through: Point, to: Point): Segment {
  const a = subtract(through, from);
  const b = subtract(to, from);
  const area = 2 * cross(a, b);
  if (Math.abs(area) < 1e-12 * (Math.hypot(a.x, a.y) + Math.hypot(b.x, b.y)) ** 2) return line(from, to);
  const aa = a.x * a.x + a.y * a.y;
  const bb = b.x * b.x + b.y * b.y;
  const centre = add(from, { x: (b.y * aa - a.y * bb) / area, y: (a.x * bb - b.x * aa) / area });
  return arcAround(centre, from, to, cross(a, b) > 0);
}

/** The arc around a centre from one point to another, the stated way round. Equal points give a full turn. */
export function arcAround(centre: Point, from: Point, to: Point, counterClockwise: boolean): Arc {
  const start = Math.atan2(from.y - centre.y, from.x - centre.x);
  const end = Math.atan2(to.y - centre.y, to.x - centre.x);
  const turned = positiveAngle(end - start);
  const sweep = counterClockwise ? turned || TURN : turned - TURN;
  return arc(centre, distanceBetween(centre, from), start, sweep);
}

/** The same angle in `[0, 2π)`. */
export function positiveAngle(angle: number): number {
  const turned = angle % TURN;
  return turned < 0 ? turned + TURN : turned;
}

/** The point at a fraction of the segment, 0 its start and 1 its end. */
export function pointAt(segment: Segment, t: number): Point {
  if (segment.kind === 'line') {
    const { from, to } = segment;
    return t === 1 ? to : { x: from.x + (to.x - from.x) * t, y: from.y + (to.y - from.y) * t };
  }
  return polar(segment.centre, segment.radius, segment.start + segment.sweep * t);
}

export function startOf(segment: Segment): Point {
  return pointAt(segment, 0);
}

export function endOf(segment: Segment): Point {
  return pointAt(segment, 1);
}

/** Direction of travel at a fraction of the segment, length 1. */
export function directionAt(segment: Segment, t: number): Point {
  if (segment.kind === 'line') return unit(subtract(segment.to, segment.from));
  const angle = segment.start + segment.sweep * t;
  return scale(leftOf({ x: Math.cos(angle), y: Math.sin(angle) }), Math.sign(segment.sweep));
}

export function lengthOf(segment: Segment): number {
  return segment.kind === 'line'
    ? distanceBetween(segment.from, segment.to)
    : Math.abs(segment.sweep) * segment.radius;
}

export function reversed(segment: Segment): Segment {
  return segment.kind === 'line'
    ? line(segment.to, segment.from)
    : arc(segment.centre, segment.radius, segment.start + segment.sweep, -segment.sweep);
}

/** The piece of a segment between two fractions, `from` < `to`. */
export function pieceOf(segment: Segment, from: number, to: number): Segment {
  if (segment.kind === 'line') return line(pointAt(segment, from), pointAt(segment, to));
  return arc(
    segment.centre,
    segment.radius,
    segment.start + segment.sweep * from,
    segment.sweep * (to - from),
  );
}

/** The fraction at which an arc passes an angle, or `null` where it does not. */
export function fractionOfAngle(segment: Arc, angle: number): number | null {
  const along = positiveAngle(segment.sweep > 0 ? angle - segment.start : segment.start - angle);
  const reach = Math.abs(segment.sweep);
  // A hair before the start counts as the start, so that rounding does not lose an end point.
  const slack = 1e-9 / Math.max(segment.radius, 1e-9);
  if (along <= reach + slack) return Math.min(1, along / reach);
  return along >= TURN - slack ? 0 : null;
}

export function segmentBounds(segment: Segment): Bounds {
  const points = [startOf(segment), endOf(segment)];
  if (segment.kind === 'arc') {
    for (let quarter = 0; quarter < 4; quarter++) {
      const angle = (quarter * Math.PI) / 2;
      if (fractionOfAngle(segment, angle) !== null) points.push(polar(segment.centre, segment.radius, angle));
    }
  }
  return boundsOf(points);
}

/** What a segment adds to the signed area of its contour (Green's theorem), mm². */
export function areaUnder(segment: Segment): number {
  if (segment.kind === 'line') return cross(segment.from, segment.to) / 2;
  const { centre, radius, start, sweep } = segment;
  const end = start + sweep;
  const turned = centre.x * (Math.sin(end) - Math.sin(start)) - centre.y * (Math.cos(end) - Math.cos(start));
  return (radius * radius * sweep + radius * turned) / 2;
}

/** Points along a segment whose chords stay within `tolerance` mm of it, its start left out. */
export function flattenSegment(segment: Segment, tolerance: number): Point[] {
  if (segment.kind === 'line') return [segment.to];
  const step = 2 * Math.acos(Math.max(0, 1 - tolerance / Math.max(segment.radius, tolerance)));
  const pieces = Math.max(1, Math.ceil(Math.abs(segment.sweep) / step));
  return Array.from({ length: pieces }, (_, i) => pointAt(segment, (i + 1) / pieces));
}
