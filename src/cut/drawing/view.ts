import { type Bounds, boundsHold, boundsOf, type Point } from '../../geometry/point.ts';
import { line, type Segment } from '../../geometry/segment.ts';
import { type Move, movePoint, moveSegment, rotation } from '../../geometry/transform.ts';
import type { Resolved } from '../shape/resolved.ts';
import { lettering, type Mark } from './drawing.ts';
import { type Floor, floorOf } from './floor.ts';
import type { Metrics } from './metrics.ts';
import type { PanelLines } from './panel-marks.ts';
import { type DatumReference, referencesIn } from './references.ts';

/** One look at the template through the window of a sheet, with what is already drawn there. */
export interface View {
  readonly resolved: Resolved;
  readonly lines: PanelLines;
  /** The lines by which what is shown is laid on the panel. */
  readonly references: readonly DatumReference[];
  readonly move: Move;
  readonly window: Bounds;
  /** What the window shows, in the template's millimetres. */
  readonly shown: Bounds;
  readonly floor: Floor;
  readonly metrics: Metrics;
  readonly marks: Mark[];
  /** Millimetres of the drawing per real millimetre: 1, but for a reduced preview. */
  readonly factor: number;
}

/** Opens a view: the lines of the template are drawn and lettering will keep off them. */
export function openView(
  resolved: Resolved,
  lines: PanelLines,
  move: Move,
  window: Bounds,
  metrics: Metrics,
  factor = 1,
): View {
  const floor = floorOf(window);
  const shown = shownIn(window, move);
  const references = referencesIn(resolved, shown, factor);
  const all = [...allLines(lines), ...references.map((r) => r.line)];
  floor.blockLines(all.map((s) => moveSegment(s, move)));
  return { resolved, lines, references, move, window, shown, floor, metrics, marks: [], factor };
}

/** Every line of a template. */
export function allLines({ cuts, edges, centres, keepOuts, hatch }: PanelLines): Segment[] {
  return [...cuts, ...edges, ...centres, ...keepOuts, ...hatch];
}

/** A window of a sheet in the template's millimetres, before the template was moved there. */
function shownIn(window: Bounds, { turn, shift }: Move): Bounds {
  const corners = [
    { x: window.minX, y: window.minY },
    { x: window.maxX, y: window.maxY },
  ].map((p) => movePoint({ x: p.x - shift.x, y: p.y - shift.y }, rotation(-turn)));
  return boundsOf(corners);
}

/** Where a text may stand. */
export interface TextPlace {
  readonly at: Point;
  readonly anchor?: 'start' | 'middle' | 'end';
  readonly turn?: 0 | 90;
}

/** Lines of one label stand this many heights apart. */
export const PITCH = 1.5;

/** Draws a text at the first of some places that is free. Says whether one was. */
export function letter(
  view: View,
  text: string,
  height: number,
  places: readonly TextPlace[],
  bold = false,
): boolean {
  return letterLines(view, [text], height, places, bold);
}

/** The same for a text on several lines; a place is that of the first. */
export function letterLines(
  view: View,
  lines: readonly string[],
  height: number,
  places: readonly TextPlace[],
  bold = false,
): boolean {
  for (const { at, anchor = 'middle', turn = 0 } of places) {
    const marks = lines.flatMap((text, i) => {
      const down = i * PITCH * height;
      const [x, y] = turn === 0 ? [at.x, at.y - down] : [at.x + down, at.y];
      const mark = lettering(text, x, y, height, { anchor, turn, bold });
      return mark.kind === 'text' ? [mark] : [];
    });
    const boxes = marks.map((mark) => view.metrics.box(mark));
    if (!boxes.every((box) => view.floor.isFree(box))) continue;
    for (const box of boxes) view.floor.blockBox(box);
    view.marks.push(...marks);
    return true;
  }
  return false;
}

/** A point of the template where the view shows it, or `null` outside the window. */
export function seen(view: View, point: Point): Point | null {
  const at = movePoint(point, view.move);
  return boundsHold(view.window, at) ? at : null;
}

/** Adds a line that lettering keeps off from now on. */
export function rule(view: View, mark: Mark): void {
  view.marks.push(mark);
  if (mark.kind === 'stroke') view.floor.blockLines(mark.segments);
}

export function straight(from: Point, to: Point): Segment {
  return line(from, to);
}
