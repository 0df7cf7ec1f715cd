import { type Bounds, boundsMeet } from '../../geometry/point.ts';
import { line, type Segment, segmentBounds } from '../../geometry/segment.ts';
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
  const move = translation(shift.x, shift.y);
  const drawing = laid.map((s) => moveSegment(shrink(s, factor), move));
  const drawn = drawing.map(segmentBounds);
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
    marks.push(nameOf(page, b, drawn, metrics));
  });
  marks.push(stroke('thin', ...drawing));
  return marks;
}

/** The number of a sheet in its cell, off the lines of the drawing where it can be. */
function nameOf(page: number, b: Bounds, drawn: readonly Bounds[], metrics: Metrics): Mark {
  const [wide, high] = [b.maxX - b.minX, b.maxY - b.minY];
  const most = Math.min(HEIGHT.title, Math.max(HEIGHT.ruler, high / 5));
  const tries = [most, Math.max(HEIGHT.ruler, most / 2)].flatMap((height) => {
    const text = metrics.width(`sheet ${page}`, height, true) < wide - 1 ? `sheet ${page}` : String(page);
    return [0, 0.25, -0.25, 0.33, -0.33].flatMap((up) =>
      [0, 0.12, -0.12].map((right) =>
        lettering(text, b.minX + (0.5 + right) * wide, b.minY + (0.5 + up) * high - height / 2, height, {
          anchor: 'middle',
          bold: true,
        }),
      ),
    );
  });
  const free = tries.find((mark) => {
    if (mark.kind !== 'text') return false;
    const box = metrics.box(mark);
    return box.minX > b.minX && box.maxX < b.maxX && !drawn.some((one) => boundsMeet(one, box));
  });
  return (free ?? tries[0]) as Mark;
}

function shrink(segment: Segment, factor: number): Segment {
  if (segment.kind === 'arc') {
    const { centre, radius } = segment;
    return { ...segment, centre: { x: centre.x * factor, y: centre.y * factor }, radius: radius * factor };
  }
  const { from, to } = segment;
  return line({ x: from.x * factor, y: from.y * factor }, { x: to.x * factor, y: to.y * factor });
}
