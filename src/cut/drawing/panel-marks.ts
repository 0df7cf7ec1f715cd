import { type Contour, contourBounds } from '../../geometry/contour.ts';
import { isInside } from '../../geometry/inside.ts';
import {
  add,
  type Bounds,
  boundsHold,
  grow,
  leftOf,
  type Point,
  scale,
  unite,
} from '../../geometry/point.ts';
import { directionAt, lengthOf, line, pointAt, type Segment } from '../../geometry/segment.ts';
import { type Move, moveSegment } from '../../geometry/transform.ts';
import type { Resolved, ResolvedCut } from '../shape/resolved.ts';
import { type Mark, stroke } from './drawing.ts';

/** A datum further than this from everything drawn is not shown itself; a line parallel to it is. */
const DATUM_REACH = 40;

/** Lines of a drawing by kind, still in the template's own millimetres. */
export interface PanelLines {
  readonly cuts: readonly Segment[];
  readonly edges: readonly Segment[];
  readonly centres: readonly Segment[];
  readonly keepOuts: readonly Segment[];
  readonly hatch: readonly Segment[];
}

/** Bounds of everything that must be on paper: cuts and keep-outs. */
export function drawnBounds(resolved: Resolved): Bounds {
  return unite([...resolved.cuts, ...resolved.keepOuts].map(({ area }) => contourBounds(area)));
}

/** Bounds of what is cut. */
export function cutBounds({ cuts }: Resolved): Bounds {
  return unite(cuts.map(({ area }) => contourBounds(area)));
}

/** All lines of a template, labels and dimensions left out. */
export function panelLines(resolved: Resolved): PanelLines {
  return {
    cuts: resolved.cuts.flatMap((cut) => cut.cut.segments),
    edges: resolved.cuts.flatMap((cut) => (cut.edge ? [cut.edge] : [])),
    centres: resolved.cuts.flatMap(centreLines),
    keepOuts: resolved.keepOuts.flatMap((k) => k.area.segments),
    hatch: resolved.cuts.flatMap((cut) => hatchOf(cut, resolved)),
  };
}

/** How far the centre lines of a hole reach past its edge, mm. */
export const PAST_EDGE = 2.5;

/** A cross through the middle of every round end, reaching past its edge. */
function centreLines(cut: ResolvedCut): Segment[] {
  if (cut.kind === 'outline') return [];
  const reach = (cut.diameter ?? 0) / 2 + PAST_EDGE;
  return cut.stations.flatMap(({ point: { x, y } }) => [
    line({ x: x - reach, y }, { x: x + reach, y }),
    line({ x, y: y - reach }, { x, y: y + reach }),
  ]);
}

/** Short strokes on the waste side of a cut, 45° from its line; along a curve of many short lines as along a long one. */
function hatchOf(cut: ResolvedCut, { cuts }: Resolved): Segment[] {
  if (cut.kind !== 'outline')
    return cut.stations.flatMap(({ point }) => roundHatch(point, cut.diameter ?? 0));
  const length = 3;
  const step = 4;
  const strokes: Segment[] = [];
  const box = contourBounds(cut.area);
  if (Math.min(box.maxX - box.minX, box.maxY - box.minY) < 3 * length) return [];
  /** How far one short line after another goes since the last stroke, mm. */
  let passed = 0;
  for (const segment of cut.cut.segments) {
    const fitting = Math.floor(lengthOf(segment) / step);
    passed = fitting === 0 ? passed + lengthOf(segment) : 0;
    const count = passed < step ? fitting : 1;
    if (passed >= step) passed = 0;
    for (let i = 0; i < count; i++) {
      const t = (i + 0.5) / count;
      const from = pointAt(segment, t);
      const along = directionAt(segment, t);
      // Contours run counter-clockwise, so the waste lies to the left.
      const slant = scale(add(along, leftOf(along)), Math.SQRT1_2);
      const start = add(from, scale(slant, 0.4));
      const end = add(from, scale(slant, length));
      if (isInside(cut.area, end) && !cuts.some((other) => other !== cut && touches(other.area, end))) {
        strokes.push(line(start, end));
      }
    }
  }
  return strokes;
}

/** Slanted lines across a hole, clear of the cross at its centre; one of less than 5 mm is told by its cross. */
function roundHatch(centre: Point, diameter: number): Segment[] {
  const radius = diameter / 2 - 0.4;
  if (radius < 2.1) return [];
  const count = Math.floor(radius / 1.5);
  return Array.from({ length: 2 * count + 1 }, (_, i) => (i - count) * 1.5).flatMap((away) => {
    const half = Math.sqrt(Math.max(0, radius * radius - away * away));
    const clear = Math.abs(away) < 1.2 ? 1.2 : 0;
    const at = (along: number): Point => ({
      x: centre.x + (along - away) * Math.SQRT1_2,
      y: centre.y + (along + away) * Math.SQRT1_2,
    });
    if (half < clear + 0.3) return [];
    return clear === 0
      ? [line(at(-half), at(half))]
      : [line(at(-half), at(-clear)), line(at(clear), at(half))];
  });
}

function touches(area: Contour, point: Point): boolean {
  const b = contourBounds(area);
  return boundsHold(grow(b, 1), point);
}

/** What a drawing in one piece reaches: all that is drawn, and the datums near it. */
export function reachOf(resolved: Resolved): Bounds {
  const b = drawnBounds(resolved);
  const near = (axis: 'vertical' | 'horizontal', low: number, high: number): number[] => {
    const all = resolved.datums.filter((datum) => datum.axis === axis).map(({ position }) => position);
    return all.filter((at) => at >= low - DATUM_REACH && at <= high + DATUM_REACH);
  };
  const [xs, ys] = [near('vertical', b.minX, b.maxX), near('horizontal', b.minY, b.maxY)];
  return {
    minX: Math.min(b.minX, ...xs.map((x) => x - 6)),
    maxX: Math.max(b.maxX, ...xs.map((x) => x + 6)),
    minY: Math.min(b.minY, ...ys.map((y) => y - 6)),
    maxY: Math.max(b.maxY, ...ys.map((y) => y + 6)),
  };
}

/** The lines of a template as marks, moved onto a sheet. */
export function panelMarks(lines: PanelLines, move: Move): Mark[] {
  const moved = (segments: readonly Segment[]): Segment[] => segments.map((s) => moveSegment(s, move));
  return [
    stroke('hatch', ...moved(lines.hatch)),
    stroke('keepOut', ...moved(lines.keepOuts)),
    stroke('centre', ...moved(lines.centres)),
    stroke('thin', ...moved(lines.edges)),
    stroke('cut', ...moved(lines.cuts)),
  ];
}
