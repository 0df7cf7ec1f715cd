import { type Bounds, boundsHold, grow, type Point } from '../../geometry/point.ts';
import type { Segment } from '../../geometry/segment.ts';
import { type Move, movePoint } from '../../geometry/transform.ts';
import type { SheetPlan, SheetTile } from '../../model/cut-template.ts';
import { dimensionView } from '../drawing/dimensions.ts';
import { HEIGHT, lettering, type Mark, type Sheet, strokeLine } from '../drawing/drawing.ts';
import { labelView } from '../drawing/labels.ts';
import { type PanelLines, panelMarks } from '../drawing/panel-marks.ts';
import { openView, rule, type View } from '../drawing/view.ts';
import type { SheetContext } from '../job.ts';
import { mm, type Resolved } from '../shape/resolved.ts';
import { paragraph, titleBlock, upArrow } from './captions.ts';
import { proofSquare, ruler } from './gauges.ts';
import { type Layout, OVERLAP } from './layout.ts';
import { pageMap } from './page-map.ts';
import { crossBox, crossMark, type Seams, targetMark } from './seams.ts';

/** Everything the tiles of one plan share. */
export interface TileSet {
  readonly resolved: Resolved;
  readonly lines: PanelLines;
  readonly plan: SheetPlan;
  readonly layout: Layout;
  /** `null` where one tile shows everything. */
  readonly seams: Seams | null;
  /** What the grid covers, and the cuts, in the turned drawing's millimetres. */
  readonly whole: Bounds;
  readonly laid: readonly Segment[];
  readonly context: SheetContext;
}

/** The sheet of one tile; `window` is what it shows, in the turned drawing's millimetres. */
export function tileSheet(set: TileSet, tile: SheetTile, window: Bounds): Sheet {
  const { layout, resolved, lines, context, plan } = set;
  const frame = layout.window;
  const shift = { x: frame.minX - window.minX, y: frame.minY - window.minY };
  const move: Move = { mirror: false, turn: plan.rotation, shift };
  const view = openView(resolved, lines, move, lettered(frame, tile), context.metrics);
  const trims = trimMarks(frame, tile);
  for (const mark of trims) rule(view, mark);
  const shared = sharedMarks(set, view, frame, shift);
  dimensionView(view);
  labelView(view);
  const drawing: Mark = {
    kind: 'clip',
    to: grow(frame, 0.5),
    marks: [...panelMarks(lines, move), ...shared],
  };
  return {
    width: layout.paper.width,
    height: layout.paper.height,
    marks: [
      drawing,
      ...view.marks,
      ...ruler(frame, 'left', 'mm'),
      ...ruler(frame, 'below', 'mm'),
      ...ruler(frame, 'above', 'in'),
      ...ruler(frame, 'right', 'in'),
      ...joinWords(frame, tile),
      ...stripMarks(set, tile),
    ],
  };
}

/** Lettering stays on the part of the window that no neighbour covers. */
function lettered(frame: Bounds, { joins }: SheetTile): Bounds {
  const inset = (other: string | null): number => (other ? OVERLAP / 2 : 0);
  return {
    minX: frame.minX + inset(joins.left),
    maxX: frame.maxX - inset(joins.right),
    minY: frame.minY + inset(joins.below),
    maxY: frame.maxY - inset(joins.above),
  };
}

/** The middle of each overlap: the sheet above or to the left is trimmed there, the other takes it up to there. */
function trimMarks(frame: Bounds, { joins }: SheetTile): Mark[] {
  const half = OVERLAP / 2;
  const marks: Mark[] = [];
  if (joins.left)
    marks.push(strokeLine('trim', frame.minX + half, frame.minY, frame.minX + half, frame.maxY));
  if (joins.right)
    marks.push(strokeLine('trim', frame.maxX - half, frame.minY, frame.maxX - half, frame.maxY));
  if (joins.below)
    marks.push(strokeLine('trim', frame.minX, frame.minY + half, frame.maxX, frame.minY + half));
  if (joins.above)
    marks.push(strokeLine('trim', frame.minX, frame.maxY - half, frame.maxX, frame.maxY - half));
  return marks;
}

function sharedMarks(set: TileSet, view: View, frame: Bounds, shift: Point): Mark[] {
  const onSheet = (p: Point): Point => ({ x: p.x + shift.x, y: p.y + shift.y });
  const marks: Mark[] = [];
  for (const point of (set.seams?.crosses ?? []).map(onSheet)) {
    if (!boundsHold(grow(frame, 3), point)) continue;
    marks.push(crossMark(point));
    view.floor.blockBox(crossBox(point));
  }
  for (const { from, to, names, length } of set.seams?.controls ?? []) {
    [from, to].map(onSheet).forEach((point, i) => {
      if (!boundsHold(grow(frame, 1), point)) return;
      marks.push(...targetMark(point));
      view.floor.blockBox(crossBox(point));
      const text = `${names[i]}  (${names[0]}–${names[1]}: ${mm(length)})`;
      nameTarget(view, point, text);
    });
  }
  return marks;
}

function nameTarget(view: View, { x, y }: Point, text: string): void {
  for (const [dx, dy, anchor] of [
    [4, 0.8, 'start'],
    [-4, 0.8, 'end'],
    [0, 4.4, 'middle'],
    [0, -6, 'middle'],
    [4, 4, 'start'],
    [-4, -5, 'end'],
  ] as const) {
    const mark = lettering(text, x + dx, y + dy, HEIGHT.small, { anchor });
    if (mark.kind !== 'text') continue;
    const box = view.metrics.box(mark);
    if (!view.floor.isFree(box)) continue;
    view.floor.blockBox(box);
    view.marks.push(mark);
    return;
  }
}

/** In the band outside the rulers: which sheet joins here, and which of the two is trimmed. */
function joinWords(frame: Bounds, { joins }: SheetTile): Mark[] {
  const [x, y] = [(frame.minX + frame.maxX) / 2, (frame.minY + frame.maxY) / 2];
  const out = 6.6;
  const options = { anchor: 'middle', bold: true } as const;
  const marks: Mark[] = [];
  if (joins.left) {
    marks.push(
      lettering(
        `joins ${joins.left}: lay ${joins.left} up to the dashed line`,
        frame.minX - out,
        y,
        HEIGHT.small,
        { ...options, turn: 90 },
      ),
    );
  }
  if (joins.right) {
    marks.push(
      lettering(
        `joins ${joins.right}: trim at the dashed line`,
        frame.maxX + out + HEIGHT.small,
        y,
        HEIGHT.small,
        { ...options, turn: 90 },
      ),
    );
  }
  if (joins.above) {
    marks.push(
      lettering(
        `joins ${joins.above}: lay ${joins.above} up to the dashed line`,
        x,
        frame.maxY + out,
        HEIGHT.small,
        options,
      ),
    );
  }
  if (joins.below) {
    marks.push(
      lettering(
        `joins ${joins.below}: trim at the dashed line`,
        x,
        frame.minY - out - HEIGHT.small,
        HEIGHT.small,
        options,
      ),
    );
  }
  return marks;
}

/** The strip below: a 50 mm square, who the sheet is, where it lies. */
function stripMarks({ layout, resolved, context, plan, whole, laid }: TileSet, tile: SheetTile): Mark[] {
  const { minX, minY, maxX } = layout.strip;
  const right = maxX - 42;
  const text: Bounds = { minX: minX + 55, maxX: right - 3, minY, maxY: minY + 51 };
  const map: Bounds = { minX: right, maxX: maxX - 0.5, minY: minY + 4, maxY: minY + 38 };
  const caption = paragraph(
    [
      'This square must measure 50.0 mm across and up, its diagonals 70.7 mm. If not: stop, see the proof sheet.',
    ],
    { ...text, maxY: minY + 17 },
    context,
  );
  return [
    ...proofSquare({ x: minX + 0.5, y: minY + 0.5 }, 50),
    ...titleBlock(resolved, text, context),
    ...caption.marks,
    lettering(tile.label, right, minY + 41, HEIGHT.sheet, { bold: true }),
    lettering(`sheet ${tile.page} of ${plan.pages}`, maxX, minY + 47.5, HEIGHT.small, { anchor: 'end' }),
    lettering(layout.paper.title, maxX, minY + 42, HEIGHT.small, { anchor: 'end' }),
    ...pageMap(plan, { ...map, maxX: maxX - 15 }, whole, laid, context.metrics, tile.label),
    ...upArrow(maxX - 7, minY + 20, plan.rotation === 90),
  ];
}

/** Where the middle of a drawing lies on a sheet. */
export function centred(content: Bounds, frame: Bounds, turn: 0 | 90): Move {
  const corners = [
    { x: content.minX, y: content.minY },
    { x: content.maxX, y: content.maxY },
  ].map((p) => movePoint(p, { mirror: false, turn, shift: { x: 0, y: 0 } })) as [Point, Point];
  const middle = { x: (corners[0].x + corners[1].x) / 2, y: (corners[0].y + corners[1].y) / 2 };
  const shift = { x: (frame.minX + frame.maxX) / 2 - middle.x, y: (frame.minY + frame.maxY) / 2 - middle.y };
  return { mirror: false, turn, shift };
}
