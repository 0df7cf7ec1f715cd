import { tighteningOrderDrawing } from '../../../drawings/tightening-order.ts';
import type { Markup } from '../../../html/markup.ts';
import { stringify } from '../../../html/stringify.ts';
import { actionsOf, type Placed } from '../../../job/actions/walk.ts';
import { capitalised, handledEach, isCounted, isFixing } from '../../../job/index.ts';
import type { Step } from '../../../model/guide.ts';
import type { Action } from '../../../model/inline.ts';
import type { Counted, Fixing, Item } from '../../../model/item.ts';
import { type Pattern, tighteningOrder } from '../../../trade/pattern.ts';
import { formatBoth, formatQuantity } from '../../../units/format.ts';
import type { TorquePass, TorqueSpec } from '../../../units/torque.ts';
import type { GuideContext } from '../../frame/context.ts';
import { always, shownWhen } from '../../frame/plans.ts';
import type { Shown } from '../../frame/shared-views.ts';

/** The order in which a step tightens the fasteners of a pattern. */
export interface TighteningView extends Shown {
  /** "Bracket bolts: the order of tightening". */
  readonly title: string;
  readonly drawing: Markup;
  /** The passes, and for which sides the order holds. */
  readonly lines: readonly string[];
}

/** A fastener that a step tightens, with its place in the text. */
export interface Tightened extends Pick<Placed<Action>, 'whens'> {
  readonly item: Item & Counted & Fixing;
  readonly action: Action;
  /** How many it tightens on each side; named spares stay in the box. */
  readonly count: number;
  /** On how many sides it does so. */
  readonly sides: 1 | 2;
}

/** The fasteners that a step tightens, in the order of doing. */
export function tightenedIn(step: Step, { guide }: Pick<GuideContext, 'guide'>): readonly Tightened[] {
  return actionsOf(step).flatMap(({ node, whens }) => {
    const item = node.verb === 'tighten' ? guide.items.get(node.target.value) : undefined;
    if (!item || !isFixing(item) || !isCounted(item)) return [];
    const sides = item.side?.value === 'each' && !step.side ? 2 : 1;
    return { item, action: node, whens, count: handledEach(item), sides };
  });
}

/** An order of tightening, before it is known where it is shown. */
export interface TighteningOrder extends Omit<TighteningView, 'drawing'> {
  /** What is tightened. */
  readonly item: string;
  readonly pattern: Pattern;
  /** Positions, from 1, in the order in which they are tightened. */
  readonly order: readonly number[];
}

/** The orders of a step: one for each fastener with a pattern and 3 to 16 of them on a side. */
export function tighteningOrders(step: Step, context: GuideContext): readonly TighteningOrder[] {
  return tightenedIn(step, context).flatMap(({ item, whens, count, sides }) => {
    const order = item.pattern ? tighteningOrder(count, item.pattern.value) : undefined;
    if (!item.pattern || !order) return [];
    const narrowest = whens.at(-1);
    return {
      ...(narrowest ? shownWhen(context, { value: narrowest }) : always),
      title: `${capitalised(item.noun.plural)}: the order of tightening`,
      item: item.id,
      pattern: item.pattern.value,
      order,
      lines: [
        passesInWords(item.torque?.value ?? []),
        sides === 2 || step.side?.value === 'each' ? 'The same on each side.' : null,
      ].filter((line) => line !== null),
    };
  });
}

/** An order that no picture of its step places: as a drawing of its own. */
export function drawnOrder({ plans, only, title, lines, order, pattern }: TighteningOrder): TighteningView {
  return { plans, only, title, lines, drawing: stringify([tighteningOrderDrawing(order, pattern)]) };
}

/** "In 2 passes, each in this order: all to 25 N·m (18.4 lbf·ft), then all through a further 90°." */
export function passesInWords(passes: TorqueSpec): string {
  const [only] = passes;
  if (!only) return 'Tighten them in this order.';
  if (passes.length === 1) return `In one pass, in this order: each ${passWords(only)}.`;
  return `In ${passes.length} passes, each in this order: all ${passes.map(passWords).join(', then all ')}.`;
}

function passWords(pass: TorquePass): string {
  return pass.kind === 'torque'
    ? `to ${formatBoth(pass.value)}`
    : `through a further ${formatQuantity(pass.angle)}`;
}
