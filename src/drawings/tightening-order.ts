import type { Element } from 'hast';
import { s } from 'hastscript';
import { type Pattern, patternPoints } from '../trade/pattern.ts';
import { type DrawingPoint, distanceToLeader, type Leader } from './leader.ts';

/** Size of a fastener in the drawing, and of the room around the outermost, in units of the drawing. */
const BOLT = 26;
const EDGE = 34;

/**
 * A pattern of fasteners, each with its turn in the order of tightening. The first has a heavy rim, so that
 * the eye finds where to begin; arrows lead from each to the next while they can be
 * followed and none runs over a fastener between.
 *
 * @param order positions (from 1, as {@link patternPoints} has them) in the order in which they are tightened
 */
export function tighteningOrderDrawing(order: readonly number[], pattern: Pattern): Element {
  const { width, height } = spread(order.length, pattern);
  const placed = patternPoints(order.length, pattern).map(({ x, y }) => ({
    x: round(EDGE + x * width),
    y: round(EDGE + y * height),
  }));
  const inTurn = order.map((position) => {
    const point = placed[position - 1];
    if (!point) throw new Error(`position ${position} is not in a pattern of ${order.length}`);
    return point;
  });
  const [fullWidth, fullHeight] = [round(width + 2 * EDGE), round(height + 2 * EDGE)];
  return s(
    'svg',
    {
      className: ['tightening-order', `pattern-${pattern}`],
      viewBox: `0 0 ${fullWidth} ${fullHeight}`,
      width: fullWidth,
      height: fullHeight,
      role: 'img',
      ariaLabel: orderAloud(order, pattern, isFrame(pattern, order.length) ? 'the upper left' : 'the top'),
    },
    flange(pattern, order.length, width, height),
    ...arrows(inTurn, pattern),
    ...inTurn.flatMap((point, index) => fastener(point, index + 1)),
  );
}

/**
 * An order in words: the turn of each position, in the order of the positions.
 *
 * @param start where the first position lies, for what goes round: "the upper left"
 */
export function orderAloud(order: readonly number[], pattern: Pattern, start: string): string {
  const turns = order.map((_, index) => order.indexOf(index + 1) + 1).join(', ');
  if (pattern === 'row') return `Tightening order, from left to right: ${turns}`;
  return `Tightening order, clockwise from ${start}: ${turns}`;
}

/** An even cross is drawn as two rows; an odd one lies on a circle, as {@link patternPoints} has it. */
function isFrame(pattern: Pattern, count: number): boolean {
  return pattern === 'cross' && count % 2 === 0;
}

/** How far apart the outermost fasteners stand, so that neighbours never touch. */
function spread(count: number, pattern: Pattern): { readonly width: number; readonly height: number } {
  const step = BOLT * 2 + 16;
  // Close together, so that the numerals of a long row are still read on a phone.
  if (pattern === 'row') return { width: (BOLT * 2 + 6) * (count - 1), height: 0 };
  if (isFrame(pattern, count)) return { width: step * (count / 2 - 1), height: step * 1.6 };
  const across = Math.max(180, step / Math.sin(Math.PI / count));
  return { width: across, height: across };
}

/** Most fasteners for which a line from each to the next can still be followed by eye. */
const LONGEST_PATH = 6;

/** Arrows from each fastener to the next, from rim to rim. */
function arrows(inTurn: readonly DrawingPoint[], pattern: Pattern): Element[] {
  if (pattern === 'row' || inTurn.length > LONGEST_PATH) return [];
  const leads = inTurn.slice(1).map((to, index) => ({ from: inTurn[index] ?? to, to }));
  const isCrossed = (lead: Leader) =>
    inTurn.some(
      (point) => point !== lead.from && point !== lead.to && distanceToLeader(point, lead) < BOLT + 4,
    );
  if (leads.some(isCrossed)) return [];
  const lines = leads.map(({ from, to }) => arrow(from, to));
  const look = { fill: 'none', stroke: 'currentColor', 'stroke-width': 1.5 };
  return [s('path', { className: 'order-path', d: lines.join(''), ...look })];
}

function arrow(from: DrawingPoint, to: DrawingPoint): string {
  const [dx, dy] = [to.x - from.x, to.y - from.y];
  const length = Math.sqrt(dx * dx + dy * dy);
  const [ux, uy] = [dx / length, dy / length];
  const at = (along: number, aside: number) =>
    `${round(from.x + ux * along - uy * aside)} ${round(from.y + uy * along + ux * aside)}`;
  const tip = length - BOLT - 5;
  return `M${at(BOLT + 5, 0)}L${at(tip, 0)}M${at(tip - 9, -4)}L${at(tip, 0)}L${at(tip - 9, 4)}`;
}

/** The edge of what the fasteners hold, as a narrow line. */
function flange(pattern: Pattern, count: number, width: number, height: number): Element {
  const edge = EDGE - 2;
  const look = { className: 'order-flange', fill: 'none', stroke: 'currentColor', 'stroke-width': 1.5 };
  if (pattern !== 'row' && !isFrame(pattern, count)) {
    const middle = round(EDGE + width / 2);
    return s('circle', { ...look, cx: middle, cy: middle, r: round(width / 2 + edge) });
  }
  return s('rect', {
    ...look,
    x: 2,
    y: 2,
    width: round(width + 2 * edge),
    height: round(height + 2 * edge),
    rx: edge,
  });
}

function fastener({ x, y }: DrawingPoint, turn: number): Element[] {
  const rim = turn === 1 ? 7 : 2.5;
  const look = { fill: 'none', stroke: 'currentColor', 'stroke-width': rim };
  return [
    s('circle', { className: 'order-fastener', cx: x, cy: y, r: BOLT - rim / 2, ...look }),
    s('text', { className: 'order-turn', x, y: y + 11, ...numeral }, String(turn)),
  ];
}

const numeral = { 'font-size': 30, 'font-weight': 700, 'text-anchor': 'middle', fill: 'currentColor' };

function round(value: number): number {
  return Number(value.toFixed(1));
}
