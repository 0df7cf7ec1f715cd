import { grow, type Point } from '../../geometry/point.ts';
import { line } from '../../geometry/segment.ts';
import { circle } from '../../geometry/shapes.ts';
import { moveSegment, rotation } from '../../geometry/transform.ts';
import { type Mark, stroke } from '../drawing/drawing.ts';
import { type Floor, floorOf } from '../drawing/floor.ts';
import type { PanelLines } from '../drawing/panel-marks.ts';
import { OVERLAP } from './layout.ts';
import { type Tiling, type WindowSize, windowOf } from './tiling.ts';

/** Two targets a whole number of millimetres apart, on different sheets. */
export interface Control {
  readonly from: Point;
  readonly to: Point;
  readonly names: readonly [string, string];
  /** mm */
  readonly length: number;
}

/** What sheets share, in the turned drawing's millimetres. */
export interface Seams {
  readonly crosses: readonly Point[];
  readonly controls: readonly Control[];
}

const ARM = 3;

/** Two crosses on every seam between printed sheets, and a control dimension along each direction. */
export function seamsOf(tiling: Tiling, size: WindowSize, lines: PanelLines): Seams {
  const printed = new Set(tiling.tiles.map(([c, r]) => `${c},${r}`));
  const first = windowOf(tiling, 0, 0, size);
  const last = windowOf(tiling, tiling.columns - 1, tiling.rows - 1, size);
  const floor = floorOf({ minX: first.minX, minY: first.minY, maxX: last.maxX, maxY: last.maxY });
  for (const kind of [
    lines.cuts,
    lines.edges,
    lines.centres,
    lines.keepOuts,
    lines.datums.map((d) => d.line),
  ]) {
    floor.blockLines(kind.map((s) => moveSegment(s, rotation(tiling.rotation))));
  }
  const crosses: Point[] = [];
  for (const [column, row] of tiling.tiles) {
    const w = windowOf(tiling, column, row, size);
    const [right, top] = [w.maxX - OVERLAP / 2, w.maxY - OVERLAP / 2];
    if (printed.has(`${column + 1},${row}`))
      crosses.push(...pair(floor, (t) => ({ x: right, y: mix(w.minY, w.maxY, t) })));
    if (printed.has(`${column},${row + 1}`))
      crosses.push(...pair(floor, (t) => ({ x: mix(w.minX, w.maxX, t), y: top })));
  }
  for (const { x, y } of crosses) floor.blockBox(grow({ minX: x, minY: y, maxX: x, maxY: y }, ARM));
  return { crosses, controls: controlsOf(tiling, size, floor) };
}

function mix(low: number, high: number, t: number): number {
  return low + (high - low) * t;
}

/** One cross towards each end of a seam, where no line of the drawing disturbs it if that can be had. */
function pair(floor: Floor, at: (t: number) => Point): Point[] {
  const choose = (from: number, towards: number): Point => {
    const places = Array.from({ length: 13 }, (_, i) => at(from + (towards * i) / 40));
    return places.find((p) => isOpen(floor, p)) ?? at(from);
  };
  return [choose(0.15, 1), choose(0.85, -1)];
}

function isOpen(floor: Floor, { x, y }: Point): boolean {
  return floor.isFree(grow({ minX: x, minY: y, maxX: x, maxY: y }, ARM));
}

function controlsOf(tiling: Tiling, size: WindowSize, floor: Floor): Control[] {
  const controls: Control[] = [];
  const across = widest(tiling.tiles.map(([c, r]) => [c, r]));
  if (across) {
    const [low, high] = [
      windowOf(tiling, across.from, across.line, size),
      windowOf(tiling, across.to, across.line, size),
    ];
    const found = search(floor, low.minY + 8, low.maxY - 8, low.minX + 8, high.maxX - 8, (a, b) => ({
      x: a,
      y: b,
    }));
    if (found) controls.push({ ...found, names: ['K1', 'K2'] });
  }
  const up = widest(tiling.tiles.map(([c, r]) => [r, c]));
  if (up) {
    const [low, high] = [windowOf(tiling, up.line, up.from, size), windowOf(tiling, up.line, up.to, size)];
    const found = search(floor, low.minX + 8, low.maxX - 8, low.minY + 8, high.maxY - 8, (a, b) => ({
      x: b,
      y: a,
    }));
    if (found) controls.push({ ...found, names: ['K3', 'K4'] });
  }
  return controls;
}

/** The row (or column) of printed tiles that spans furthest. */
function widest(
  tiles: readonly (readonly [number, number])[],
): { from: number; to: number; line: number } | null {
  let best: { from: number; to: number; line: number } | null = null;
  for (const lineAt of new Set(tiles.map(([, l]) => l))) {
    const along = tiles.filter(([, l]) => l === lineAt).map(([a]) => a);
    const [from, to] = [Math.min(...along), Math.max(...along)];
    if (to > from && (!best || to - from > best.to - best.from)) best = { from, to, line: lineAt };
  }
  return best;
}

/** Two open places on one line across the drawing, a whole number of millimetres apart. */
function search(
  floor: Floor,
  low: number,
  high: number,
  from: number,
  to: number,
  at: (along: number, across: number) => Point,
): Omit<Control, 'names'> | null {
  for (let across = low; across < high; across += 3) {
    for (let start = from; start < from + 40; start += 4) {
      for (let length = Math.floor(to - start); length > to - start - 40; length -= 4) {
        const [a, b] = [at(start, across), at(start + length, across)];
        if (isOpen(floor, a) && isOpen(floor, b)) return { from: a, to: b, length };
      }
    }
  }
  return null;
}

/** A cross that neighbouring sheets share. */
export function crossMark({ x, y }: Point): Mark {
  return stroke(
    'thin',
    line({ x: x - ARM, y }, { x: x + ARM, y }),
    line({ x, y: y - ARM }, { x, y: y + ARM }),
  );
}

/** A target of a control dimension: a cross in a circle. */
export function targetMark(point: Point): Mark[] {
  return [crossMark(point), stroke('thin', ...circle(point, 1.8).segments)];
}

/** Room that a cross or target takes. */
export function crossBox({ x, y }: Point): ReturnType<typeof grow> {
  return grow({ minX: x, minY: y, maxX: x, maxY: y }, ARM);
}
