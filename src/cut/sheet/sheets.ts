import type { Bounds } from '../../geometry/point.ts';
import type { SheetArea, SheetPlan } from '../../model/cut-template.ts';
import { PAPERS, type PaperName } from '../../trade/paper.ts';
import type { Sheet } from '../drawing/drawing.ts';
import { type PanelLines, panelLines } from '../drawing/panel-marks.ts';
import { referencesIn } from '../drawing/references.ts';
import { allLines } from '../drawing/view.ts';
import type { SheetContext } from '../job.ts';
import type { Resolved } from '../shape/resolved.ts';
import { joinsOf, trimmedWindows } from './joins.ts';
import { layoutOf, windowSizes } from './layout.ts';
import { drawOne, drawSingle, placeOnOne } from './one-sheet.ts';
import { listPages, listSheet, proofSheet } from './proof-sheet.ts';
import { seamsOf } from './seams.ts';
import { MOST_SHEETS, plainCount, roughCount } from './sheet-count.ts';
import { type TileSet, tileSheet } from './tile-sheet.ts';
import { type Content, tile, wholeOf } from './tiling.ts';

/** The sheets of a template on one paper, or how many it would need where that is too many. */
type DrawnSheets =
  | { readonly ok: true; readonly plan: SheetPlan; readonly sheets: readonly Sheet[] }
  | { readonly ok: false; readonly needed: number };

/** Draws a template on a paper: one sheet where all of it fits, else a proof sheet and tiles. */
export function drawSheets(resolved: Resolved, name: PaperName, context: SheetContext): DrawnSheets {
  const lines = panelLines(resolved);
  if (name === 'single') return { ok: true, ...drawSingle(resolved, lines, context) };
  const one = drawOne(resolved, lines, name, context);
  return one ? { ok: true, ...one } : drawTiles(resolved, lines, name, context);
}

/**
 * How many sheets a template would need on a paper where they are more than can be laid true, else `null`. Nothing
 * is drawn, and a grid is searched only where a plain one is too large.
 */
export function tooManySheets(resolved: Resolved, name: PaperName, context: SheetContext): number | null {
  if (name === 'single' || placeOnOne(resolved, PAPERS[name], context)) return null;
  const content = contentOf(resolved, panelLines(resolved));
  const sizes = windowSizes(PAPERS[name]);
  const least = roughCount(content, sizes);
  if (least > MOST_SHEETS) return least;
  if (plainCount(content, sizes) <= MOST_SHEETS) return null;
  const { windows } = tile(content, sizes);
  return windows.length > MOST_SHEETS ? windows.length : null;
}

/** What must come out whole: cuts and centre lines. Keep-outs and datums are shown as far as the sheets reach. */
export function contentOf(resolved: Resolved, { cuts, edges, centres }: PanelLines): Content {
  return {
    segments: [...cuts, ...edges, ...centres],
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
  name: Exclude<PaperName, 'single'>,
  context: SheetContext,
): DrawnSheets {
  const paper = PAPERS[name];
  const layout = layoutOf(paper);
  const content = contentOf(resolved, lines);
  const sizes = windowSizes(paper);
  const least = roughCount(content, sizes);
  if (least > MOST_SHEETS) return { ok: false, needed: least };
  const tiling = tile(content, sizes);
  if (tiling.windows.length > MOST_SHEETS) return { ok: false, needed: tiling.windows.length };
  // From the top left on, as people read.
  const windows = tiling.windows.toSorted((a, b) => b.at.maxY - a.at.maxY || a.at.minX - b.at.minX);
  const joins = joinsOf(windows);
  const trimmed = trimmedWindows(windows, joins);
  const whole = wholeOf(tiling);
  const lists = listPages(resolved, layout, context.metrics);
  const first = 2 + lists.length;
  const tiles = windows.map(({ landscape, at }, i) => ({
    page: first + i,
    landscape,
    window: areaOf(at),
    trimmed: areaOf(trimmed[i] ?? at),
    joins: joins.flatMap(({ trimmed: a, under: b }) => (a === i ? [first + b] : b === i ? [first + a] : [])),
  }));
  const { width, height } = paper;
  const plan: SheetPlan = {
    paper: name,
    width,
    height,
    rotation: 0,
    tiles,
    pages: first - 1 + tiles.length,
    oneSheet: false,
  };
  const references = trimmed.flatMap((window) => referencesIn(resolved, window).map((r) => r.line));
  const seams = seamsOf(joins, trimmed, whole, [...allLines(lines), ...references]);
  const laid = [...lines.cuts, ...lines.edges];
  const set: TileSet = { resolved, lines, plan, layout, seams, trimmed, whole, laid, context };
  return {
    ok: true,
    plan,
    sheets: [
      proofSheet(set),
      ...lists.map((part, i) => listSheet(set, part, i + 2)),
      ...tiles.map((t, i) => tileSheet(set, t, i)),
    ],
  };
}

function areaOf({ minX, minY, maxX, maxY }: Bounds): SheetArea {
  return { x: minX, y: minY, width: maxX - minX, height: maxY - minY };
}
