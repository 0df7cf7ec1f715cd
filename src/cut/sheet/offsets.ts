import { OVERLAP } from './layout.ts';

/** Nothing that matters may lie nearer to a seam, mm. */
export const SEAM_CLEAR = 3;

/** What a seam costs that comes near a hole: more than any number of lesser faults. */
export const HOLE_COST = 100_000;

const COST = { hole: HOLE_COST, corner: 50, offCentre: 0.01 };

/** One way of laying windows along an axis: the first begins at `shift` ≤ 0 from the drawing's edge. */
export interface Offset {
  readonly shift: number;
  readonly count: number;
  readonly pitch: number;
  readonly cost: number;
  /**
   * Where overlaps begin and end, in whole millimetres from the drawing's edge: overlap, middle, overlap, and
   * so on. One window shows everything.
   */
  readonly bands: readonly number[];
}

/** What seams keep clear of, along an axis. */
export interface AxisThings {
  readonly holes: readonly { readonly at: number; readonly radius: number }[];
  readonly corners: readonly number[];
}

/** Every way of laying windows along a drawing that is `length` whole millimetres long and begins at `start`. */
export function offsets(start: number, length: number, window: number, things: AxisThings): Offset[] {
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
    if (Math.abs(at - seam) < radius + SEAM_CLEAR) cost += COST.hole;
  }
  for (const at of corners) if (Math.abs(at - seam) < SEAM_CLEAR) cost += COST.corner;
  return cost;
}

function bandsOf(shift: number, count: number, pitch: number): number[] {
  if (count === 1) return [-1e6, 1e6];
  return Array.from({ length: count }, (_, k) => [shift + k * pitch, shift + k * pitch + OVERLAP])
    .flat()
    .concat(shift + count * pitch, shift + count * pitch + OVERLAP);
}
