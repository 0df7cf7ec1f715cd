import type { Bounds, Point } from '../../geometry/point.ts';

/** A place on a sheet that is named. */
export interface Spot {
  readonly at: Point;
  /** How far from it its name may begin, mm. */
  readonly radius: number;
  /** How far its own lines reach, mm. */
  readonly reach: number;
}

/** Side of a cell in which spots are looked for, mm. */
const CELL = 10;

/**
 * Tells whether a spot of another station is nearer to a box than each of its own. The spots are kept by where they are, so
 * that the nearest is not looked for among thousands.
 *
 * @param all the spots of each station
 */
export function nearness(all: readonly (readonly Spot[])[]): (box: Bounds, own: readonly Spot[]) => boolean {
  const cells = new Map<string, { readonly spot: Spot; readonly among: readonly Spot[] }[]>();
  const cell = (at: number) => Math.floor(at / CELL);
  for (const among of all) {
    for (const spot of among) {
      const key = `${cell(spot.at.x)} ${cell(spot.at.y)}`;
      const here = cells.get(key);
      if (here) here.push({ spot, among });
      else cells.set(key, [{ spot, among }]);
    }
  }
  const longest = Math.max(0, ...all.flat().map(({ reach }) => reach));
  return (box, own) => {
    const least = Math.min(...own.map((one) => gap(box, one)));
    const away = least + longest;
    for (let x = cell(box.minX - away); x <= cell(box.maxX + away); x += 1) {
      for (let y = cell(box.minY - away); y <= cell(box.maxY + away); y += 1) {
        const here = cells.get(`${x} ${y}`) ?? [];
        if (here.some(({ spot, among }) => among !== own && gap(box, spot) < least)) return true;
      }
    }
    return false;
  };
}

/** How far a spot lies from a box, mm. */
function gap(box: Bounds, { at, reach }: Spot): number {
  const across = Math.max(box.minX - at.x, 0, at.x - box.maxX);
  return Math.hypot(across, Math.max(box.minY - at.y, 0, at.y - box.maxY)) - reach;
}
