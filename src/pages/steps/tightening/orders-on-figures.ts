import type { DrawingPoint } from '../../../drawings/leader.ts';
import { TURNS_APART } from '../../../drawings/marks.ts';
import { overlayOf, type PictureSize } from '../../../drawings/place-marks.ts';
import { orderAloud } from '../../../drawings/tightening-order.ts';
import { inlinesOf } from '../../../job/actions/walk.ts';
import type { Figure, FigureMark } from '../../../model/block.ts';
import { pointsInPattern } from '../../../trade/pattern.ts';
import type { GuideContext } from '../../frame/context.ts';
import { shownWhen } from '../../frame/plans.ts';
import type { TighteningOrder } from './tightening.ts';

/** An order of tightening whose numbers stand on the picture of its fasteners. */
interface OrderOnFigure extends TighteningOrder {
  /** Middles of the fasteners in their turn, in units of the overlay. */
  readonly turns: readonly DrawingPoint[];
  /** The order in words, for whoever cannot see the picture. */
  readonly aloud: string;
}

/**
 * The first of the orders that a figure can show on its own fasteners: its marks give each of them a place, the
 * places lie as the pattern says, far enough apart for a number each, and the picture stands for the builds for
 * which the order does. A picture shows one order at most, since the numbers of two could not be told apart.
 *
 * @param size of the upright, uncropped picture
 */
export function orderOnFigure(
  figure: Figure,
  size: PictureSize,
  orders: readonly TighteningOrder[],
  context: GuideContext,
): OrderOnFigure | null {
  const { placed } = overlayOf(size, figure.crop?.value ?? null);
  for (const order of orders) {
    if (shownWhen(context, figure.when).plans !== order.plans) continue;
    const places = figure.marks
      .filter((mark) => names(mark, order.item))
      .flatMap(placesOf)
      .map(placed);
    const seen = places.filter((place) => place !== null);
    if (seen.length < places.length || seen.length !== order.order.length || !areApart(seen)) continue;
    const inPattern = pointsInPattern(seen, order.pattern);
    const turns = order.order.flatMap((position) => inPattern?.[position - 1] ?? []);
    if (turns.length === seen.length)
      return { ...order, turns, aloud: orderAloud(order.order, order.pattern, startOf(inPattern ?? [])) };
  }
  return null;
}

/** Whether the first thing that the line of a mark names is the item. */
function names({ text }: FigureMark, item: string): boolean {
  return inlinesOf(text)[0]?.node.target.value === item;
}

function placesOf({ point, also }: FigureMark) {
  return point ? [point, ...also] : [];
}

function areApart(places: readonly DrawingPoint[]): boolean {
  return places.every((a, index) =>
    places.slice(index + 1).every((b) => Math.hypot(b.x - a.x, b.y - a.y) >= TURNS_APART),
  );
}

/** "the upper left", "the top": where the first of the places lies among them. */
function startOf(places: readonly DrawingPoint[]): string {
  const [first] = places;
  if (!first) return '';
  const part = (of: (place: DrawingPoint) => number) => {
    const all = places.map(of);
    const [low, high] = [Math.min(...all), Math.max(...all)];
    return high === low ? 0.5 : (of(first) - low) / (high - low);
  };
  const down = part(({ y }) => y);
  const across = part(({ x }) => x);
  const row = down < 1 / 3 ? 'upper' : down > 2 / 3 ? 'lower' : '';
  const column = across < 1 / 3 ? 'left' : across > 2 / 3 ? 'right' : '';
  if (column === '') return row === 'lower' ? 'the bottom' : 'the top';
  return row === '' ? `the ${column}` : `the ${row} ${column}`;
}
