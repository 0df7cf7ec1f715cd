import type { Bounds } from '../../geometry/point.ts';
import { distanceBetween } from '../../geometry/point.ts';
import { flattenSegment, type Segment, startOf } from '../../geometry/segment.ts';

/** A drawing on squares of 1 mm, counted from its lower left corner. */
export interface Raster {
  readonly width: number;
  readonly height: number;
  /** At row × width + column: the first inked row of that column at or above that row; `height` for none. */
  readonly inkAbove: Int32Array;
}

/** Inks every square that a segment passes through. `bounds` must hold all of them. */
export function rasterise(segments: readonly Segment[], bounds: Bounds): Raster {
  const width = Math.max(1, Math.ceil(bounds.maxX - bounds.minX - 1e-6));
  const height = Math.max(1, Math.ceil(bounds.maxY - bounds.minY - 1e-6));
  const inkAbove = new Int32Array(width * height).fill(height);
  const ink = (x: number, y: number): void => {
    // What lies on the last edge belongs to the last square.
    const column = Math.min(width - 1, Math.max(0, Math.floor(x - bounds.minX + 1e-9)));
    const row = Math.min(height - 1, Math.max(0, Math.floor(y - bounds.minY + 1e-9)));
    inkAbove[row * width + column] = row;
  };
  for (const segment of segments) {
    let from = startOf(segment);
    for (const to of flattenSegment(segment, 0.05)) {
      const steps = Math.max(1, Math.ceil(distanceBetween(from, to) / 0.2));
      for (let i = 0; i <= steps; i++) {
        ink(from.x + ((to.x - from.x) * i) / steps, from.y + ((to.y - from.y) * i) / steps);
      }
      from = to;
    }
  }
  for (let at = width * (height - 1) - 1; at >= 0; at--) {
    if (inkAbove[at] === height) inkAbove[at] = inkAbove[at + width] ?? height;
  }
  return { width, height, inkAbove };
}
