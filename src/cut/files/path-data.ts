import { pieceOf, pointAt, type Segment } from '../../geometry/segment.ts';

/** A number of an SVG file: micrometres are enough, and short files are readable. */
export function number(value: number): string {
  const text = value.toFixed(4).replace(/\.?0+$/, '');
  return text === '-0' ? '0' : text;
}

/** SVG path data of some segments, arcs as arcs. Y is turned down: `flip` − y. */
export function pathData(segments: readonly Segment[], flip: number): string {
  const parts: string[] = [];
  let at: { x: number; y: number } | null = null;
  for (const segment of segments.flatMap(halved)) {
    const from = pointAt(segment, 0);
    const to = pointAt(segment, 1);
    if (!at || Math.hypot(at.x - from.x, at.y - from.y) > 1e-6)
      parts.push(`M${number(from.x)} ${number(flip - from.y)}`);
    const end = `${number(to.x)} ${number(flip - to.y)}`;
    if (segment.kind === 'line') parts.push(`L${end}`);
    else {
      const r = number(segment.radius);
      // With y down a counter-clockwise arc has sweep flag 0.
      parts.push(
        `A${r} ${r} 0 ${Math.abs(segment.sweep) > Math.PI ? 1 : 0} ${segment.sweep > 0 ? 0 : 1} ${end}`,
      );
    }
    at = to;
  }
  return parts.join('');
}

/** A full turn has no end points of its own, so it is drawn as two halves. */
function halved(segment: Segment): Segment[] {
  if (segment.kind === 'line' || Math.abs(segment.sweep) < 1.99 * Math.PI) return [segment];
  return [pieceOf(segment, 0, 0.5), pieceOf(segment, 0.5, 1)];
}

/** Text for the inside of an element or of a double-quoted attribute. */
export function escapeXml(text: string): string {
  return text.replace(/&/g, '&amp;').replace(/</g, '&lt;').replace(/>/g, '&gt;').replace(/"/g, '&quot;');
}
