import type { Bounds, Point } from '../../geometry/point.ts';
import { flattenSegment, type Segment, startOf } from '../../geometry/segment.ts';
import { joinsOf } from './joins.ts';
import { OVERLAP, type WindowSizes } from './layout.ts';
import { HOLE_COST, SEAM_CLEAR } from './offsets.ts';
import type { Content, SheetWindow, Tiling } from './tiling.ts';

/** How far the four sheets are moved at a time in search of seams that keep clear of holes, mm. */
const STEP = 4;

/**
 * Four sheets turned round an empty middle, two lying and two upright, either way round; those whose seams keep
 * clear of holes cost less. None where the drawing is too large for them, or has something in the middle.
 */
export function pinwheelsOf(content: Content, b: Bounds, sizes: WindowSizes): Tiling[] {
  const { upright: u, lying: l } = sizes;
  const [width, height] = [u.width + l.width - OVERLAP, u.height + l.height - OVERLAP];
  const spare = { x: width - (b.maxX - b.minX), y: height - (b.maxY - b.minY) };
  if (spare.x < 0 || spare.y < 0) return [];
  const points = content.segments.flatMap((s) => sampled(s));
  const shifts = (room: number): number[] => {
    const count = Math.floor(room / STEP) + 1;
    const all = Array.from({ length: count }, (_, i) => i * STEP).concat(room / 2);
    return all.sort((p, q) => Math.abs(p - room / 2) - Math.abs(q - room / 2) || p - q);
  };
  let best: Tiling | null = null;
  for (const mirrored of [false, true]) {
    for (const right of shifts(spare.x)) {
      for (const up of shifts(spare.y)) {
        const windows = wheel({ x: b.minX - right, y: b.minY - up }, width, height, sizes, mirrored);
        if (!points.every((p) => windows.some(({ at }) => holds(at, p)))) continue;
        const cost = costOf(windows, content);
        if (!best || cost < best.cost) best = { windows, cost };
        if (cost === 0) return [best];
      }
    }
  }
  return best ? [best] : [];
}

function wheel(
  { x, y }: Point,
  width: number,
  height: number,
  { upright: u, lying: l }: WindowSizes,
  mirrored: boolean,
): SheetWindow[] {
  const place = (landscape: boolean, left: boolean, low: boolean): SheetWindow => {
    const size = landscape ? l : u;
    const minX = left !== mirrored ? x : x + width - size.width;
    const minY = low ? y : y + height - size.height;
    return { landscape, at: { minX, minY, maxX: minX + size.width, maxY: minY + size.height } };
  };
  return [
    place(true, true, false),
    place(false, false, false),
    place(false, true, true),
    place(true, false, true),
  ];
}

function sampled(segment: Segment): Point[] {
  const points: Point[] = [];
  let from = startOf(segment);
  for (const to of flattenSegment(segment, 0.05)) {
    const steps = Math.max(1, Math.ceil(Math.hypot(to.x - from.x, to.y - from.y) / 4));
    for (let i = 0; i <= steps; i++)
      points.push({ x: from.x + ((to.x - from.x) * i) / steps, y: from.y + ((to.y - from.y) * i) / steps });
    from = to;
  }
  return points;
}

function holds({ minX, maxX, minY, maxY }: Bounds, { x, y }: Point): boolean {
  return x >= minX + 0.25 && x <= maxX - 0.25 && y >= minY + 0.25 && y <= maxY - 0.25;
}

function costOf(windows: readonly SheetWindow[], { holes }: Content): number {
  let cost = 0;
  for (const { upright, at, from, to } of joinsOf(windows)) {
    for (const { point, radius } of holes) {
      const [across, along] = upright ? [point.x, point.y] : [point.y, point.x];
      const near = radius + SEAM_CLEAR;
      if (Math.abs(across - at) < near && along > from - near && along < to + near) cost += HOLE_COST;
    }
  }
  return cost;
}
