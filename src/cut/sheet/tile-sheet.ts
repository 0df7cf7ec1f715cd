import { type Bounds, boundsHold, grow, type Point } from '../../geometry/point.ts';
import { line, type Segment } from '../../geometry/segment.ts';
import { moveSegment, translation } from '../../geometry/transform.ts';
import type { SheetPlan, SheetTile } from '../../model/cut-template.ts';
import { dimensionView } from '../drawing/dimensions.ts';
import { HEIGHT, lettering, type Mark, type Sheet, stroke } from '../drawing/drawing.ts';
import { type Floor, floorOf } from '../drawing/floor.ts';
import { labelAreas, labelReferences, labelStations } from '../drawing/labels.ts';
import { type PanelLines, panelMarks } from '../drawing/panel-marks.ts';
import { allLines, openView, type View } from '../drawing/view.ts';
import type { SheetContext } from '../job.ts';
import { mm, type Resolved } from '../shape/resolved.ts';
import { ruler } from './gauges.ts';
import { identityBlock } from './identity-block.ts';
import type { Edge, Join } from './joins.ts';
import { type Layout, layoutOf } from './layout.ts';
import { crossBox, crossMark, type Seams, targetBox, targetMarks } from './seams.ts';

/** Everything the tiles of one plan share. */
export interface TileSet {
  readonly resolved: Resolved;
  readonly lines: PanelLines;
  readonly plan: SheetPlan;
  /** Of the proof sheet and the lists: upright. */
  readonly layout: Layout;
  readonly seams: Seams;
  /** The windows of the tiles as trimmed, in the order of the plan. */
  readonly trimmed: readonly Bounds[];
  /** What all windows cover, and the cuts, in the drawing's millimetres. */
  readonly whole: Bounds;
  readonly laid: readonly Segment[];
  readonly context: SheetContext;
}

/** The sheet of one tile, by its place in the plan. */
export function tileSheet(set: TileSet, tile: SheetTile, index: number): Sheet {
  const { resolved, lines, context, seams } = set;
  const layout = layoutOf(set.layout.paper, tile.landscape);
  const frame = layout.window;
  const shift = { x: frame.minX - tile.window.x, y: frame.minY - tile.window.y };
  const move = translation(shift.x, shift.y);
  const whole = set.trimmed[index] ?? set.whole;
  const trimmed = {
    minX: whole.minX + shift.x,
    maxX: whole.maxX + shift.x,
    minY: whole.minY + shift.y,
    maxY: whole.maxY + shift.y,
  };
  const view = openView(resolved, lines, move, trimmed, context.metrics);
  const shared = sharedMarks(seams, view, frame, shift);
  // Corners and holes are named where they lie; who the sheet is can stand wherever room is left.
  labelStations(view);
  dimensionView(view);
  const own = identityBlock(view, resolved, identityOf(set, tile), context);
  labelReferences(view);
  labelAreas(view);
  const drawing: Mark = {
    kind: 'clip',
    to: grow(frame, 0.5),
    marks: [...panelMarks(lines, move), ...shared],
  };
  const references: Mark = {
    kind: 'clip',
    to: trimmed,
    marks: [stroke('centre', ...view.references.map((r) => moveSegment(r.line, move)))],
  };
  return {
    width: layout.width,
    height: layout.height,
    label: String(tile.page),
    marks: [
      drawing,
      references,
      ...own,
      ...view.marks,
      ...ruler(frame, 'left', 'mm', true),
      ...ruler(frame, 'below', 'mm', true),
      ...ruler(frame, 'above', 'in', true),
      ...ruler(frame, 'right', 'in', true),
      ...joinMarks(set, tile, index, frame, shift, view),
    ],
  };
}

/** What the identity of a tile says beside what every sheet says. */
function identityOf({ plan, seams }: TileSet, tile: SheetTile): { own: string; more: string[] } {
  const controls = seams.controls.map(({ names, length }) => `${names[0]} to ${names[1]} ${mm(length)} mm`);
  return {
    own: `Sheet ${tile.page} of ${plan.pages}`,
    more: [
      'Measure the 100 mm square on sheet 1 before you cut.',
      ...(controls.length > 0 ? [`When joined: ${controls.join(', ')}`] : []),
    ],
  };
}

function sharedMarks(seams: Seams, view: View, frame: Bounds, shift: Point): Mark[] {
  const onSheet = (p: Point): Point => ({ x: p.x + shift.x, y: p.y + shift.y });
  const marks: Mark[] = [];
  for (const point of seams.crosses.map(onSheet)) {
    if (!boundsHold(grow(frame, 3), point)) continue;
    marks.push(crossMark(point));
    view.floor.blockBox(crossBox(point));
  }
  for (const { from, to, names } of seams.controls) {
    [from, to].map(onSheet).forEach((point, i) => {
      if (!boundsHold(view.window, point)) return;
      marks.push(...targetMarks(point, names[i] ?? ''));
      view.floor.blockBox(targetBox(point));
    });
  }
  return marks;
}

/** The seams of a sheet, each with words in what is trimmed away, or in what the other sheet will cover. */
function joinMarks(
  { seams, plan, lines }: TileSet,
  { page }: SheetTile,
  index: number,
  frame: Bounds,
  shift: Point,
  view: View,
): Mark[] {
  const { cuts, edges, centres, keepOuts } = lines;
  // Where hatching fills a strip, its words stand on the hatching.
  const floors = [allLines(lines), [...cuts, ...edges, ...centres, ...keepOuts]].map((drawn) => {
    const floor = floorOf(grow(frame, -0.2));
    floor.blockLines([
      ...drawn.map((s) => moveSegment(s, view.move)),
      ...view.marks.flatMap((mark) => (mark.kind === 'stroke' ? mark.segments : [])),
    ]);
    for (const { x, y } of seams.crosses) floor.blockBox(crossBox({ x: x + shift.x, y: y + shift.y }));
    return floor;
  });
  return seams.joins.flatMap((join) => {
    const trims = join.trimmed === index;
    if (!trims && join.under !== index) return [];
    const other = plan.tiles[trims ? join.under : join.trimmed]?.page ?? page;
    const said = trims
      ? [`trim here, lay on sheet ${other}`, `trim here: sheet ${other}`, 'trim here']
      : [`sheet ${other} is laid on up to here`, `sheet ${other} up to here`, `sheet ${other} to here`];
    const edge = trims ? join.edge.trimmed : join.edge.under;
    const seam = seamLine(join, trims ? frame : null, shift);
    for (const floor of floors) floor.blockLines([seam]);
    for (const floor of floors) {
      for (const text of said) {
        for (const height of [HEIGHT.small, HEIGHT.ruler]) {
          const words = stripWords(floor, { text, height }, edge, join, shift, view);
          if (words) return [stroke('trim', seam), words];
        }
      }
    }
    return [stroke('trim', seam)];
  });
}

/** The seam on a sheet: over the whole edge of the one that is trimmed, as far as it reaches on the other. */
function seamLine({ upright, at, from, to }: Join, frame: Bounds | null, shift: Point): Segment {
  if (upright) {
    const [low, high] = frame ? [frame.minY, frame.maxY] : [from + shift.y, to + shift.y];
    return line({ x: at + shift.x, y: low }, { x: at + shift.x, y: high });
  }
  const [left, right] = frame ? [frame.minX, frame.maxX] : [from + shift.x, to + shift.x];
  return line({ x: left, y: at + shift.y }, { x: right, y: at + shift.y });
}

/** The first free place for some words in the strip beyond a seam; `null` where there is none. */
function stripWords(
  floor: Floor,
  { text, height }: { readonly text: string; readonly height: number },
  edge: Edge,
  { upright, at, from, to }: Join,
  shift: Point,
  view: View,
): Mark | null {
  const middle = (from + to) / 2;
  const out = edge === 'left' || edge === 'below' ? -1 : 1;
  for (let i = 0; i < 120; i++) {
    const along = middle + (((i % 2 === 0 ? 1 : -1) * Math.ceil(i / 2)) / 120) * (to - from) * 0.95;
    // The letters, which reach further up than down, stand in the middle of the strip between the seam and the edge.
    const [middleOfStrip, rise] = [at + out * 2.6, 0.375 * height];
    const mark = upright
      ? lettering(text, middleOfStrip + rise + shift.x, along + shift.y, height, {
          anchor: 'middle',
          turn: 90,
        })
      : lettering(text, along + shift.x, middleOfStrip - rise + shift.y, height, { anchor: 'middle' });
    if (mark.kind !== 'text') continue;
    const box = view.metrics.box(mark);
    if (!floor.isFree(box)) continue;
    floor.blockBox(box);
    return mark;
  }
  return null;
}
