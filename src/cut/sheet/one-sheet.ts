import { type Bounds, grow, type Point, unite } from '../../geometry/point.ts';
import { type Move, movePoint, moveSegment } from '../../geometry/transform.ts';
import type { SheetPlan } from '../../model/cut-template.ts';
import { PAPERS, type Paper, type PaperName, SAFE_MARGIN } from '../../trade/paper.ts';
import { dimensionView, LANE_TEXT } from '../drawing/dimensions.ts';
import { type Mark, type Sheet, stroke } from '../drawing/drawing.ts';
import { labelAreas, labelReferences, labelStations } from '../drawing/labels.ts';
import { cutBounds, drawnBounds, type PanelLines, panelMarks, reachOf } from '../drawing/panel-marks.ts';
import { headLines, positionsOf, rowsIn } from '../drawing/positions.ts';
import { openView } from '../drawing/view.ts';
import type { SheetContext } from '../job.ts';
import type { Resolved } from '../shape/resolved.ts';
import { layingSteps, paragraph, stopRule, titleBlock, upArrow } from './captions.ts';
import { layoutOf } from './layout.ts';
import { PROOF, proofZone, TITLE } from './proof-sheet.ts';

/** A drawing that one sheet holds, with its sheet. */
interface OneSheet {
  readonly plan: SheetPlan;
  readonly sheets: readonly Sheet[];
}

/** What a single sheet shows of a drawing, the most first: all with room for dimensions, without, the cuts alone. */
function contentsOf(resolved: Resolved): Bounds[] {
  const cuts = cutBounds(resolved);
  const wide = grow(cuts, 9);
  const dimensions = { ...wide, minX: wide.minX - LANE_TEXT, minY: wide.minY - LANE_TEXT };
  const [reach, drawn] = [grow(reachOf(resolved), 1), grow(drawnBounds(resolved), 1)];
  return [
    unite([dimensions, reach]),
    unite([dimensions, drawn]),
    unite([grow(cuts, 5), reach]),
    unite([grow(cuts, 5), drawn]),
    dimensions,
    grow(cuts, 5),
  ];
}

/** Draws all on one sheet of a paper; `null` where it does not fit. */
export function drawOne(
  resolved: Resolved,
  lines: PanelLines,
  name: Exclude<PaperName, 'single'>,
  context: SheetContext,
): OneSheet | null {
  const place = placeOnOne(resolved, PAPERS[name], context);
  return place && oneSheet(resolved, lines, name, PAPERS[name], place, context);
}

interface Place {
  readonly content: Bounds;
  readonly frame: Bounds;
  readonly zone: number;
  readonly turn: 0 | 90;
}

/** Where everything goes on a sheet that carries all; `null` where it does not fit. */
export function placeOnOne(resolved: Resolved, paper: Paper, context: SheetContext): Place | null {
  const { safe } = layoutOf(paper);
  const zone = PROOF + 2;
  const frame: Bounds = { ...safe, minY: safe.minY + zone + 4, maxY: safe.maxY - TITLE };
  const [roomX, roomY] = [frame.maxX - frame.minX, frame.maxY - frame.minY];
  const fits = (wide: number, high: number): boolean => wide <= roomX && high <= roomY;
  const places = ([0, 90] as const).flatMap((turn) =>
    contentsOf(resolved).map((content, cropped): Place & { cropped: number; fit: boolean } => {
      const [wide, high] = [content.maxX - content.minX, content.maxY - content.minY];
      return { content, frame, zone, turn, cropped, fit: turn === 0 ? fits(wide, high) : fits(high, wide) };
    }),
  );
  const place = places.filter(({ fit }) => fit).toSorted((a, b) => a.cropped - b.cropped)[0];
  if (!place) return null;
  const column: Bounds = { ...safe, minX: safe.minX + PROOF + 2, maxY: safe.minY + zone };
  const stop = paragraph(stopRule(paper.title), column, context);
  const steps = paragraph(layingSteps(resolved, null), stepsBox(safe), context);
  const head = headLines(resolved, column.maxX - column.minX, context.metrics);
  if (positionsOf(resolved).length > rowsIn(stop.bottom - safe.minY, head)) return null;
  return steps.bottom < safe.maxY - TITLE - 2 ? null : place;
}

function stepsBox(safe: Bounds): Bounds {
  return { ...safe, minX: safe.minX + 95 };
}

function oneSheet(
  resolved: Resolved,
  lines: PanelLines,
  name: PaperName,
  paper: Paper,
  { content, frame, zone, turn }: Place,
  context: SheetContext,
): OneSheet {
  const { safe } = layoutOf(paper);
  const move = centred(content, frame, turn);
  const view = openView(resolved, lines, move, frame, context.metrics);
  labelStations(view);
  dimensionView(view);
  labelReferences(view);
  labelAreas(view);
  const marks: Mark[] = [
    ...titleBlock(resolved, { ...safe, maxX: safe.minX + 79 }, context),
    ...upArrow(safe.minX + 86, safe.maxY - 20, turn === 90),
    ...paragraph(layingSteps(resolved, null), stepsBox(safe), context).marks,
    {
      kind: 'clip',
      to: frame,
      marks: [
        ...panelMarks(lines, move),
        stroke('centre', ...view.references.map((r) => moveSegment(r.line, move))),
      ],
    },
    ...view.marks,
    ...proofZone(resolved, safe.minX, safe.minY, safe.maxX - safe.minX, zone, context, paper.title),
  ];
  const { minX, minY, maxX, maxY } = view.shown;
  const area = { x: minX, y: minY, width: maxX - minX, height: maxY - minY };
  const { width, height } = paper;
  return {
    plan: {
      paper: name,
      width,
      height,
      rotation: turn,
      tiles: [{ page: 1, landscape: false, window: area, trimmed: area, joins: [] }],
      pages: 1,
      oneSheet: true,
    },
    sheets: [{ width, height, label: '1', marks }],
  };
}

/** Where the middle of a drawing lies on a sheet. */
function centred(content: Bounds, frame: Bounds, turn: 0 | 90): Move {
  const corners = [
    { x: content.minX, y: content.minY },
    { x: content.maxX, y: content.maxY },
  ].map((p) => movePoint(p, { mirror: false, turn, shift: { x: 0, y: 0 } })) as [Point, Point];
  const middle = { x: (corners[0].x + corners[1].x) / 2, y: (corners[0].y + corners[1].y) / 2 };
  const shift = { x: (frame.minX + frame.maxX) / 2 - middle.x, y: (frame.minY + frame.maxY) / 2 - middle.y };
  return { mirror: false, turn, shift };
}

/** One sheet as large as it must be, for a plotter. */
export function drawSingle(resolved: Resolved, lines: PanelLines, context: SheetContext): OneSheet {
  const content = unite(contentsOf(resolved));
  const stop = paragraph(stopRule('the plotter'), { minX: 0, maxX: 70, minY: 0, maxY: 0 }, context);
  const inner = Math.ceil(Math.max(184, content.maxX - content.minX));
  const head = headLines(resolved, inner - PROOF - 2, context.metrics);
  const rows = positionsOf(resolved).length + head.length;
  const zone = Math.max(PROOF + 2, -stop.bottom + 6 + rows * 4.4);
  const drawing = Math.ceil(content.maxY - content.minY);
  const paper: Paper = {
    title: 'one sheet',
    width: inner + SAFE_MARGIN.left + SAFE_MARGIN.right,
    height: Math.ceil(drawing + zone + TITLE + 24 + SAFE_MARGIN.top + SAFE_MARGIN.bottom),
  };
  const { safe } = layoutOf(paper);
  const frame: Bounds = { ...safe, minY: safe.minY + zone + 4, maxY: safe.maxY - TITLE - 16 };
  return oneSheet(resolved, lines, 'single', paper, { content, frame, zone, turn: 0 }, context);
}
