import type { Bounds } from '../geometry/point.ts';
import { distanceBetween } from '../geometry/point.ts';
import { flattenSegment, type Segment, startOf } from '../geometry/segment.ts';

/** A drawing on squares of 1 mm: how many inked squares lie in any rectangle of whole squares. */
export interface Raster {
  readonly width: number;
  readonly height: number;
  /** Inked squares with `x1 ≤ x < x2`, `y1 ≤ y < y2`, counted from the drawing's lower left corner. */
  readonly count: (x1: number, y1: number, x2: number, y2: number) => number;
}

/** Inks every square that a segment passes through. `bounds` must hold all of them. */
export function rasterise(segments: readonly Segment[], bounds: Bounds): Raster {
  const width = Math.max(1, Math.ceil(bounds.maxX - bounds.minX - 1e-6));
  const height = Math.max(1, Math.ceil(bounds.maxY - bounds.minY - 1e-6));
  const stride = width + 1;
  const sums = new Int32Array(stride * (height + 1));
  const ink = (x: number, y: number): void => {
    // What lies on the last edge belongs to the last square.
    const column = Math.min(width - 1, Math.max(0, Math.floor(x - bounds.minX + 1e-9)));
    const row = Math.min(height - 1, Math.max(0, Math.floor(y - bounds.minY + 1e-9)));
    sums[(row + 1) * stride + column + 1] = 1;
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
  for (let y = 1; y <= height; y++) {
    for (let x = 1; x <= width; x++) {
      const at = y * stride + x;
      sums[at] =
        (sums[at] ?? 0) + (sums[at - 1] ?? 0) + (sums[at - stride] ?? 0) - (sums[at - stride - 1] ?? 0);
    }
  }
  const clamp = (v: number, most: number): number => Math.min(most, Math.max(0, v));
  const count: Raster['count'] = (x1, y1, x2, y2) => {
    const [left, right] = [clamp(x1, width), clamp(x2, width)];
    const [low, high] = [clamp(y1, height) * stride, clamp(y2, height) * stride];
    return (
      (sums[high + right] ?? 0) -
      (sums[low + right] ?? 0) -
      (sums[high + left] ?? 0) +
      (sums[low + left] ?? 0)
    );
  };
  return { width, height, count };
}
