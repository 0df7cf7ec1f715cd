import { contourBounds } from '../../geometry/contour.ts';
import { type Bounds, unite } from '../../geometry/point.ts';
import type { Segment } from '../../geometry/segment.ts';
import { escapeXml, number, pathData } from '../files/path-data.ts';
import type { SheetContext } from '../job.ts';
import type { Resolved } from '../shape/resolved.ts';
import { LINES, type LineKind, type Mark } from './drawing.ts';
import { reachOf } from './panel-marks.ts';
import { shifted } from './shifted.ts';
import { scaledDown, wholeDrawing } from './whole-drawing.ts';

/** The drawing is reduced to this width, mm: lettering of 2.5 mm is then readable on a phone. */
const WIDTH = 84;

/**
 * A reduced drawing for a page: every colour is the page's own, so that it shows on light, dark and print.
 * Classes begin with `cut-`; there is no style and no script in it.
 */
export function previewOf(resolved: Resolved, { metrics, words }: SheetContext): string {
  const factor = factorOf(resolved);
  const view = wholeDrawing(scaledDown(resolved, factor), metrics, factor);
  const { window: w, lines } = view;
  const path = (kind: LineKind, name: string, segments: readonly Segment[]): string =>
    pathOf(kind, name, segments, w);
  const inner = [
    path('hatch', 'cut-hatch', lines.hatch),
    path('keepOut', 'cut-keep-out', lines.keepOuts),
    path('centre', 'cut-datum', [...view.references.map((r) => r.line), ...lines.centres]),
    path('thin', 'cut-panel-edge', lines.edges),
    path('cut', 'cut-line', lines.cuts),
    ...view.marks.map((mark) => markOf(mark, w)),
  ].join('');
  const side = resolved.side ? `, ${words[resolved.side]} side` : '';
  const builds = resolved.variant ? `, ${resolved.variant.builds}` : '';
  const title = escapeXml(
    `${resolved.title}${side}${builds}, seen on the ${resolved.face} face: reduced drawing, not for measuring`,
  );
  return `<svg xmlns="http://www.w3.org/2000/svg" class="cut-preview" viewBox="0 0 ${number(w.maxX - w.minX)} ${number(w.maxY - w.minY)}" role="img" aria-label="${title}" fill="none" stroke="currentColor">${inner}</svg>`;
}

/** What lies round the cuts, datums and keep-outs, may make the drawing this wide, mm. */
const WIDTH_OF_ALL = 1.5 * WIDTH;

/** How far a template is reduced: by its cuts, and further where datums and keep-outs lie far from a small cut. */
function factorOf(resolved: Resolved): number {
  const byCuts = WIDTH / wideOf(unite(resolved.cuts.map((cut) => contourBounds(cut.area))));
  return byCuts * Math.min(1, WIDTH_OF_ALL / wideOf(reachOf(scaledDown(resolved, byCuts))));
}

/** The width of a drawing, or what its height asks for: it may be a third higher than wide. */
const wideOf = (b: Bounds) => Math.max(b.maxX - b.minX, (b.maxY - b.minY) * 0.75);

function pathOf(kind: LineKind, name: string, segments: readonly Segment[], w: Bounds): string {
  if (segments.length === 0) return '';
  const { width, dash } = LINES[kind];
  const dashes = dash.length > 0 ? ` stroke-dasharray="${dash.join(' ')}"` : '';
  const d = pathData(
    segments.map((s) => shifted(s, w)),
    w.maxY - w.minY,
  );
  return `<path class="${name}" d="${d}" stroke-width="${width}"${dashes}/>`;
}

function markOf(mark: Mark, w: Bounds): string {
  if (mark.kind === 'stroke') return pathOf(mark.line, 'cut-dimension', mark.segments, w);
  if (mark.kind === 'clip') return '';
  if (mark.kind === 'fill') {
    const points = mark.points.map(({ x, y }) => `${number(x - w.minX)},${number(w.maxY - y)}`).join(' ');
    return `<polygon class="cut-arrow" points="${points}" fill="currentColor" stroke="none"/>`;
  }
  const [x, y] = [number(mark.at.x - w.minX), number(w.maxY - mark.at.y)];
  const turn = mark.turn === 90 ? ` transform="rotate(-90 ${x} ${y})"` : '';
  const weight = mark.bold ? ' font-weight="bold"' : '';
  return `<text class="cut-text" x="${x}" y="${y}" font-size="${number(mark.height / 0.729)}"${weight} text-anchor="${mark.anchor}" fill="currentColor" stroke="none"${turn}>${escapeXml(mark.text)}</text>`;
}
