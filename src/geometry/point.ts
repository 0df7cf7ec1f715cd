/** A place in the plane, millimetres, x to the right and y up. */
export interface Point {
  readonly x: number;
  readonly y: number;
}

/** An upright rectangle, millimetres. */
export interface Bounds {
  readonly minX: number;
  readonly minY: number;
  readonly maxX: number;
  readonly maxY: number;
}

/** Two points nearer than this are one point: far below what any cutter or printer resolves. */
export const SAME_POINT = 1e-6;

export function add(a: Point, b: Point): Point {
  return { x: a.x + b.x, y: a.y + b.y };
}

export function subtract(a: Point, b: Point): Point {
  return { x: a.x - b.x, y: a.y - b.y };
}

export function scale(a: Point, factor: number): Point {
  return { x: a.x * factor, y: a.y * factor };
}

export function dot(a: Point, b: Point): number {
  return a.x * b.x + a.y * b.y;
}

/** Positive where `b` points to the left of `a`. */
export function cross(a: Point, b: Point): number {
  return a.x * b.y - a.y * b.x;
}

export function distanceBetween(a: Point, b: Point): number {
  return Math.hypot(b.x - a.x, b.y - a.y);
}

export function samePoint(a: Point, b: Point, tolerance = SAME_POINT): boolean {
  return distanceBetween(a, b) <= tolerance;
}

export function midpoint(a: Point, b: Point): Point {
  return { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 };
}

/** The vector of length 1 in the same direction; the null vector stays null. */
export function unit(a: Point): Point {
  const length = Math.hypot(a.x, a.y);
  return length === 0 ? a : scale(a, 1 / length);
}

/** The vector turned a quarter turn to the left. */
export function leftOf(a: Point): Point {
  return { x: -a.y, y: a.x };
}

/** The point at an angle (radians, counter-clockwise from +x) and distance from a centre. */
export function polar(centre: Point, radius: number, angle: number): Point {
  return { x: centre.x + radius * Math.cos(angle), y: centre.y + radius * Math.sin(angle) };
}

/** The smallest rectangle around some points; an empty list gives one turned inside out. */
export function boundsOf(points: Iterable<Point>): Bounds {
  let [minX, minY, maxX, maxY] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const { x, y } of points) {
    minX = Math.min(minX, x);
    minY = Math.min(minY, y);
    maxX = Math.max(maxX, x);
    maxY = Math.max(maxY, y);
  }
  return { minX, minY, maxX, maxY };
}

/** The smallest rectangle around some rectangles. */
export function unite(all: Iterable<Bounds>): Bounds {
  const corners: Point[] = [];
  for (const b of all) corners.push({ x: b.minX, y: b.minY }, { x: b.maxX, y: b.maxY });
  return boundsOf(corners);
}

/** The rectangle moved out by a margin on all four sides. */
export function grow(b: Bounds, margin: number): Bounds {
  return { minX: b.minX - margin, minY: b.minY - margin, maxX: b.maxX + margin, maxY: b.maxY + margin };
}

/** True where two rectangles have any point in common. */
export function boundsMeet(a: Bounds, b: Bounds): boolean {
  return a.minX <= b.maxX && b.minX <= a.maxX && a.minY <= b.maxY && b.minY <= a.maxY;
}

/** True where the point lies in the rectangle or on its edge. */
export function boundsHold(b: Bounds, p: Point): boolean {
  return p.x >= b.minX && p.x <= b.maxX && p.y >= b.minY && p.y <= b.maxY;
}
