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
  const bars = data.flatMap((row, y) =>
    barsOf(row).map(({ x, width }) => `M${x} ${y}h${width}v1h-${width}z`),
  );
  return s(
    'svg',
    { className: ['qr-code'], viewBox: `0 0 ${size} ${size}`, role: 'img', ariaLabel: label },
    s('rect', { width: size, height: size, fill: '#ffffff' }),
    s('path', { d: bars.join(''), fill: '#000000', 'shape-rendering': 'crispEdges' }),
  );
}

/** The dark stretches of a row. */
function barsOf(row: readonly boolean[]): { readonly x: number; readonly width: number }[] {
  const starts = row.flatMap((dark, x) => (dark && !row[x - 1] ? [x] : []));
  return starts.map((x) => {
    const end = row.indexOf(false, x);
    return { x, width: (end < 0 ? row.length : end) - x };
  });
}
