import type { Bounds } from '../../geometry/point.ts';
import { line, type Segment } from '../../geometry/segment.ts';
import { type Move, moveSegment } from '../../geometry/transform.ts';
import type { SheetPlan } from '../../model/cut-template.ts';
import { HEIGHT, lettering, type Mark, stroke, strokeBox } from '../drawing/drawing.ts';
import type { Metrics } from '../drawing/metrics.ts';

/**
 * The sheets as they lie when joined, in a box: printed ones outlined and named, the drawing shown through
 * them, one of them shaded. `laid` are the cuts as turned on the sheets, `whole` what the grid covers.
 */
export function pageMap(
  plan: SheetPlan,
  box: Bounds,
  whole: Bounds,
  laid: readonly Segment[],
  metrics: Metrics,
  here: string | null,
): Mark[] {
  const factor = Math.min(
    (box.maxX - box.minX) / (whole.maxX - whole.minX),
    (box.maxY - box.minY) / (whole.maxY - whole.minY),
  );
  const [wide, high] = [(whole.maxX - whole.minX) * factor, (whole.maxY - whole.minY) * factor];
  const left = box.minX;
  const bottom = box.maxY - high;
  const cell = { width: wide / plan.columns, height: high / plan.rows };
  const marks: Mark[] = [];
  for (const tile of plan.tiles) {
    const minX = left + tile.column * cell.width;
    const maxY = bottom + high - tile.row * cell.height;
    const b = { minX, maxY, maxX: minX + cell.width, minY: maxY - cell.height };
    if (tile.label === here) marks.push(shade(b));
    marks.push(strokeBox('thin', b));
    const height = Math.min(HEIGHT.title, Math.max(HEIGHT.ruler, cell.height / 5));
    const text = metrics.width(tile.label, height, true) < cell.width ? tile.label : '';
    marks.push(
      lettering(text, (b.minX + b.maxX) / 2, (b.minY + b.maxY) / 2 - height / 2, height, {
        anchor: 'middle',
        bold: true,
      }),
    );
  }
  const move: Move = {
    mirror: false,
    turn: 0,
    shift: { x: left - whole.minX * factor, y: bottom - whole.minY * factor },
  };
  marks.push(stroke('thin', ...laid.map((s) => moveSegment(shrink(s, factor), move))));
  return marks;
}

function shade(b: Bounds): Mark {
  const points = [
    { x: b.minX, y: b.minY },
    { x: b.maxX, y: b.minY },
    { x: b.maxX, y: b.maxY },
    { x: b.minX, y: b.maxY },
  ];
  return { kind: 'fill', points, grey: 0.82 };
}

function shrink(segment: Segment, factor: number): Segment {
  if (segment.kind === 'arc') {
    const { centre, radius } = segment;
    return { ...segment, centre: { x: centre.x * factor, y: centre.y * factor }, radius: radius * factor };
  }
  const { from, to } = segment;
  return line({ x: from.x * factor, y: from.y * factor }, { x: to.x * factor, y: to.y * factor });
}
