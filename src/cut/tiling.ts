import { type Bounds, type Point, unite } from '../geometry/point.ts';
import { type Segment, segmentBounds } from '../geometry/segment.ts';
import { movePoint, moveSegment, rotation } from '../geometry/transform.ts';
import { OVERLAP } from './layout.ts';
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

/** Nothing that matters may lie nearer to a seam, mm. */
export const SEAM_CLEAR = 3;

/** A seam this much worse than its neighbour is never taken for any number of lesser faults. */
const COST = { holeCentre: 100_000, hole: 300, corner: 50, offCentre: 0.01 };

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

interface Scored {
  readonly tiling: Tiling;
  readonly cost: number;
}

function bestFor(content: Content, rotation: 0 | 90, window: WindowSize): Scored {
  const bounds = unite(content.segments.map(segmentBounds));
  const raster = rasterise(content.segments, bounds);
  const across = offsets(bounds.minX, raster.width, window.width, axisThings(content, 'x'));
  const up = offsets(bounds.minY, raster.height, window.height, axisThings(content, 'y'));
  let best: { x: Offset; y: Offset; tiles: number[]; cost: number } | null = null;
  for (const y of up) {
    for (const x of across) {
      const cost = x.cost + y.cost;
      // Fewer sheets always win; with as many, only a grid that does less harm.
      const most: number = best ? best.tiles.length - (cost < best.cost ? 0 : 1) : Number.POSITIVE_INFINITY;
      const tiles = needed(raster, x, y, most);
      if (tiles) best = { x, y, tiles, cost };
    }
  }
  if (!best) throw new Error('a grid always exists');
  const { x, y, tiles, cost } = best;
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

/** One way of laying windows along an axis: the first begins at `shift` ≤ 0 from the drawing's edge. */
interface Offset {
  readonly shift: number;
  readonly count: number;
  readonly pitch: number;
  readonly cost: number;
  /** Where the bands between and within the overlaps end, in whole millimetres from the drawing's edge. */
  readonly bands: readonly number[];
}

interface AxisThings {
  readonly holes: readonly { readonly at: number; readonly radius: number }[];
  readonly corners: readonly number[];
}

function axisThings(content: Content, axis: 'x' | 'y'): AxisThings {
  return {
    holes: content.holes.map(({ point, radius }) => ({ at: point[axis], radius })),
    corners: content.corners.map((p) => p[axis]),
  };
}

function offsets(start: number, length: number, window: number, things: AxisThings): Offset[] {
  const pitch = window - OVERLAP;
  if (length <= window)
    return [{ shift: -(window - length) / 2, count: 1, pitch, cost: 0, bands: bandsOf(0, 1, pitch) }];
  return Array.from({ length: pitch }, (_, i) => {
    const shift = -i;
    const count = Math.ceil((length - OVERLAP - shift) / pitch);
    const seams = Array.from({ length: count - 1 }, (_, k) => start + shift + (k + 1) * pitch + OVERLAP / 2);
    const spare = shift + count * pitch + OVERLAP - length;
    const cost =
      seams.reduce((sum, seam) => sum + seamCost(seam, things), 0) + Math.abs(spare + shift) * COST.offCentre;
    return { shift, count, pitch, cost, bands: bandsOf(shift, count, pitch) };
  });
}

function seamCost(seam: number, { holes, corners }: AxisThings): number {
  let cost = 0;
  for (const { at, radius } of holes) {
    const away = Math.abs(at - seam);
    if (away < SEAM_CLEAR) cost += COST.holeCentre;
    if (away < radius + SEAM_CLEAR) cost += COST.hole;
  }
  for (const at of corners) if (Math.abs(at - seam) < SEAM_CLEAR) cost += COST.corner;
  return cost;
}

/**
 * Which windows must be printed, as row × columns + column; `null` as soon as they are more than `most`. The
 * overlaps cut the drawing into bands: a band between overlaps shows in one window only, an overlap in both
 * of its neighbours. This runs for every grid that is tried, so it makes no objects.
 */
function needed(raster: Raster, x: Offset, y: Offset, most: number): number[] | null {
  const chosen = new Uint8Array(x.count * y.count);
  let count = 0;
  // First what one window alone can show, then what two share, then four.
  for (let shared = 0; shared <= 2; shared++) {
    for (let row = 0; row + 1 < y.bands.length; row++) {
      const sharedRow = row % 2 === 0 && y.count > 1 ? 1 : 0;
      if (sharedRow > shared) continue;
      for (let column = 0; column + 1 < x.bands.length; column++) {
        const sharedColumn = column % 2 === 0 && x.count > 1 ? 1 : 0;
        if (sharedRow + sharedColumn !== shared) continue;
        const ink = raster.count(
          x.bands[column] ?? 0,
          y.bands[row] ?? 0,
          x.bands[column + 1] ?? 0,
          y.bands[row + 1] ?? 0,
        );
        if (ink === 0) continue;
        const [right, top] = [Math.min(x.count - 1, column >> 1), Math.min(y.count - 1, row >> 1)];
        const [left, low] = [Math.max(0, (column >> 1) - sharedColumn), Math.max(0, (row >> 1) - sharedRow)];
        if (showsOne(chosen, x.count, left, right, low, top)) continue;
        chosen[low * x.count + left] = 1;
        if (++count > most) return null;
      }
    }
  }
  return [...chosen.keys()].filter((i) => chosen[i] === 1);
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

/** Edges of the bands along an axis: overlap, middle, overlap, and so on; one window shows everything. */
function bandsOf(shift: number, count: number, pitch: number): number[] {
  if (count === 1) return [-1e6, 1e6];
  return Array.from({ length: count }, (_, k) => [shift + k * pitch, shift + k * pitch + OVERLAP])
    .flat()
    .concat(shift + count * pitch, shift + count * pitch + OVERLAP);
}

/** The window of a tile, in the turned drawing's millimetres. */
export function windowOf(tiling: Tiling, column: number, row: number, size: WindowSize): Bounds {
  const minX = tiling.origin.x + column * (size.width - OVERLAP);
  const minY = tiling.origin.y + row * (size.height - OVERLAP);
  return { minX, minY, maxX: minX + size.width, maxY: minY + size.height };
}
