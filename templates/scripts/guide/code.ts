/** Modules of white round a QR code (ISO/IEC 18004, 9.1). */
const QUIET_ZONE = 4;

/** A QR code as its modules tell it: the side of its drawing, in modules, and the path of what is dark. */
export interface CodeDrawing {
  readonly size: number;
  readonly path: string;
}

/**
 * Draws a QR code, a unit to a module.
 *
 * @param modules row by row, a bit to each from the highest of a byte down, in base64
 */
export function codeDrawing(modules: string): CodeDrawing {
  const bytes = atob(modules);
  const side = Math.floor(Math.sqrt(bytes.length * 8));
  const isDark = (x: number, y: number) => {
    const bit = y * side + x;
    return x < side && ((bytes.charCodeAt(bit >> 3) >> (7 - (bit & 7))) & 1) === 1;
  };
  let path = '';
  for (let y = 0; y < side; y += 1) {
    for (let x = 0; x < side; x += 1) {
      const start = x;
      while (isDark(x, y)) x += 1;
      if (x > start) path += `M${start + QUIET_ZONE} ${y + QUIET_ZONE + 0.5}h${x - start}`;
    }
  }
  return { size: side + 2 * QUIET_ZONE, path };
}
