import type { Bounds } from '../../geometry/point.ts';
import { HEIGHT, lettering, type Mark, type Sheet, strokeLine } from '../drawing/drawing.ts';
import type { Metrics } from '../drawing/metrics.ts';
import { headLines, type Position, positionsOf, positionTable, rowsIn } from '../drawing/positions.ts';
import type { SheetContext } from '../job.ts';
import type { Resolved } from '../shape/resolved.ts';
import { layingSteps, paragraph, stopRule, titleBlock, upArrow } from './captions.ts';
import { bankCard, proofSquare, ruler } from './gauges.ts';
import type { Layout } from './layout.ts';
import { pageMap } from './page-map.ts';
import type { TileSet } from './tile-sheet.ts';

/** Height of the title at the top of a sheet, mm. */
export const TITLE = 34;

/** Size of the proof square with its four rulers, mm. */
export const PROOF = 112;

/** The 100 mm square with its diagonals, four rulers and the bank card, lower left corner of all at a point. */
function proofBlock(x: number, y: number): Mark[] {
  const square: Bounds = { minX: x + 6, minY: y + 6, maxX: x + 106, maxY: y + 106 };
  const card = { x: square.minX, y: square.minY };
  return [
    ...proofSquare(card, 100),
    bankCard(card),
    ...ruler(square, 'below', 'mm'),
    ...ruler(square, 'left', 'mm'),
    ...ruler(square, 'above', 'in'),
    ...ruler(square, 'right', 'in'),
    lettering('bank card 85.60 × 53.98', square.minX + 50, square.minY + 12, HEIGHT.small, {
      anchor: 'middle',
    }),
    lettering('100.0 × 100.0 mm', (square.minX + square.maxX) / 2, square.maxY - 8, HEIGHT.normal, {
      anchor: 'middle',
      bold: true,
    }),
  ];
}

/** Whether the list of positions fits the proof sheet's column, and how many lines a further page holds. */
export function listPages(resolved: Resolved, { safe }: Layout, metrics: Metrics): Position[][] {
  const positions = positionsOf(resolved);
  const held = ({ minX, maxX, minY, maxY }: Bounds): number =>
    rowsIn(maxY - minY, headLines(resolved, maxX - minX, metrics));
  if (positions.length <= held(listRoom(safe))) return [];
  const each = held({ ...safe, maxY: safe.maxY - TITLE });
  return Array.from({ length: Math.ceil(positions.length / each) }, (_, i) =>
    positions.slice(i * each, (i + 1) * each),
  );
}

function listRoom(safe: Bounds): Bounds {
  return {
    minX: safe.minX + PROOF + 3,
    maxX: safe.maxX,
    minY: safe.minY,
    maxY: safe.maxY - TITLE - PROOF - 6,
  };
}

/** The first sheet of a tiled template. */
export function proofSheet(set: TileSet): Sheet {
  const { layout, resolved, context, plan } = set;
  const { safe, paper } = layout;
  const top = safe.maxY - TITLE;
  const stop = paragraph(
    stopRule(paper.title),
    { minX: safe.minX + PROOF + 2, maxX: safe.maxX, minY: 0, maxY: top },
    context,
    HEIGHT.small,
  );
  const positions = positionsOf(resolved);
  const room = listRoom(safe);
  const own = listPages(resolved, layout, context.metrics).length === 0;
  const left: Bounds = {
    minX: safe.minX,
    maxX: safe.minX + PROOF - 4,
    minY: safe.minY,
    maxY: top - PROOF - 6,
  };
  const steps = paragraph(layingSteps(resolved, set), left, context);
  const below: Bounds = {
    minX: left.minX,
    maxX: left.maxX - 16,
    minY: safe.minY + 1,
    maxY: steps.bottom - 3,
  };
  const head = headLines(resolved, room.maxX - room.minX, context.metrics);
  const rows = own ? positions.length + head.length + 1 : 1;
  const beside: Bounds = { ...room, minY: safe.minY + 16, maxY: room.maxY - rows * 4.4 - 6 };
  const height = ({ minY, maxY }: Bounds): number => maxY - minY;
  const map = height(beside) > height(below) ? beside : below;
  return {
    width: paper.width,
    height: paper.height,
    label: '1 proof',
    marks: [
      ...titleBlock(resolved, { ...safe, maxX: safe.maxX - 34 }, context),
      lettering(`${plan.pages} sheets, ${paper.title}`, safe.maxX, safe.maxY - 5, HEIGHT.normal, {
        anchor: 'end',
        bold: true,
      }),
      lettering('sheet 1: proof', safe.maxX, safe.maxY - 11, HEIGHT.small, { anchor: 'end' }),
      ...proofBlock(safe.minX, top - PROOF),
      ...stop.marks,
      ...steps.marks,
      ...(plan.tiles.length > 1 ? pageMap(plan, set.trimmed, map, set.whole, set.laid, context.metrics) : []),
      ...upArrow(safe.maxX - 8, safe.maxY - 28, false),
      ...(own
        ? positionTable(positions, resolved, room, context.metrics)
        : [lettering('The list of positions is on the next sheet.', room.minX, room.maxY - 3, HEIGHT.small)]),
    ],
  };
}

/** A page of the list of positions. */
export function listSheet(set: TileSet, positions: readonly Position[], page: number): Sheet {
  const { layout, resolved, context, plan } = set;
  const { safe, paper } = layout;
  return {
    width: paper.width,
    height: paper.height,
    label: `${page} list`,
    marks: [
      ...titleBlock(resolved, { ...safe, maxX: safe.maxX - 34 }, context),
      lettering(`sheet ${page} of ${plan.pages}: positions`, safe.maxX, safe.maxY - 5, HEIGHT.small, {
        anchor: 'end',
      }),
      ...positionTable(positions, resolved, { ...safe, maxY: safe.maxY - TITLE }, context.metrics),
    ],
  };
}

/** The lower part of a sheet that carries everything: proof square, stop rule, list of positions. */
export function proofZone(
  resolved: Resolved,
  x: number,
  y: number,
  width: number,
  height: number,
  context: SheetContext,
  paperTitle: string,
): Mark[] {
  const column: Bounds = { minX: x + PROOF + 2, maxX: x + width, minY: y, maxY: y + height };
  const stop = paragraph(stopRule(paperTitle), column, context);
  return [
    strokeLine('thin', x, y + height + 2, x + width, y + height + 2),
    ...proofBlock(x, y + height - PROOF),
    ...stop.marks,
    ...positionTable(positionsOf(resolved), resolved, { ...column, maxY: stop.bottom }, context.metrics),
  ];
}
