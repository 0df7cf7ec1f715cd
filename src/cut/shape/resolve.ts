import type { Finding } from '../../diagnostics/finding.ts';
import { collector, type Report } from '../../diagnostics/report.ts';
import { finding } from '../../diagnostics/rule-card.ts';
import { mergePieces } from '../../geometry/chain.ts';
import { type Contour, contourBounds, counterClockwise, gapOf } from '../../geometry/contour.ts';
import { polygon } from '../../geometry/corners.ts';
import { selfCrossings } from '../../geometry/crossings.ts';
import { type Curve, unrollContour, unrollPoint } from '../../geometry/curved.ts';
import { offset } from '../../geometry/offset.ts';
import { carryOn, closeAlongEdge, type OpenOutline, trimAtEdge } from '../../geometry/open-edge.ts';
import { distanceBetween, type Point, unite } from '../../geometry/point.ts';
import { startOf } from '../../geometry/segment.ts';
import { circle, pointsOnCircle, pointsOnLine, slot } from '../../geometry/shapes.ts';
import type { CutHole, CutPattern, CutTemplate } from '../../model/cut-template.ts';
import type { Span } from '../../source/span.ts';
import { paperTolerance } from '../../trade/paper.ts';
import { isTooTight } from './curve-fit.ts';
import { type Bit, lintResolved } from './lint.ts';
import { makersHoles, type TakenHole } from './maker.ts';
import { marksOf } from './marks.ts';
import { withUsableNumbers } from './numbers.ts';
import { outlineContour } from './outline.ts';
import { mm, type Resolved, type ResolvedCut, type Station } from './resolved.ts';
import {
  ARC_STRAY,
  DATUM_MISSING,
  NOTHING_CUT,
  OUTLINE_CROSSING,
  SET_BACK_LOST,
  TOO_FEW_CORNERS,
} from './rules.ts';
import { stationsAlong } from './stations.ts';
import { toolPathOf } from './tool-path.ts';

/**
 * Works out every shape of a template, and everything that is wrong with it. What could not be worked out is
 * left out and has its finding. `bits` are the drill bits that the guide declares; `null` asks for none.
 */
export function resolve(
  written: CutTemplate,
  bits: readonly Bit[] | null = null,
): { readonly resolved: Resolved; readonly findings: readonly Finding[] } {
  const { findings, report } = collector();
  const template = withUsableNumbers(written, report);
  const holes = makersHoles(template, report);
  const shapes = [...outlines(template, holes.taken, report), ...round(template, holes.centres)];
  const curve = curveOf(template);
  const tooTight = curve !== null && isTooTight(template, shapes, curve, report);
  const letters = lettersOf(shapes, template.variant?.whole ?? template);
  const cuts = tooTight
    ? []
    : shapes.flatMap((shape, i) => finishCut(shape, letters[i] ?? '', template, curve, report));
  if (cuts.length === 0 && findings.length === 0) {
    report(finding(NOTHING_CUT, template.at, 'this template has no outline, hole, slot or pattern'));
  }
  // One that lies too far away is there all the same, and has its finding.
  reportDatums(written, report);
  const resolved: Resolved = {
    id: template.id,
    title: template.title,
    face: template.face,
    side: template.side === 'each' ? 'left' : template.side,
    datums: template.datums,
    origin: {
      x: template.datums.find((d) => d.axis === 'vertical')?.position ?? 0,
      y: template.datums.find((d) => d.axis === 'horizontal')?.position ?? 0,
    },
    cuts,
    keepOuts: tooTight ? [] : keepOuts(template, curve, report),
    panel: panelOf(template, report),
    applied: tooTight ? [] : appliedTo(template, shapes, curve),
    tolerance: toleranceOf(template, cuts),
    variant: template.variant,
    at: template.at,
  };
  lintResolved(resolved, template, bits, report);
  return { resolved, findings };
}

function panelOf({ panelOutlines: [panel] }: CutTemplate, report: Report): Contour | null {
  return panel ? (outlineContour(panel, [], [], report)?.area ?? null) : null;
}

/** A shape as drawn, before it is laid flat and set back. */
interface Shape {
  readonly kind: ResolvedCut['kind'];
  readonly label: string;
  readonly area: Contour;
  readonly open: OpenOutline | null;
  readonly points: readonly { readonly point: Point; readonly radius: number }[];
  readonly diameter: number | null;
  readonly at: Span;
}

function outlines(template: CutTemplate, taken: readonly TakenHole[], report: Report): Shape[] {
  const used = new Set<number>();
  const shapes = template.outlines.flatMap((outline): Shape[] => {
    const found = outlineContour(outline, template.arcs, taken, report);
    if (!found) return [];
    for (const arc of found.arcs) used.add(arc);
    const { area, open, points } = found;
    return [{ kind: 'outline', label: template.title, area, open, points, diameter: null, at: outline.at }];
  });
  template.arcs.forEach((arc, i) => {
    if (used.has(i) || template.outlines.length === 0) return;
    report(finding(ARC_STRAY, arc.at, 'this arc joins no two neighbouring corners of an outline'));
  });
  return shapes;
}

function round(template: CutTemplate, fromFiles: ReadonlyMap<CutPattern, readonly Point[]>): Shape[] {
  const hole = ({
    centre,
    diameter,
    label,
    at,
  }: Pick<CutHole, 'label' | 'at'> & { centre: Point; diameter: number }): Shape => ({
    kind: 'hole',
    label,
    area: circle(centre, diameter / 2),
    open: null,
    points: [{ point: centre, radius: 0 }],
    diameter,
    at,
  });
  return [
    ...template.slots.map(
      ({ from, to, width, label, at }): Shape => ({
        kind: 'slot',
        label,
        area: slot(from, to, width),
        open: null,
        points: [from, to].map((point) => ({ point, radius: width / 2 })),
        diameter: width,
        at,
      }),
    ),
    ...template.holes.map(hole),
    ...template.patterns.flatMap((pattern) => {
      const { diameter, label, at } = pattern;
      const centres = fromFiles.get(pattern) ?? centresOf(pattern);
      return centres.map((centre) => hole({ centre, diameter, label, at }));
    }),
  ];
}

function centresOf({ layout, count }: CutPattern): readonly Point[] {
  switch (layout.kind) {
    case 'line':
      return pointsOnLine(layout.from, layout.to, count);
    case 'circle':
      return pointsOnCircle(layout.centre, layout.circle, count, layout.start);
    case 'file':
      return [];
  }
}

/** The letter of each shape: of several that one place makes, the next of that place's. */
function lettersOf(shapes: readonly Shape[], whole: CutTemplate): readonly string[] {
  const left = new Map<number, string[]>();
  for (const { at, marks } of marksOf(whole)) {
    left.set(at.start, [...(left.get(at.start) ?? []), ...marks]);
  }
  return shapes.map(({ at }) => left.get(at.start)?.shift() ?? '');
}

/** The curve's crown stands on the first datum along its axis: from there the projection is measured. */
function curveOf(template: CutTemplate): Curve | null {
  if (!template.curveRadius) return null;
  const axis = template.curveAxis;
  const datum = template.datums.find((d) => d.axis === axis);
  return { radius: template.curveRadius.value, crown: datum?.position ?? 0, axis };
}

function finishCut(
  shape: Shape,
  mark: string,
  template: CutTemplate,
  curve: Curve | null,
  report: Report,
): ResolvedCut[] {
  const crossing = selfCrossings(shape.area)[0];
  if (crossing) {
    report(
      finding(
        OUTLINE_CROSSING,
        shape.at,
        `this outline crosses itself at ${mm(crossing.x)}, ${mm(crossing.y)}`,
      ),
    );
    return [];
  }
  const flat = curve ? unrolled(shape, curve) : shape;
  const grown = setBack(flat, template);
  if (!grown) {
    report(
      finding(
        SET_BACK_LOST,
        shape.at,
        `a set-back of ${mm(template.setBack?.value ?? 0)} mm cannot be drawn round this outline`,
      ),
    );
    return [];
  }
  return [
    {
      kind: shape.kind,
      mark,
      label: shape.label,
      ...grown,
      toolPath: toolPathOf(grown, template.cutterDiameter?.value ?? 0),
      stations:
        shape.kind === 'outline' ? stationsAlong(mergePieces(grown.cut), mark) : stationsOf(flat, mark),
      diameter: shape.diameter,
      at: shape.at,
    },
  ];
}

/** What stands between the author's figures and the line to cut. */
function appliedTo(template: CutTemplate, shapes: readonly Shape[], curve: Curve | null): string[] {
  const setBack = template.setBack?.value ?? 0;
  const applied: string[] = [];
  if (setBack > 0 && template.outlines.length > 0) {
    applied.push(
      `Set-back of ${mm(setBack)} mm applied: every outline is cut that much outside its drawn line`,
    );
  }
  if (curve) {
    const moved = Math.max(
      ...shapes
        .flatMap(({ points, area }) => [...points.map(({ point }) => point), ...area.segments.map(startOf)])
        .map((point) => distanceBetween(point, unrollPoint(point, curve))),
    );
    applied.push(
      `Unrolled from a curve of ${mm(curve.radius)} mm about ${curve.axis === 'vertical' ? 'an upright' : 'a level'} axis, points moved by up to ${mm(Math.round(moved * 10) / 10)} mm: press to the panel, do not bridge`,
    );
  }
  return applied;
}

/** A round hole stays round on a curved panel: a bit stands square on it; so do the ends of a slot. */
function unrolled(shape: Shape, curve: Curve): Shape {
  const points = shape.points.map(({ point, radius }) => ({ point: unrollPoint(point, curve), radius }));
  const centre = points[0]?.point;
  if (shape.kind === 'hole' && centre)
    return { ...shape, points, area: circle(centre, (shape.diameter ?? 0) / 2) };
  const other = points[1]?.point;
  if (shape.kind === 'slot' && centre && other)
    return { ...shape, points, area: slot(centre, other, shape.diameter ?? 0) };
  const open = shape.open && {
    closed: unrollContour(shape.open.closed, curve),
    cut: unrollContour(shape.open.cut, curve),
    edge: {
      kind: 'line' as const,
      from: unrollPoint(shape.open.edge.from, curve),
      to: unrollPoint(shape.open.edge.to, curve),
    },
  };
  return { ...shape, points, open, area: counterClockwise(unrollContour(shape.area, curve)) };
}

/** Outlines grow by the set-back; what is drilled keeps its size. */
function setBack(shape: Shape, template: CutTemplate): Pick<ResolvedCut, 'area' | 'cut' | 'edge'> | null {
  const distance = shape.kind === 'outline' ? (template.setBack?.value ?? 0) : 0;
  const { open } = shape;
  if (distance === 0) {
    const area = counterClockwise(shape.area);
    return { area, cut: open?.cut ?? area, edge: open?.edge ?? null };
  }
  const grown = offset(open ? carryOn(open, 2 * distance) : shape.area, distance, template.join);
  const one = grown?.length === 1 ? grown[0] : undefined;
  if (!one) return null;
  if (!open) return { area: one, cut: one, edge: null };
  const cut = trimAtEdge(one, open.edge);
  if (!cut) return null;
  const area = closeAlongEdge(cut);
  const edge = area.segments.at(-1);
  return { area, cut, edge: edge?.kind === 'line' ? edge : null };
}

function stationsOf(shape: Shape, mark: string): Station[] {
  if (shape.kind === 'hole') {
    return shape.points.map(({ point }) => ({ mark, point, size: `Ø ${mm(shape.diameter ?? 0)}` }));
  }
  return shape.points.map(({ point, radius }, i) => ({
    mark: `${mark}${i + 1}`,
    point,
    size: radius > 0 ? `r ${mm(radius)}` : '',
  }));
}

function keepOuts(template: CutTemplate, curve: Curve | null, report: Report): Resolved['keepOuts'] {
  return template.keepOuts.flatMap(({ label, points, at }) => {
    if (points.length < 3) {
      report(
        finding(
          TOO_FEW_CORNERS,
          at,
          `a keep-out needs at least three corners; this one has ${points.length}`,
        ),
      );
      return [];
    }
    const shape = counterClockwise(polygon(points.map((point) => ({ point, radius: 0 }))));
    if (gapOf(shape) || selfCrossings(shape).length > 0) {
      report(finding(OUTLINE_CROSSING, at, 'this keep-out crosses itself'));
      return [];
    }
    return [{ label, area: curve ? unrollContour(shape, curve) : shape, at }];
  });
}

function reportDatums(template: CutTemplate, report: Report): void {
  const has = (axis: string): boolean => template.datums.some((d) => d.axis === axis);
  if (has('vertical') && has('horizontal')) return;
  const missing = has('vertical')
    ? 'a horizontal datum'
    : has('horizontal')
      ? 'a vertical datum'
      : 'both datums';
  report(
    finding(
      DATUM_MISSING,
      template.at,
      `this template lacks ${missing}, so it cannot be placed on the panel`,
    ),
  );
}

function toleranceOf(template: CutTemplate, cuts: readonly ResolvedCut[]): Resolved['tolerance'] {
  const b = unite(cuts.map((cut) => contourBounds(cut.area)));
  const longest = cuts.length > 0 ? Math.max(b.maxX - b.minX, b.maxY - b.minY) : 0;
  return { declared: template.tolerance?.value ?? null, paper: paperTolerance(longest), longest };
}
