import type { Report } from '../../diagnostics/report.ts';
import { finding } from '../../diagnostics/rule-card.ts';
import { type Bounds, boundsOf, grow, type Point, subtract } from '../../geometry/point.ts';
import { mm, type Resolved, type ResolvedCut } from './resolved.ts';
import { UNIT_DOUBTFUL } from './rules.ts';

/** Millimetres in an inch, exactly (the international yard of 1959). */
const INCH = 25.4;

/** How near a size must come to another one after it is turned into the other unit, as a share of it. */
const SAME_SHARE = 0.01;

/** A cut is far away when it lies this many times further off than all others are long; a slip makes it some 25. */
const FAR = 5;

/**
 * Asks about a cut that lies 25.4 times too far from the zero point, or too near it, to stand beside the others of
 * its panel, and about a size 25.4 times another's: figures in inches that were taken for millimetres, or the
 * other way round. `others` are the templates measured from the same places on the same panel.
 */
export function lintUnits(own: Resolved, others: readonly Resolved[], report: Report): void {
  const beside = others.flatMap(({ cuts, origin }) =>
    cuts.map((cut) => ({ cut, points: pointsOf(cut).map((p) => fromZeroOf(own, subtract(p, origin))) })),
  );
  const ours = own.cuts.map((cut) => ({ cut, points: pointsOf(cut) }));
  const told = new Set<number>();
  for (const { cut, points } of ours) {
    // A row of holes is typed as one, and told once.
    if (told.has(cut.at.start)) continue;
    const rest = [...ours.filter((one) => one.cut.at.start !== cut.at.start), ...beside];
    const slip =
      placeSlip(
        points,
        rest.flatMap((one) => one.points),
      ) ?? sizeSlip(cut, rest);
    if (slip === null) continue;
    told.add(cut.at.start);
    report(
      finding(
        UNIT_DOUBTFUL,
        cut.at,
        `“${cut.label}” (${cut.mark}) ${slip}; are its figures in the unit that it states?`,
      ),
    );
  }
}

function fromZeroOf({ origin }: Resolved, { x, y }: Point): Point {
  return { x: x + origin.x, y: y + origin.y };
}

function pointsOf({ stations }: ResolvedCut): readonly Point[] {
  return stations.map(({ point }) => point);
}

/** Units stretch places about the zero point. */
function placeSlip(points: readonly Point[], rest: readonly Point[]): string | null {
  const [first] = points;
  // Two places at least show where the work is.
  if (!first || rest.length < 2) return null;
  const around = boundsOf(rest);
  const reach = Math.max(...rest.map(furthest));
  const near = grow(around, reach / 2);
  const fits = (by: number) => points.every(({ x, y }) => holds(near, { x: x * by, y: y * by }));
  if (points.some((p) => holds(near, p))) return null;
  const place = ({ x, y }: Point) => `${mm(x)}, ${mm(y)}`;
  if (points.every((p) => furthest(p) > FAR * reach) && fits(1 / INCH)) {
    return `lies at ${place(first)}, and all else on this panel within ${mm(reach)} mm of the zero point; divided by 25.4 it would lie at ${place(scaled(first, 1 / INCH))}`;
  }
  const nearest = Math.min(...rest.map(furthest));
  if (points.every((p) => furthest(p) > 0.5 && FAR * furthest(p) < nearest) && fits(INCH)) {
    return `lies at ${place(first)}, and all else on this panel at least ${mm(nearest)} mm from the zero point; times 25.4 it would lie at ${place(scaled(first, INCH))}`;
  }
  return null;
}

function scaled({ x, y }: Point, by: number): Point {
  return { x: x * by, y: y * by };
}

function furthest({ x, y }: Point): number {
  return Math.max(Math.abs(x), Math.abs(y));
}

function holds(b: Bounds, { x, y }: Point): boolean {
  return x >= b.minX && x <= b.maxX && y >= b.minY && y <= b.maxY;
}

/** A drilled or routed width that is another's, but for the unit. */
function sizeSlip({ diameter, kind }: ResolvedCut, rest: readonly { readonly cut: ResolvedCut }[]) {
  if (diameter === null) return null;
  const sizes = rest.flatMap(({ cut }) => (cut.kind === kind && cut.diameter ? [cut] : []));
  const other = sizes.find((cut) => Math.abs(diameter / INCH / (cut.diameter ?? diameter) - 1) <= SAME_SHARE);
  return other
    ? `is ${mm(diameter)} mm wide, 25.4 times the ${mm(other.diameter ?? 0)} mm of “${other.label}” (${other.mark})`
    : null;
}
