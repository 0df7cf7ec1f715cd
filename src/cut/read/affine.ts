import type { Point } from '../../geometry/point.ts';

/** x′ = a·x + c·y + e, y′ = b·x + d·y + f (SVG 2, 8.5). */
export type Affine = readonly [a: number, b: number, c: number, d: number, e: number, f: number];

export const UNMOVED: Affine = [1, 0, 0, 1, 0, 0];

export function apply([a, b, c, d, e, f]: Affine, { x, y }: Point): Point {
  return { x: a * x + c * y + e, y: b * x + d * y + f };
}

/** Moves a direction: what only shifts leaves it as it is. */
export function applyToVector([a, b, c, d]: Affine, { x, y }: Point): Point {
  return { x: a * x + c * y, y: b * x + d * y };
}

/** First `inner`, then `outer`. */
export function compose(outer: Affine, inner: Affine): Affine {
  const [a, b, c, d, e, f] = inner;
  const u = applyToVector(outer, { x: a, y: b });
  const v = applyToVector(outer, { x: c, y: d });
  const w = apply(outer, { x: e, y: f });
  return [u.x, u.y, v.x, v.y, w.x, w.y];
}

export function shiftBy(x: number, y: number): Affine {
  return [1, 0, 0, 1, x, y];
}

export function scaleBy(x: number, y: number): Affine {
  return [x, 0, 0, y, 0, 0];
}

/** Turns from the x axis towards the y axis, degrees; quarter turns are exact. */
export function turnBy(degrees: number): Affine {
  const quarters = degrees / 90;
  if (Number.isInteger(quarters)) {
    const at = ((quarters % 4) + 4) % 4;
    const [cos, sin] = [[1, 0, -1, 0][at] ?? 1, [0, 1, 0, -1][at] ?? 0];
    return [cos, sin, -sin, cos, 0, 0];
  }
  const [cos, sin] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)];
  return [cos, sin, -sin, cos, 0, 0];
}

/** What undoes a transform, or `null` where it flattens everything to a line. */
export function inverse([a, b, c, d, e, f]: Affine): Affine | null {
  const size = a * d - b * c;
  if (!Number.isFinite(size) || Math.abs(size) < 1e-12) return null;
  const back: Affine = [d / size, -b / size, -c / size, a / size, 0, 0];
  const shift = applyToVector(back, { x: -e, y: -f });
  return [back[0], back[1], back[2], back[3], shift.x, shift.y];
}
