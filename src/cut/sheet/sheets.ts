import { type Bounds, grow, unite } from '../../geometry/point.ts';
import { line, type Segment, segmentBounds } from '../../geometry/segment.ts';
import { moveSegment, rotation } from '../../geometry/transform.ts';
import type { SheetPlan, SheetTile } from '../../model/cut-template.ts';
import { PAPERS, type Paper, type PaperName, SAFE_MARGIN } from '../../trade/paper.ts';
import { dimensionView, LANE_TEXT } from '../drawing/dimensions.ts';
import type { Mark, Sheet } from '../drawing/drawing.ts';
import { labelView } from '../drawing/labels.ts';
import { cutBounds, drawnBounds, type PanelLines, panelLines, panelMarks } from '../drawing/panel-marks.ts';
import { positionsOf, rowsIn } from '../drawing/positions.ts';
import { openView } from '../drawing/view.ts';
import type { SheetContext } from '../job.ts';
import type { Resolved } from '../shape/resolved.ts';
import { layingSteps, paragraph, stopRule, titleBlock, upArrow } from './captions.ts';
import { type Layout, layoutOf } from './layout.ts';
import { listPages, listSheet, PROOF, proofSheet, proofZone, TITLE } from './proof-sheet.ts';
import { seamsOf } from './seams.ts';
import { MOST_SHEETS, plainCount, roughCount } from './sheet-count.ts';
import { centred, type TileSet, tileSheet } from './tile-sheet.ts';
import { type Content, type Tiling, tile, type WindowSize, windowOf } from './tiling.ts';

/** The sheets of a template on one paper, or how many it would need where that is too many. */
export type DrawnSheets =
  | { readonly ok: true; readonly plan: SheetPlan; readonly sheets: readonly Sheet[] }
  | { readonly ok: false; readonly needed: number };

/** Draws a template on a paper: one sheet where all of it fits, else a proof sheet and tiles. */
export function drawSheets(resolved: Resolved, name: PaperName, context: SheetContext): DrawnSheets {
  const lines = panelLines(resolved);
  if (name === 'single') return drawSingle(resolved, lines, context);
  const paper = PAPERS[name];
  const one = drawOne(resolved, lines, name, paper, context);
  return one ?? drawTiles(resolved, lines, name, layoutOf(paper), context);
}

/** Room that the drawing needs with its dimensions, in the template's own millimetres. */
function drawnWithDimensions(resolved: Resolved, lines: PanelLines): Bounds {
  const cuts = grow(cutBounds(resolved), 9);
  const dimensions = { ...cuts, minX: cuts.minX - LANE_TEXT, minY: cuts.minY - LANE_TEXT };
  const others = grow(unite([drawnBounds(resolved), ...lines.datums.map((d) => segmentBounds(d.line))]), 1);
  return unite([dimensions, others]);
}

/**
 * How many sheets a template would need on a paper where they are more than can be laid true, else `null`. Nothing
 * is drawn, and a grid is searched only where a plain one is too large.
 */
export function tooManySheets(resolved: Resolved, name: PaperName, context: SheetContext): number | null {
  const lines = panelLines(resolved);
  if (name === 'single' || placeOnOne(resolved, lines, PAPERS[name], context)) return null;
  const content = contentOf(resolved, lines);
  const size = windowSize(layoutOf(PAPERS[name]));
  const least = roughCount(content, size);
  if (least > MOST_SHEETS) return least;
  if (plainCount(content, size) <= MOST_SHEETS) return null;
  const { tiles } = tile(content, size);
  return tiles.length > MOST_SHEETS ? tiles.length : null;
}

function drawOne(
  resolved: Resolved,
  lines: PanelLines,
  name: PaperName,
  paper: Paper,
  context: SheetContext,
): DrawnSheets | null {
  const place = placeOnOne(resolved, lines, paper, context);
  if (!place) return null;
  return {
    ok: true,
    ...oneSheet(resolved, lines, name, paper, place.frame, place.zone, place.turn, context),
  };
}

/** Where everything goes on a sheet that carries all; `null` where it does not fit. */
function placeOnOne(
  resolved: Resolved,
  lines: PanelLines,
  paper: Paper,
  context: SheetContext,
): { readonly frame: Bounds; readonly zone: number; readonly turn: 0 | 90 } | null {
  const { safe } = layoutOf(paper);
  const zone = PROOF + 2;
  const frame: Bounds = { ...safe, minY: safe.minY + zone + 4, maxY: safe.maxY - TITLE };
  const content = drawnWithDimensions(resolved, lines);
  const [wide, high] = [content.maxX - content.minX, content.maxY - content.minY];
  const [roomX, roomY] = [frame.maxX - frame.minX, frame.maxY - frame.minY];
  const turn = wide <= roomX && high <= roomY ? 0 : high <= roomX && wide <= roomY ? 90 : null;
  const column: Bounds = {
    minX: safe.minX + PROOF + 2,
    maxX: safe.maxX,
    minY: safe.minY,
    maxY: safe.minY + zone,
  };
  const stop = paragraph(stopRule(paper.title), column, context);
  const steps = paragraph(layingSteps(resolved, null), { ...safe, minX: safe.minX + 95 }, context);
  if (turn === null || positionsOf(resolved).length > rowsIn(stop.bottom - safe.minY)) return null;
  if (steps.bottom < safe.maxY - TITLE - 2) return null;
  return { frame, zone, turn };
}

function oneSheet(
  resolved: Resolved,
  lines: PanelLines,
  name: PaperName,
  paper: Paper,
  frame: Bounds,
  zone: number,
  turn: 0 | 90,
  context: SheetContext,
): { readonly plan: SheetPlan; readonly sheets: readonly Sheet[] } {
  const { safe } = layoutOf(paper);
  const content = drawnWithDimensions(resolved, lines);
  const move = centred(content, frame, turn);
  const view = openView(resolved, lines, move, frame, context.metrics);
  dimensionView(view);
  labelView(view);
  const steps = paragraph(layingSteps(resolved, null), { ...safe, minX: safe.minX + 95 }, context);
  const marks: Mark[] = [
    ...titleBlock(resolved, { ...safe, maxX: safe.minX + 79 }, context),
    ...upArrow(safe.minX + 86, safe.maxY - 20, turn === 90),
    ...steps.marks,
    ...panelMarks(lines, move),
    ...view.marks,
    ...proofZone(resolved, safe.minX, safe.minY, safe.maxX - safe.minX, zone, context, paper.title),
  ];
  const only: SheetTile = {
    label: 'A1',
    column: 0,
    row: 0,
    page: 1,
    window: {
      x: content.minX,
      y: content.minY,
      width: content.maxX - content.minX,
      height: content.maxY - content.minY,
    },
    joins: { left: null, right: null, above: null, below: null },
  };
  const { width, height } = paper;
  const plan: SheetPlan = {
    paper: name,
    width,
    height,
    rotation: turn,
    columns: 1,
    rows: 1,
    tiles: [only],
    pages: 1,
    oneSheet: true,
  };
  return { plan, sheets: [{ width, height, marks }] };
}

/** One sheet as large as it must be, for a plotter. */
function drawSingle(resolved: Resolved, lines: PanelLines, context: SheetContext): DrawnSheets {
  const content = drawnWithDimensions(resolved, lines);
  const stop = paragraph(stopRule('the plotter'), { minX: 0, maxX: 70, minY: 0, maxY: 0 }, context);
  const zone = Math.max(PROOF + 2, -stop.bottom + 14 + positionsOf(resolved).length * 4.4);
  const inner = Math.ceil(Math.max(184, content.maxX - content.minX));
  const drawing = Math.ceil(content.maxY - content.minY);
  const paper: Paper = {
    title: 'one sheet',
    width: inner + SAFE_MARGIN.left + SAFE_MARGIN.right,
    height: Math.ceil(drawing + zone + TITLE + 24 + SAFE_MARGIN.top + SAFE_MARGIN.bottom),
  };
  const { safe } = layoutOf(paper);
  const frame: Bounds = { ...safe, minY: safe.minY + zone + 4, maxY: safe.maxY - TITLE - 16 };
  return { ok: true, ...oneSheet(resolved, lines, 'single', paper, frame, zone, 0, context) };
}

/** Datum lines as far as the drawing reaches: the ends that stand out are worth no sheet of their own. */
function datumsWithin(resolved: Resolved, lines: PanelLines): Segment[] {
  const { minX, minY, maxX, maxY } = drawnBounds(resolved);
  return lines.datums.map(({ axis, line: datum }) => {
    const at = segmentBounds(datum);
    return axis === 'vertical'
      ? line({ x: at.minX, y: minY }, { x: at.minX, y: maxY })
      : line({ x: minX, y: at.minY }, { x: maxX, y: at.minY });
  });
}

/** What must come out whole: cuts, centre lines, keep-outs and the datums near them. */
export function contentOf(resolved: Resolved, lines: PanelLines): Content {
  return {
    segments: [
      ...lines.cuts,
      ...lines.edges,
      ...lines.centres,
      ...lines.keepOuts,
      ...datumsWithin(resolved, lines),
    ],
    holes: resolved.cuts.flatMap((cut) =>
      cut.kind === 'outline'
        ? []
        : cut.stations.map(({ point }) => ({ point, radius: (cut.diameter ?? 0) / 2 })),
    ),
    corners: resolved.cuts.flatMap((cut) => (cut.kind === 'outline' ? cut.stations.map((s) => s.point) : [])),
  };
}

function drawTiles(
  resolved: Resolved,
  lines: PanelLines,
  name: PaperName,
  layout: Layout,
  context: SheetContext,
): DrawnSheets {
  const content = contentOf(resolved, lines);
  const size = windowSize(layout);
  const least = roughCount(content, size);
  if (least > MOST_SHEETS) return { ok: false, needed: least };
  const tiling = tile(content, size);
  if (tiling.tiles.length > MOST_SHEETS) return { ok: false, needed: tiling.tiles.length };
  const positions = positionsOf(resolved);
  const lists = listPages(positions, { layout });
  const plan = planOf(tiling, size, name, layout, 1 + lists.length);
  const seams = tiling.tiles.length > 1 ? seamsOf(tiling, size, lines) : null;
  const laid = [...lines.cuts, ...lines.keepOuts].map((s) => moveSegment(s, rotation(tiling.rotation)));
  const whole = unite(
    tiling.tiles
      .map(([c, r]) => windowOf(tiling, c, r, size))
      .concat(windowOf(tiling, 0, 0, size), windowOf(tiling, tiling.columns - 1, tiling.rows - 1, size)),
  );
  const set: TileSet = { resolved, lines, plan, layout, seams, whole, laid, context };
  return {
    ok: true,
    plan,
    sheets: [
      proofSheet(set),
      ...lists.map((part, i) => listSheet(set, part, i + 2)),
      ...plan.tiles.map((t) => tileSheet(set, t, windowOf(tiling, t.column, tiling.rows - 1 - t.row, size))),
    ],
  };
}

function windowSize({ window: { minX, minY, maxX, maxY } }: Layout): WindowSize {
  return { width: Math.round(maxX - minX), height: Math.round(maxY - minY) };
}

function planOf(
  tiling: Tiling,
  size: { width: number; height: number },
  paper: PaperName,
  layout: Layout,
  before: number,
): SheetPlan {
  const { columns, rows } = tiling;
  const name = (column: number, row: number): string => `${String.fromCharCode(65 + column)}${row + 1}`;
  const places = tiling.tiles.map(([column, up]) => ({ column, row: rows - 1 - up, up }));
  const printed = new Set(places.map(({ column, row }) => name(column, row)));
  const at = (column: number, row: number): string | null => {
    const label = name(column, row);
    return printed.has(label) ? label : null;
  };
  const ordered = places.sort((a, b) => a.row - b.row || a.column - b.column);
  const tiles = ordered.map(({ column, row, up }, i): SheetTile => {
    const back = rotation(tiling.rotation === 90 ? -90 : 0);
    const laid = windowOf(tiling, column, up, size);
    const own = segmentBounds(
      moveSegment(
        { kind: 'line', from: { x: laid.minX, y: laid.minY }, to: { x: laid.maxX, y: laid.maxY } },
        back,
      ),
    );
    return {
      label: name(column, row),
      column,
      row,
      page: before + i + 1,
      window: { x: own.minX, y: own.minY, width: own.maxX - own.minX, height: own.maxY - own.minY },
      joins: {
        left: at(column - 1, row),
        right: at(column + 1, row),
        above: at(column, row - 1),
        below: at(column, row + 1),
      },
    };
  });
  const { width, height } = layout.paper;
  const { rotation: turn } = tiling;
  return {
    paper,
    width,
    height,
    rotation: turn,
    columns,
    rows,
    tiles,
    pages: before + tiles.length,
    oneSheet: false,
  };
}

/** Ink may reach this far: the safe area, and half a line's width. */
export function inkLimit(paper: Paper): Bounds {
  return grow(layoutOf(paper).safe, 0.3);
}
