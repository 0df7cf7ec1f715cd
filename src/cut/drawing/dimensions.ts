import { type Bounds, type Point, subtract, unit } from '../../geometry/point.ts';
import { circle } from '../../geometry/shapes.ts';
import { movePoint } from '../../geometry/transform.ts';
import type { Resolved } from '../shape/resolved.ts';
import { arrowhead, HEIGHT, lettering, stroke } from './drawing.ts';
import { signed } from './labels.ts';
import { cutBounds, PAST_EDGE } from './panel-marks.ts';
import { rule, straight, type View } from './view.ts';

/** How far outside the drawing the dimension lines run, mm. */
export const LANE = 9;

/** Room that the figures of a dimension need beyond their line, mm. */
export const LANE_TEXT = 14;

/** Figures nearer to each other than this would touch, mm. */
const SPACING = 4.2;

/**
 * Running dimensions from the datum (ISO 129-1): one line below the drawing for x, one to its left for y, an
 * extension line to every corner and hole that can be reached without crossing anything, the figure at its
 * end. What cannot be reached stands in the list of positions and beside its mark.
 */
export function dimensionView(view: View): void {
  runAlong(view, 'x');
  runAlong(view, 'y');
}

/** Lane for x in template terms: y fixed below the drawing; for y: x fixed to its left. */
function runAlong(view: View, axis: 'x' | 'y'): void {
  const { resolved } = view;
  const b = cutBounds(resolved);
  const lane = (axis === 'x' ? b.minY : b.minX) - LANE;
  const origin = resolved.origin[axis];
  const at = (along: number, across: number): Point =>
    movePoint(axis === 'x' ? { x: along, y: across } : { x: across, y: along }, view.move);
  const drawn: number[] = [];
  const zero = at(origin, lane);
  for (const { along, across } of wanted(resolved, axis, b)) {
    if (drawn.some((known) => Math.abs(known - along) < SPACING)) continue;
    const run = clip([zero, at(along, lane)], view.window);
    if (run && !view.floor.runsClear(...run)) continue;
    if (extension(view, at(along, across - 1), at(along, lane), signed((along - origin) / view.factor)))
      drawn.push(along);
  }
  if (drawn.length === 0) return;
  // No further than what is dimensioned: a bare end would look like a figure that is missing.
  const ends = [Math.min(...drawn, origin), Math.max(...drawn, origin)].map((along) => at(along, lane)) as [
    Point,
    Point,
  ];
  const clipped = clip(ends, view.window);
  if (!clipped) return;
  rule(view, stroke('thin', straight(...clipped)));
  if (within(view.window, zero)) rule(view, stroke('thin', ...circle(zero, 0.9).segments));
  for (const along of drawn) {
    const tip = at(along, lane);
    if (Math.abs(along - origin) < 3 || !within(view.window, tip)) continue;
    view.marks.push(arrowhead(tip, unit(subtract(tip, zero))));
  }
}

/** Every corner and centre, each coordinate once and seen from the lane's side first; the extremes lead. */
function wanted(resolved: Resolved, axis: 'x' | 'y', b: Bounds): { along: number; across: number }[] {
  const other = axis === 'x' ? 'y' : 'x';
  const [low, high] = axis === 'x' ? [b.minX, b.maxX] : [b.minY, b.maxY];
  const nearest = new Map<string, { along: number; across: number }>();
  const stations = resolved.cuts.flatMap((cut) => {
    // From a hole the line begins where its centre lines end.
    const clear = cut.kind === 'outline' ? 0 : (cut.diameter ?? 0) / 2 + PAST_EDGE;
    return cut.stations.map(({ point }) => ({ along: point[axis], across: point[other] - clear }));
  });
  for (const station of stations) {
    const key = station.along.toFixed(2);
    const known = nearest.get(key);
    if (!known || station.across < known.across) nearest.set(key, station);
  }
  const rank = (along: number): number => Math.min(Math.abs(along - low), Math.abs(along - high));
  return [...nearest.values()].sort((p, q) => rank(p.along) - rank(q.along) || p.along - q.along);
}

/** An extension line and its figure, if both are free. The figure reads along the line, beyond the lane. */
function extension(view: View, from: Point, lane: Point, text: string): boolean {
  if (!within(view.window, lane) || !view.floor.isClear(from, lane)) return false;
  const upright = Math.abs(from.x - lane.x) < Math.abs(from.y - lane.y);
  const towards = upright ? Math.sign(lane.y - from.y) : Math.sign(lane.x - from.x);
  const beyond = 2 * towards;
  const mark = upright
    ? lettering(text, lane.x + HEIGHT.small / 2, lane.y + beyond, HEIGHT.small, {
        turn: 90,
        anchor: towards < 0 ? 'end' : 'start',
      })
    : lettering(text, lane.x + beyond, lane.y - HEIGHT.small / 2, HEIGHT.small, {
        anchor: towards < 0 ? 'end' : 'start',
      });
  if (mark.kind !== 'text') return false;
  const box = view.metrics.box(mark);
  if (!view.floor.isFree(box)) return false;
  const end = upright ? { x: lane.x, y: lane.y + towards } : { x: lane.x + towards, y: lane.y };
  const start = clip([from, end], view.window);
  if (!start) return false;
  view.floor.blockBox(box);
  view.marks.push(mark);
  rule(view, stroke('thin', straight(...start)));
  return true;
}

function within(b: Bounds, p: Point): boolean {
  return p.x >= b.minX && p.x <= b.maxX && p.y >= b.minY && p.y <= b.maxY;
}

/** An upright or level line cut to a rectangle; `null` where nothing is left. */
function clip([a, b]: readonly [Point, Point], to: Bounds): [Point, Point] | null {
  const hold = (p: Point): Point => ({
    x: Math.min(to.maxX, Math.max(to.minX, p.x)),
    y: Math.min(to.maxY, Math.max(to.minY, p.y)),
  });
  const [from, end] = [hold(a), hold(b)];
  const level = Math.abs(a.y - b.y) < 1e-6;
  if (level ? Math.abs(from.y - a.y) > 1e-6 : Math.abs(from.x - a.x) > 1e-6) return null;
  return Math.hypot(end.x - from.x, end.y - from.y) < 1e-6 ? null : [from, end];
}
