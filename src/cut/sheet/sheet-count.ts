import { unite } from '../../geometry/point.ts';
import { segmentBounds } from '../../geometry/segment.ts';
import { OVERLAP, type WindowSize, type WindowSizes } from './layout.ts';
import type { Content } from './tiling.ts';

/** More sheets than this cannot be taped true. */
export const MOST_SHEETS = 40;

/** The sheets of a plain grid, upright or lying and with nothing left out: the search finds no more. */
export function plainCount({ segments }: Content, { upright, lying }: WindowSizes): number {
  const b = unite(segments.map(segmentBounds));
  // The lines have a width.
  const along = (length: number, window: number): number =>
    length + 0.6 <= window ? 1 : Math.ceil((Math.ceil(length + 0.6) - OVERLAP) / (window - OVERLAP));
  const count = ({ width, height }: WindowSize): number =>
    along(b.maxX - b.minX, width) * along(b.maxY - b.minY, height);
  return Math.min(count(upright), count(lying));
}

/** A quick lower bound for drawings far too large to be searched: the squares of a coarse grid that hold ink. */
export function roughCount(content: Content, { lying, upright }: WindowSizes): number {
  const size = { width: lying.width, height: upright.height };
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
