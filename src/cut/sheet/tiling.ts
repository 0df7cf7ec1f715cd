import { type Bounds, grow, type Point, unite } from '../../geometry/point.ts';
import { type Segment, segmentBounds } from '../../geometry/segment.ts';
import { gridsOf } from './grid.ts';
import type { WindowSizes } from './layout.ts';
import { HOLE_COST } from './offsets.ts';
import { pinwheelsOf } from './pinwheel.ts';
import { rasterise } from './raster.ts';
import { plainCount } from './sheet-count.ts';

/** What must come out whole on paper. */
export interface Content {
  readonly segments: readonly Segment[];
  /** Hole and slot centres with their radius: no seam within 3 mm of the hole's edge. */
  readonly holes: readonly { readonly point: Point; readonly radius: number }[];
  /** Corners: no seam within 3 mm. */
  readonly corners: readonly Point[];
}

/** What a sheet shows, in the drawing's millimetres; up on the vehicle is up on every sheet. */
export interface SheetWindow {
  readonly landscape: boolean;
  readonly at: Bounds;
}

/** Windows that together show all of a drawing. */
export interface Tiling {
  readonly windows: readonly SheetWindow[];
  /** How much harm the seams do; from `HOLE_COST` on, one comes near a hole. */
  readonly cost: number;
}

/** Half the width of a line to cut, and a hair. */
const LINE = 0.3;

/**
 * The fewest sheets that show a drawing: upright, lying, or turned round an empty middle, over all offsets in steps
 * of 1 mm. One sheet more is taken where it keeps every seam clear of holes, but never more than a plain grid has.
 */
export function tile(content: Content, sizes: WindowSizes): Tiling {
  const all = candidates(content, sizes);
  const fewest = Math.min(...all.map(({ windows }) => windows.length));
  const most = Math.max(fewest, Math.min(plainCount(content, sizes), fewest + 1));
  const clear = all.filter(({ windows, cost }) => windows.length <= most && cost < HOLE_COST);
  const best = (clear.length > 0 ? clear : all).toSorted(
    (a, b) => a.windows.length - b.windows.length || a.cost - b.cost,
  )[0];
  if (!best) throw new Error('a grid always exists');
  return best;
}

function candidates(content: Content, sizes: WindowSizes): Tiling[] {
  const bounds = grow(unite(content.segments.map(segmentBounds)), LINE);
  const raster = rasterise(content.segments, bounds);
  const upright = gridsOf(content, raster, bounds, sizes.upright, {
    landscape: false,
    most: Number.POSITIVE_INFINITY,
  });
  // What needs two sheets more than another is never taken.
  const most = 1 + Math.min(...upright.map(({ windows }) => windows.length));
  const lying = gridsOf(content, raster, bounds, sizes.lying, { landscape: true, most });
  return [...upright, ...lying, ...pinwheelsOf(content, bounds, sizes)];
}

/** What all windows of a tiling cover together. */
export function wholeOf({ windows }: Tiling): Bounds {
  return unite(windows.map(({ at }) => at));
}
