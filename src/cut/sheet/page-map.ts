import type { Bounds } from '../../geometry/point.ts';
import { line, type Segment } from '../../geometry/segment.ts';
import { moveSegment, translation } from '../../geometry/transform.ts';
import type { SheetPlan } from '../../model/cut-template.ts';
import { HEIGHT, lettering, type Mark, stroke, strokeBox } from '../drawing/drawing.ts';
import type { Metrics } from '../drawing/metrics.ts';

/**
 * The sheets as they lie when joined, in a box: each outlined as trimmed and named by its page, the drawing shown
 * through them. `laid` are the lines of the drawing, `trimmed` the sheets in the order of the plan.
 */
export function pageMap(
  plan: SheetPlan,
  trimmed: readonly Bounds[],
  box: Bounds,
  whole: Bounds,
  laid: readonly Segment[],
  metrics: Metrics,
): Mark[] {
  const factor = Math.min(
    (box.maxX - box.minX) / (whole.maxX - whole.minX),
    (box.maxY - box.minY) / (whole.maxY - whole.minY),
  );
  const bottom = box.maxY - (whole.maxY - whole.minY) * factor;
  const shift = { x: box.minX - whole.minX * factor, y: bottom - whole.minY * factor };
  const marks: Mark[] = [];
  plan.tiles.forEach(({ page }, i) => {
    const sheet = trimmed[i];
    if (!sheet) return;
    const b = {
      minX: sheet.minX * factor + shift.x,
      maxX: sheet.maxX * factor + shift.x,
      minY: sheet.minY * factor + shift.y,
      maxY: sheet.maxY * factor + shift.y,
    };
    marks.push(strokeBox('thin', b));
    const height = Math.min(HEIGHT.title, Math.max(HEIGHT.ruler, (b.maxY - b.minY) / 5));
    const [long, short] = [`sheet ${page}`, String(page)];
    const fits = metrics.width(long, height, true) < b.maxX - b.minX - 1;
    marks.push(
      lettering(fits ? long : short, (b.minX + b.maxX) / 2, (b.minY + b.maxY) / 2 - height / 2, height, {
        anchor: 'middle',
        bold: true,
      }),
    );
  });
  const move = translation(shift.x, shift.y);
  marks.push(stroke('thin', ...laid.map((s) => moveSegment(shrink(s, factor), move))));
  return marks;
}

function shrink(segment: Segment, factor: number): Segment {
  if (segment.kind === 'arc') {
    const { centre, radius } = segment;
    return { ...segment, centre: { x: centre.x * factor, y: centre.y * factor }, radius: radius * factor };
  }
  const { from, to } = segment;
  return line({ x: from.x * factor, y: from.y * factor }, { x: to.x * factor, y: to.y * factor });
}
