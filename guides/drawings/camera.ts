/**
 * A vehicle in millimetres, seen from one direction: x from the nose to the rear, y from the middle to the side that is
 * seen, z up from the ground. Nothing shrinks with distance, so that curves keep their form and a closer picture is a
 * crop of the wider one.
 */
import { n } from './pen.ts';

/** From where, how large, and which point of the vehicle stands where in the 640 × 400 box. */
interface Stand {
  /** Degrees round from the front (0) to the side (90), and from level (0) to above (90). */
  readonly round: number;
  readonly above: number;
  /** Drawing units for a millimetre. */
  readonly scale: number;
  readonly point: Point;
  readonly stands: readonly [number, number];
  /** The right-hand side is seen: the nose looks to the right. */
  readonly right?: boolean;
}

type Point = readonly [number, number, number];

export interface Camera {
  /** Whether a face that looks this way (outwards) is seen, or stands edge on. */
  readonly sees: (x: number, y: number, z: number) => boolean;
  /** Where a point of the vehicle lies in the drawing. */
  readonly at: (x: number, y: number, z: number) => [number, number];
  /** Turns a path of M, L, C and Z with three numbers for each point into one of the drawing. */
  readonly flat: (d: string) => string;
  /** A path that is moved first, in millimetres. */
  readonly moved: (by: Point, d: string) => string;
}

const radians = (degrees: number): number => (degrees * Math.PI) / 180;

export function camera({ round, above, scale, point, stands, right = false }: Stand): Camera {
  const [sin, cos] = [Math.sin(radians(round)), Math.cos(radians(round))];
  const [up, level] = [Math.sin(radians(above)), Math.cos(radians(above))];
  const raw = (x: number, y: number, z: number): [number, number] => {
    const across = (y * cos + x * sin) * scale;
    const high = (z * level + (x * cos - y * sin) * up) * scale;
    return [right ? -across : across, -high];
  };
  const [left, top] = raw(...point);
  const at = (x: number, y: number, z: number): [number, number] => {
    const [px, py] = raw(x, y, z);
    return [px - left + stands[0], py - top + stands[1]];
  };
  const moved = ([dx, dy, dz]: Point, d: string): string =>
    d.replace(/(-?[\d.]+) (-?[\d.]+) (-?[\d.]+)/g, (_, x, y, z) => {
      const [px, py] = at(Number(x) + dx, Number(y) + dy, Number(z) + dz);
      return `${n(px)} ${n(py)}`;
    });
  const sees = (x: number, y: number, z: number): boolean =>
    -x * cos * level + y * sin * level + z * up > -0.05;
  return { at, moved, sees, flat: (d) => moved([0, 0, 0], d) };
}

/** A circle as a path: `side` stands along the vehicle, `front` across it, `floor` lies flat. */
export function hoop(x: number, y: number, z: number, r: number, plane: 'side' | 'front' | 'floor'): string {
  const k = r * 0.5523;
  const point = (a: number, b: number): string =>
    plane === 'side'
      ? `${x + a} ${y} ${z + b}`
      : plane === 'front'
        ? `${x} ${y + a} ${z + b}`
        : `${x + a} ${y + b} ${z}`;
  return `M${point(r, 0)}C${point(r, k)} ${point(k, r)} ${point(0, r)}C${point(-k, r)} ${point(-r, k)} ${point(-r, 0)}C${point(-r, -k)} ${point(-k, -r)} ${point(0, -r)}C${point(k, -r)} ${point(r, -k)} ${point(r, 0)}Z`;
}

/** Whether anything of a flat path lies in the box of a drawing; control points count, so that nothing is missed. */
export function isInFrame(d: string): boolean {
  const numbers = (d.match(/-?[\d.]+/g) ?? []).map(Number);
  const across = numbers.filter((_, i) => i % 2 === 0);
  const down = numbers.filter((_, i) => i % 2 === 1);
  return (
    Math.max(...across) > 0 && Math.min(...across) < 640 && Math.max(...down) > 0 && Math.min(...down) < 400
  );
}
