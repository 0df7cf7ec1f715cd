import type { Bounds } from '../../geometry/point.ts';
import { joinedCells } from './joined-cells.ts';
import { OVERLAP, type WindowSize } from './layout.ts';
import { needed, stripsOf, stuckFor } from './needed.ts';
import { type AxisThings, HOLE_COST, type Offset, offsets } from './offsets.ts';
import type { Raster } from './raster.ts';
import { MOST_SHEETS } from './sheet-count.ts';
import type { Content, SheetWindow, Tiling } from './tiling.ts';

interface Grid {
  readonly x: Offset;
  readonly y: Offset;
  readonly tiles: number[];
  readonly cost: number;
}

/**
 * The grids of one window over a drawing that need the fewest sheets, over all offsets in steps of 1 mm: among
 * those the one whose seams do least harm, and the best of those whose seams keep clear of every hole. None of more
 * sheets than `most`.
 */
export function gridsOf(
  content: Content,
  raster: Raster,
  bounds: Bounds,
  size: WindowSize,
  { landscape, most }: { readonly landscape: boolean; readonly most: number },
): Tiling[] {
  const across = offsets(bounds.minX, raster.width, size.width, axisThings(content, 'x'));
  const up = offsets(bounds.minY, raster.height, size.height, axisThings(content, 'y'));
  const clear = (all: readonly Offset[]): Offset[] => all.filter(({ cost }) => cost < HOLE_COST);
  const fewest = search(raster, across, up, most);
  const found =
    fewest && fewest.cost >= HOLE_COST ? [fewest, search(raster, clear(across), clear(up), most)] : [fewest];
  return found.flatMap((grid): Tiling[] => {
    if (!grid) return [];
    const { x, y, tiles, cost } = grid;
    const joined = joinedCells(tiles, x.count, y.count);
    // A very large opening is laid by the references of its sheets rather than not at all.
    const cells = joined.withRungs.length > MOST_SHEETS ? joined.hanging : joined.withRungs;
    const windows = cells.map((cell): SheetWindow => {
      const minX = bounds.minX + x.shift + (cell % x.count) * (size.width - OVERLAP);
      const minY = bounds.minY + y.shift + Math.floor(cell / x.count) * (size.height - OVERLAP);
      return { landscape, at: { minX, minY, maxX: minX + size.width, maxY: minY + size.height } };
    });
    return [{ windows, cost }];
  });
}

function axisThings(content: Content, axis: 'x' | 'y'): AxisThings {
  return {
    holes: content.holes.map(({ point, radius }) => ({ at: point[axis], radius })),
    corners: content.corners.map((p) => p[axis]),
  };
}

/** The grid of fewest sheets; among those, the first that costs least. `null` where each offset needs more than `limit`. */
function search(
  raster: Raster,
  across: readonly Offset[],
  up: readonly Offset[],
  limit: number,
): Grid | null {
  let best: Grid | null = null;
  for (const y of up) {
    const strips = stripsOf(raster, y);
    // Before these steps to the left, grids are known to need more sheets than the best, or as many.
    let [moreUntil, asManyUntil] = [0, 0];
    for (const x of across) {
      const step = -x.shift;
      const cost = x.cost + y.cost;
      const cheaper = !best || cost < best.cost;
      const fewest: number = best ? best.tiles.length : limit;
      if (step >= moreUntil) moreUntil = step + stuckFor(strips, x, y, fewest + 1);
      if (step < moreUntil) continue;
      if (!cheaper && step >= asManyUntil) asManyUntil = step + stuckFor(strips, x, y, fewest);
      if (!cheaper && step < asManyUntil) continue;
      const tiles = needed(strips, x, y, cheaper ? fewest : fewest - 1);
      if (tiles) best = { x, y, tiles, cost };
    }
  }
  return best;
}
