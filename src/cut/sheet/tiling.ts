import { type Bounds, type Point, unite } from '../../geometry/point.ts';
import { type Segment, segmentBounds } from '../../geometry/segment.ts';
import { movePoint, moveSegment, rotation } from '../../geometry/transform.ts';
import { OVERLAP } from './layout.ts';
import { needed, stripsOf, stuckFor } from './needed.ts';
import { type AxisThings, type Offset, offsets } from './offsets.ts';
import { type Raster, rasterise } from './raster.ts';

/** What must come out whole on paper. */
export interface Content {
  readonly segments: readonly Segment[];
  /** Hole and slot centres with their radius: no seam within 3 mm of the centre, nor through the hole. */
  readonly holes: readonly { readonly point: Point; readonly radius: number }[];
  /** Corners: no seam within 3 mm. */
  readonly corners: readonly Point[];
}

/** A grid of windows laid over the turned drawing. Its rows count from below, its columns from the left. */
export interface Tiling {
  readonly rotation: 0 | 90;
  /** Lower left corner of the first window, in the turned drawing's millimetres. */
  readonly origin: Point;
  readonly columns: number;
  readonly rows: number;
  /** Which windows are printed, each as [column, row]. */
  readonly tiles: readonly (readonly [number, number])[];
}

/** Size of a tile's window, whole millimetres. */
export interface WindowSize {
  readonly width: number;
  readonly height: number;
}

/**
 * The grid that needs the fewest sheets, over both ways of turning the drawing and all offsets in steps of
 * 1 mm; among those, the one whose seams do least harm.
 */
export function tile(content: Content, window: WindowSize): Tiling {
  const [upright, turned] = ([0, 90] as const).map((turn) =>
    bestFor(turnContent(content, turn), turn, window),
  );
  const [a, b] = [upright as Scored, turned as Scored];
  const turnedWins = b.tiling.tiles.length - a.tiling.tiles.length || b.cost - a.cost - 1;
  return turnedWins < 0 ? b.tiling : a.tiling;
}

function turnContent(content: Content, turn: 0 | 90): Content {
  const move = rotation(turn);
  return {
    segments: content.segments.map((s) => moveSegment(s, move)),
    holes: content.holes.map(({ point, radius }) => ({ point: movePoint(point, move), radius })),
    corners: content.corners.map((p) => movePoint(p, move)),
  };
}

function axisThings(content: Content, axis: 'x' | 'y'): AxisThings {
  return {
    holes: content.holes.map(({ point, radius }) => ({ at: point[axis], radius })),
    corners: content.corners.map((p) => p[axis]),
  };
}

interface Scored {
  readonly tiling: Tiling;
  readonly cost: number;
}

function bestFor(content: Content, rotation: 0 | 90, window: WindowSize): Scored {
  const bounds = unite(content.segments.map(segmentBounds));
  const raster = rasterise(content.segments, bounds);
  const across = offsets(bounds.minX, raster.width, window.width, axisThings(content, 'x'));
  const up = offsets(bounds.minY, raster.height, window.height, axisThings(content, 'y'));
  const { x, y, tiles, cost } = search(raster, across, up);
  return {
    cost,
    tiling: {
      rotation,
      origin: { x: bounds.minX + x.shift, y: bounds.minY + y.shift },
      columns: x.count,
      rows: y.count,
      tiles: tiles.map((i) => [i % x.count, Math.floor(i / x.count)] as const),
    },
  };
}

interface Grid {
  readonly x: Offset;
  readonly y: Offset;
  readonly tiles: number[];
  readonly cost: number;
}

/** The grid of fewest sheets; among those, the first that costs least. */
function search(raster: Raster, across: readonly Offset[], up: readonly Offset[]): Grid {
  let best: Grid | null = null;
  for (const y of up) {
    const strips = stripsOf(raster, y);
    // Before these offsets, grids are known to need more sheets than the best, or as many.
    let [moreUntil, asManyUntil] = [0, 0];
    for (const [i, x] of across.entries()) {
      const cost = x.cost + y.cost;
      const cheaper = !best || cost < best.cost;
      if (best) {
        if (i >= moreUntil) moreUntil = i + stuckFor(strips, x, y, best.tiles.length + 1);
        if (i < moreUntil) continue;
        if (!cheaper && i >= asManyUntil) asManyUntil = i + stuckFor(strips, x, y, best.tiles.length);
        if (!cheaper && i < asManyUntil) continue;
      }
      const most: number = best ? best.tiles.length - (cheaper ? 0 : 1) : Number.POSITIVE_INFINITY;
      const tiles = needed(strips, x, y, most);
      if (tiles) best = { x, y, tiles, cost };
    }
  }
  if (!best) throw new Error('a grid always exists');
  return best;
}

/** The window of a tile, in the turned drawing's millimetres. */
export function windowOf(tiling: Tiling, column: number, row: number, size: WindowSize): Bounds {
  const minX = tiling.origin.x + column * (size.width - OVERLAP);
  const minY = tiling.origin.y + row * (size.height - OVERLAP);
  return { minX, minY, maxX: minX + size.width, maxY: minY + size.height };
}
