import type { Offset } from './offsets.ts';
import type { Raster } from './raster.ts';

/** For each band of rows: the first inked column at or after each column; the width for none. */
type Strips = readonly Int32Array[];

/** The drawing as a row offset cuts it, so that column offsets need not look at its rows again. */
export function stripsOf({ width, height, inkAbove }: Raster, { bands }: Offset): Strips {
  return bands.slice(1).map((to, band) => {
    const from = Math.max(0, bands[band] ?? 0);
    const strip = new Int32Array(width + 1).fill(width);
    if (from >= height) return strip;
    const row = inkAbove.subarray(from * width, (from + 1) * width);
    const end = Math.min(to, height);
    let first = width;
    for (let x = width - 1; x >= 0; x--) {
      if ((row[x] ?? height) < end) first = x;
      strip[x] = first;
    }
    return strip;
  });
}

/**
 * Which windows must be printed, as row × columns + column; `null` as soon as they are more than `most`. The
 * overlaps cut the drawing into bands: a band between overlaps shows in one window only, an overlap in both
 * of its neighbours. This runs for many grids, so it makes no objects.
 */
export function needed(strips: Strips, x: Offset, y: Offset, most: number): number[] | null {
  const chosen = new Uint8Array(x.count * y.count);
  let count = 0;
  // First what one window alone can show, then what two share, then four.
  for (let shared = 0; shared <= 2; shared++) {
    for (let row = 0; row < strips.length; row++) {
      const strip = strips[row];
      const sharedRow = row % 2 === 0 && y.count > 1 ? 1 : 0;
      const sharedColumn = shared - sharedRow;
      if (!strip || sharedColumn < 0 || sharedColumn > (x.count > 1 ? 1 : 0)) continue;
      const [top, low] = [Math.min(y.count - 1, row >> 1), Math.max(0, (row >> 1) - sharedRow)];
      for (let column = x.count > 1 ? 1 - sharedColumn : 0; column + 1 < x.bands.length; column += 2) {
        const to = x.bands[column + 1] ?? 0;
        if (inkFrom(strip, x.bands[column] ?? 0, to) >= to) continue;
        const [right, left] = [Math.min(x.count - 1, column >> 1), Math.max(0, (column >> 1) - sharedColumn)];
        if (shared > 0 && showsOne(chosen, x.count, left, right, low, top)) continue;
        chosen[low * x.count + left] = 1;
        if (++count > most) return null;
      }
    }
  }
  return [...chosen.keys()].filter((i) => chosen[i] === 1);
}

/**
 * For how many column offsets, beginning with this one and going on 1 mm at a time, at least `enough` windows
 * are needed because each alone can show some ink. As the windows move left, the first ink in a window is the
 * last to leave it.
 */
export function stuckFor(strips: Strips, x: Offset, y: Offset, enough: number): number {
  let count = 0;
  let steps = Number.POSITIVE_INFINITY;
  for (let row = y.count > 1 ? 1 : 0; row < strips.length; row += 2) {
    const strip = strips[row];
    if (!strip) continue;
    for (let column = x.count > 1 ? 1 : 0; column + 1 < x.bands.length; column += 2) {
      const to = x.bands[column + 1] ?? 0;
      const first = inkFrom(strip, x.bands[column] ?? 0, to);
      if (first >= to) continue;
      steps = Math.min(steps, to - first);
      if (++count >= enough) return steps;
    }
  }
  return 0;
}

/** The first inked column of a strip from a place on; `to` or more for none before it. */
function inkFrom(strip: Int32Array, from: number, to: number): number {
  const last = strip.length - 1;
  const first = strip[Math.max(0, Math.min(last, from))] ?? last;
  return first === last ? to : first;
}

function showsOne(
  chosen: Uint8Array,
  columns: number,
  left: number,
  right: number,
  low: number,
  top: number,
): boolean {
  for (let row = low; row <= top; row++) {
    for (let column = left; column <= right; column++) if (chosen[row * columns + column] === 1) return true;
  }
  return false;
}
