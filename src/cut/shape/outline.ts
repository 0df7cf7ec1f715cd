import type { Report } from '../../diagnostics/report.ts';
import { finding } from '../../diagnostics/rule-card.ts';
import { type Contour, counterClockwise, gapOf } from '../../geometry/contour.ts';
import { type BentSides, type Corner, cornerMisfits, polygon } from '../../geometry/corners.ts';
import { type OpenOutline, openAt } from '../../geometry/open-edge.ts';
import { cross, type Point, samePoint, subtract, unit } from '../../geometry/point.ts';
import { type Arc, arcThrough } from '../../geometry/segment.ts';
import type { CutArc, CutOutline } from '../../model/cut-template.ts';
import { makersOutline, type TakenHole } from './maker.ts';
import { cornersToName } from './named-corners.ts';
import { mm } from './resolved.ts';
import { OUTLINE_OPEN, RADIUS_MISFIT, TOO_FEW_CORNERS } from './rules.ts';

/** An outline as drawn. */
export interface DrawnOutline {
  readonly area: Contour;
  readonly open: OpenOutline | null;
  /** What is dimensioned: its corners. */
  readonly points: readonly Corner[];
  /** Which arcs bent a side of it. */
  readonly arcs: readonly number[];
}

/** The contour of an outline, or `null` with a finding. `taken` are the holes that patterns take from its file. */
export function outlineContour(
  outline: CutOutline,
  arcs: readonly CutArc[],
  taken: readonly TakenHole[],
  report: Report,
): DrawnOutline | null {
  if (outline.kind === 'file') return fromFile(outline, taken, report);
  const { corners: written, openEdge, at } = outline;
  if (written.length < 3) {
    report(
      finding(TOO_FEW_CORNERS, at, `an outline needs at least three corners; this one has ${written.length}`),
    );
    return null;
  }
  const corners = written.map(({ point, radius }) => ({ point, radius: radius ?? 0 }));
  const bent = bentSides(corners, arcs);
  const misfits = cornerMisfits(corners, bent.sides);
  for (const { corner, largest } of misfits) {
    const where = written[corner]?.at ?? at;
    const message = `a radius of ${mm(corners[corner]?.radius ?? 0)} mm does not fit at this corner; the sides leave room for ${mm(Math.floor(largest * 10) / 10)} mm`;
    report(finding(RADIUS_MISFIT, where, message));
  }
  if (misfits.length > 0) return null;
  const area = counterClockwise(polygon(corners, bent.sides));
  if (onOneLine(corners.map((c) => c.point))) {
    report(finding(TOO_FEW_CORNERS, at, 'the corners of this outline lie on one line and enclose nothing'));
    return null;
  }
  if (!openEdge) return { area, open: null, points: corners, arcs: bent.used };
  const open = openAt(area, openEdge);
  if (!open) {
    const message = `no straight side of this outline lies furthest to the ${openEdge}, so it cannot be open there`;
    report(finding(OUTLINE_OPEN, at, message));
    return null;
  }
  return { area: open.closed, open, points: corners, arcs: bent.used };
}

function onOneLine([first, ...others]: readonly Point[]): boolean {
  const second = others.find((p) => first && !samePoint(p, first));
  if (!first || !second) return true;
  return others.every((p) => Math.abs(cross(subtract(p, first), unit(subtract(second, first)))) < 1e-6);
}

/** The sides that arcs bend: each joins two neighbouring corners, written in either order. */
function bentSides(
  corners: readonly Corner[],
  arcs: readonly CutArc[],
): { readonly sides: BentSides; readonly used: readonly number[] } {
  const used: number[] = [];
  const sides = corners.map(({ point: from }, i): Arc | null => {
    const to = corners[(i + 1) % corners.length]?.point ?? from;
    const joins = (a: Point, b: Point) => samePoint(a, from, 1e-3) && samePoint(b, to, 1e-3);
    const index = arcs.findIndex((one) => joins(one.from, one.to) || joins(one.to, one.from));
    const arc = arcs[index];
    if (!arc) return null;
    used.push(index);
    const side = arcThrough(from, arc.through, to);
    return side.kind === 'arc' ? side : null;
  });
  return { sides, used };
}

function fromFile(
  outline: Extract<CutOutline, { kind: 'file' }>,
  taken: readonly TakenHole[],
  report: Report,
): DrawnOutline | null {
  const contour = makersOutline(outline, taken, report);
  if (!contour) return null;
  const gap = gapOf(contour);
  if (gap || !contour.closed) {
    const where = gap
      ? ` between ${mm(gap.from.x)}, ${mm(gap.from.y)} and ${mm(gap.to.x)}, ${mm(gap.to.y)}`
      : '';
    report(finding(OUTLINE_OPEN, outline.at, `${outline.path}: the outline has a gap${where}`));
    return null;
  }
  const area = counterClockwise(contour);
  return { area, open: null, points: cornersToName(area), arcs: [] };
}
