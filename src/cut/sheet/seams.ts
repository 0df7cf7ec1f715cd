import { type Bounds, grow, type Point } from '../../geometry/point.ts';
import { line, type Segment } from '../../geometry/segment.ts';
import { circle } from '../../geometry/shapes.ts';
import { HEIGHT, lettering, type Mark, stroke } from '../drawing/drawing.ts';
import { type Floor, floorOf } from '../drawing/floor.ts';
import type { Join } from './joins.ts';

/** Two targets a whole number of millimetres apart, on different sheets. */
interface Control {
  readonly from: Point;
  readonly to: Point;
  readonly names: readonly [string, string];
  /** mm */
  readonly length: number;
}

/** What sheets share, in the drawing's millimetres. */
export interface Seams {
  readonly joins: readonly Join[];
  readonly crosses: readonly Point[];
  readonly controls: readonly Control[];
}

const ARM = 3;

/** Two crosses on every seam between sheets, and a control dimension along each direction, clear of all lines. */
export function seamsOf(
  joins: readonly Join[],
  trimmed: readonly Bounds[],
  whole: Bounds,
  lines: readonly Segment[],
): Seams {
  const floor = floorOf(whole);
  floor.blockLines(lines);
  const crosses = joins.flatMap(({ upright, at, from, to }) =>
    pair(floor, (t) => {
      const along = from + (to - from) * t;
      return upright ? { x: at, y: along } : { x: along, y: at };
    }),
  );
  for (const cross of crosses) floor.blockBox(crossBox(cross));
  const controls: Control[] = [];
  for (const [axis, names] of [
    ['x', ['K1', 'K2']],
    ['y', ['K3', 'K4']],
  ] as const) {
    const found = joins.length > 0 ? controlAlong(axis, trimmed, floor) : null;
    if (!found) continue;
    controls.push({ ...found, names });
    for (const end of [found.from, found.to]) floor.blockBox(targetBox(end));
  }
  return { joins, crosses, controls };
}

/** One cross towards each end of a seam, where no line of the drawing disturbs it if that can be had. */
function pair(floor: Floor, at: (t: number) => Point): Point[] {
  const choose = (from: number, towards: number): Point => {
    const places = Array.from({ length: 13 }, (_, i) => at(from + (towards * i) / 40));
    return places.find((p) => floor.isFree(crossBox(p))) ?? at(from);
  };
  return [choose(0.15, 1), choose(0.85, -1)];
}

/** The longest control dimension along an axis that begins and ends on different sheets. */
function controlAlong(
  axis: 'x' | 'y',
  trimmed: readonly Bounds[],
  floor: Floor,
): Omit<Control, 'names'> | null {
  const span = (b: Bounds): [number, number] => (axis === 'x' ? [b.minX, b.maxX] : [b.minY, b.maxY]);
  const other = (b: Bounds): [number, number] => (axis === 'x' ? [b.minY, b.maxY] : [b.minX, b.maxX]);
  const pairs = trimmed.flatMap((low) =>
    trimmed.flatMap((high) => {
      const [from, to] = [Math.max(other(low)[0], other(high)[0]), Math.min(other(low)[1], other(high)[1])];
      const apart = span(high)[0] >= span(low)[1] - 1 && to - from > 16;
      return apart ? [{ start: span(low)[0], end: span(high)[1], from, to, split: span(low)[1] }] : [];
    }),
  );
  const longest = pairs.sort((a, b) => b.end - b.start - (a.end - a.start) || a.from - b.from);
  for (const { start, end, from, to, split } of longest) {
    const at = (along: number, across: number): Point =>
      axis === 'x' ? { x: along, y: across } : { x: across, y: along };
    for (let across = from + 8; across < to - 12; across += 3) {
      const firsts = steps(start + 6, Math.min(split - 14, start + 60), 4);
      for (const first of firsts.filter((along) => floor.isFree(targetBox(at(along, across))))) {
        const lengths = steps(Math.floor(end - first - 14), Math.ceil(end - first - 70), -4);
        const length = lengths.find(
          (l) => first + l > split + 6 && floor.isFree(targetBox(at(first + l, across))),
        );
        if (length !== undefined) return { from: at(first, across), to: at(first + length, across), length };
      }
    }
  }
  return null;
}

function steps(from: number, to: number, by: number): number[] {
  const count = Math.max(0, Math.floor((to - from) / by) + 1);
  return Array.from({ length: count }, (_, i) => from + i * by);
}

/** A cross that neighbouring sheets share. */
export function crossMark({ x, y }: Point): Mark {
  return stroke(
    'thin',
    line({ x: x - ARM, y }, { x: x + ARM, y }),
    line({ x, y: y - ARM }, { x, y: y + ARM }),
  );
}

/** A target of a control dimension, a cross in a circle, with its name beside it. */
export function targetMarks(point: Point, name: string): Mark[] {
  return [
    crossMark(point),
    stroke('thin', ...circle(point, 1.8).segments),
    lettering(name, point.x + ARM + 1, point.y - HEIGHT.small / 2, HEIGHT.small, { bold: true }),
  ];
}

/** Room that a cross takes. */
export function crossBox({ x, y }: Point): Bounds {
  return grow({ minX: x, minY: y, maxX: x, maxY: y }, ARM);
}

/** Room that a target takes with its name. */
export function targetBox(point: Point): Bounds {
  const box = crossBox(point);
  return { ...box, maxX: box.maxX + 6.5 };
}
