import type { Element } from 'hast';
import { s } from 'hastscript';
import { encode } from 'uqr';

/** Modules of white round the code, without which readers do not find it (ISO/IEC 18004, 9.1). */
const QUIET_ZONE = 4;

/**
 * A QR code of a text as one path, a unit to a module. It is black on white whatever the page's colours are, since
 * readers look for dark on light. Level M: a seventh of it may be soiled.
 */
export function qrCode(text: string, label: string): Element {
  const { data, size } = encode(text, { ecc: 'M', border: QUIET_ZONE });
  return s(
    'svg',
    { className: ['qr-code'], viewBox: `0 0 ${size} ${size}`, role: 'img', ariaLabel: label },
    s('rect', { width: size, height: size, fill: '#ffffff' }),
    s('path', { d: data.map(rowPath).join(''), stroke: '#000000', 'shape-rendering': 'crispEdges' }),
  );
}

/**
 * The modules of a QR code without its quiet zone, row by row, a bit to each from the highest of a byte down, in
 * base64: what a page's script needs to draw it. The code is square, so that its length tells its size.
 */
export function qrModules(text: string): string {
  const { data } = encode(text, { ecc: 'M', border: 0 });
  const bits = data.flat();
  const bytes = Array.from({ length: Math.ceil(bits.length / 8) }, (_, index) =>
    bits.slice(index * 8, index * 8 + 8).reduce((byte, dark, bit) => byte | (dark ? 128 >> bit : 0), 0),
  );
  return Buffer.from(bytes).toString('base64');
}

/** A row as strokes a module wide along its middle: half as long as outlines, and a page may hold many codes. */
function rowPath(row: readonly boolean[], y: number): string {
  // Where dark and light meet; the quiet zone ends every stroke.
  const edges = row.flatMap((dark, x) => (dark === (row[x - 1] ?? false) ? [] : [x]));
  return edges
    .map((x, index) => {
      const step = x - (edges[index - 1] ?? 0);
      if (index === 0) return `M${x} ${y + 0.5}`;
      return index % 2 === 1 ? `h${step}` : `m${step} 0`;
    })
    .join('');
}
