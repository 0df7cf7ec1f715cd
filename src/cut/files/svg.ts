import type { Bounds } from '../../geometry/point.ts';
import type { Segment } from '../../geometry/segment.ts';
import { LINES, type LineKind, type Mark } from '../drawing/drawing.ts';
import { shifted } from '../drawing/shifted.ts';
import type { View } from '../drawing/view.ts';
import { escapeXml, number, pathData } from './path-data.ts';

/** Height of a capital of DejaVu Sans in ems; the picture names that font and falls back on any other. */
const CAPITAL = 0.729;

/**
 * Writes a template as SVG in real millimetres, in groups for cut, centre, keep-out and dimension; `identity` is what
 * stands below the drawing, in a group of its own that nothing cuts.
 */
export function writeSvg(view: View, identity: readonly Mark[]): string {
  const { window: b, lines, resolved } = view;
  const [width, height] = [b.maxX - b.minX, b.maxY - b.minY];
  const path = (kind: LineKind, segments: readonly Segment[]): string => pathOf(kind, segments, b);
  const tools = resolved.cuts.flatMap((cut) => (cut.toolPath ? [cut.toolPath.segments] : []));
  const groups: [string, string][] = [
    ['cut', resolved.cuts.map((cut) => path('cut', cut.cut.segments)).join('')],
    ['tool-path', tools.map((segments) => path('trim', segments)).join('')],
    ['centre', path('centre', lines.centres)],
    [
      'datum',
      path(
        'centre',
        view.references.map((r) => r.line),
      ),
    ],
    ['keep-out', resolved.keepOuts.map((k) => path('keepOut', k.area.segments)).join('')],
    ['panel-edge', path('thin', lines.edges)],
    ['dimension', view.marks.map((mark) => markOf(mark, b)).join('')],
    ['identity', identity.map((mark) => markOf(mark, b)).join('')],
  ];
  const { title: name, variant } = resolved;
  const title = escapeXml(variant ? `${name}, ${variant.builds}` : name);
  return `<?xml version="1.0" encoding="UTF-8"?>
<svg xmlns="http://www.w3.org/2000/svg" width="${number(width)}mm" height="${number(height)}mm" viewBox="0 0 ${number(width)} ${number(height)}" fill="none" stroke="black">
<title>${title}</title>
${groups
  .filter(([, inner]) => inner !== '')
  .map(([id, inner]) => `<g id="${id}">${inner}</g>`)
  .join('\n')}
</svg>
`;
}

function pathOf(kind: LineKind, segments: readonly Segment[], b: Bounds): string {
  if (segments.length === 0) return '';
  const { width, dash } = LINES[kind];
  const dashes = dash.length > 0 ? ` stroke-dasharray="${dash.join(' ')}"` : '';
  return `<path d="${pathData(
    segments.map((s) => shifted(s, b)),
    b.maxY - b.minY,
  )}" stroke-width="${width}"${dashes}/>`;
}

function markOf(mark: Mark, b: Bounds): string {
  if (mark.kind === 'stroke') return pathOf(mark.line, mark.segments, b);
  if (mark.kind === 'clip') return mark.marks.map((inner) => markOf(inner, b)).join('');
  const place = ({ x, y }: { x: number; y: number }): string => `${number(x - b.minX)},${number(b.maxY - y)}`;
  if (mark.kind === 'fill')
    return `<polygon points="${mark.points.map(place).join(' ')}" fill="black" stroke="none"/>`;
  const [x, y] = [number(mark.at.x - b.minX), number(b.maxY - mark.at.y)];
  const turn = mark.turn === 90 ? ` transform="rotate(-90 ${x} ${y})"` : '';
  const weight = mark.bold ? ' font-weight="bold"' : '';
  const size = number(mark.height / CAPITAL);
  return `<text x="${x}" y="${y}" font-family="DejaVu Sans, sans-serif" font-size="${size}"${weight} text-anchor="${mark.anchor}" fill="black" stroke="none"${turn}>${escapeXml(mark.text)}</text>`;
}
