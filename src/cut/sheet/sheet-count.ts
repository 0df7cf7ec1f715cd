import { unite } from '../../geometry/point.ts';
import { segmentBounds } from '../../geometry/segment.ts';
import { OVERLAP } from './layout.ts';
import type { Content, WindowSize } from './tiling.ts';

/** More sheets than this cannot be taped true. */
export const MOST_SHEETS = 40;

/** The sheets of a plain grid, upright and with nothing left out: the search finds no more. */
export function plainCount({ segments }: Content, { width, height }: WindowSize): number {
  const b = unite(segments.map(segmentBounds));
  const along = (length: number, window: number): number =>
    length <= window ? 1 : Math.ceil((Math.ceil(length) - OVERLAP) / (window - OVERLAP));
  return along(b.maxX - b.minX, width) * along(b.maxY - b.minY, height);
}

/** A quick lower bound for drawings far too large to be searched: the squares of a coarse grid that hold ink. */
export function roughCount(content: Content, size: WindowSize): number {
  const b = unite(content.segments.map(segmentBounds));
  const across = Math.ceil((b.maxX - b.minX) / size.width);
  const up = Math.ceil((b.maxY - b.minY) / size.height);
  if (across * up <= 4 * MOST_SHEETS) return 0;
  const touched = new Set<string>();
  for (const segment of content.segments) {
    const s = segmentBounds(segment);
    for (let x = Math.floor((s.minX - b.minX) / size.width); x <= (s.maxX - b.minX) / size.width; x++) {
      for (let y = Math.floor((s.minY - b.minY) / size.height); y <= (s.maxY - b.minY) / size.height; y++)
        touched.add(`${x},${y}`);
    }
  }
  return touched.size;
}
