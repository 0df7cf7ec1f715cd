import type { Point } from '../../geometry/point.ts';

/** A rational B-spline; a Bézier curve is one whose knots are all at its ends. */
export interface Spline {
  readonly kind: 'spline';
  readonly degree: number;
  readonly controls: readonly Point[];
  /** One for each control point. */
  readonly weights: readonly number[];
  /** As many as there are control points, and the degree and one more; never falling. */
  readonly knots: readonly number[];
  /** The parameters between which it is drawn. */
  readonly from: number;
  readonly to: number;
}

/** A Bézier curve through its first and last control point. */
export function bezier(...controls: readonly Point[]): Spline {
  const ends = controls.map(() => 0);
  return {
    kind: 'spline',
    degree: controls.length - 1,
    controls,
    weights: controls.map(() => 1),
    knots: [...ends, ...ends.map(() => 1)],
    from: 0,
    to: 1,
  };
}

/** Parameters between which a spline is one smooth curve: its knots, each once. */
export function spansOf({ knots, from, to }: Spline): number[] {
  const least = (to - from) * 1e-9;
  const inner = knots.filter((knot) => knot > from + least && knot < to - least);
  return [from, ...inner.filter((knot, i) => i === 0 || knot - (inner[i - 1] ?? 0) > least), to];
}

interface Weighted {
  readonly x: number;
  readonly y: number;
  readonly w: number;
}

/**
 * The point at a parameter, and the derivative there: de Boor's scheme on the weighted control points, whose
 * last step holds the derivative too. `before` takes the curve that ends at a knot, not the one that begins.
 */
export function splineAt(
  spline: Spline,
  at: number,
  before = false,
): { readonly point: Point; readonly derivative: Point } {
  const { degree, knots, controls, weights } = spline;
  const span = spanAt(spline, at, before);
  let row: Weighted[] = Array.from({ length: degree + 1 }, (_, i) => {
    const index = span - degree + i;
    const [{ x, y } = { x: Number.NaN, y: Number.NaN }, w = 1] = [controls[index], weights[index]];
    return { x: x * w, y: y * w, w };
  });
  let rate: Weighted = { x: 0, y: 0, w: 0 };
  for (let level = 1; level <= degree; level++) {
    const next: Weighted[] = [];
    for (let i = level; i <= degree; i++) {
      const low = knots[span - degree + i] ?? 0;
      const high = knots[span + 1 + i - level] ?? 0;
      const [a, b] = [row[i - level], row[i - level + 1]] as [Weighted, Weighted];
      const t = high > low ? (at - low) / (high - low) : 0;
      if (level === degree && high > low) {
        const k = degree / (high - low);
        rate = { x: (b.x - a.x) * k, y: (b.y - a.y) * k, w: (b.w - a.w) * k };
      }
      next.push({ x: a.x + (b.x - a.x) * t, y: a.y + (b.y - a.y) * t, w: a.w + (b.w - a.w) * t });
    }
    row = next;
  }
  const { x, y, w } = row[0] as Weighted;
  const point = { x: x / w, y: y / w };
  return { point, derivative: { x: (rate.x - point.x * rate.w) / w, y: (rate.y - point.y * rate.w) / w } };
}

/** Index of the knot at which the piece of curve begins that holds a parameter; found by halving. */
function spanAt({ knots, degree, controls }: Spline, at: number, before: boolean): number {
  let [low, high] = [degree, controls.length];
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    const knot = knots[middle] ?? 0;
    if (before ? knot < at : knot <= at) low = middle;
    else high = middle;
  }
  // A span without length holds no curve: go on to one that has it.
  while (low > degree && (knots[low] ?? 0) >= (knots[low + 1] ?? 0)) low--;
  return low;
}
