import { placedIn } from '../job/walk.ts';
import type { Block } from '../model/block.ts';
import type { Side } from '../model/item.ts';
import { formatQuantity, formatRangeBoth, rangeCounterpart } from '../units/format.ts';
import { parseQuantity } from '../units/parse.ts';
import type { Quantity, QuantityRange } from '../units/quantity.ts';
import type { ExpectView, ReadingView } from './block-views.ts';
import type { GuideContext } from './context.ts';
import { shownWhen } from './plans.ts';

/**
 * The values that some blocks ask to be measured, each once, with what is expected.
 *
 * @param stepSide of the step that they stand in; `null` outside the steps
 */
export function readingsOf(
  blocks: readonly Block[],
  context: GuideContext,
  stepSide: Side | null = null,
): readonly ReadingView[] {
  const readings = new Map<string, ReadingView>();
  for (const { node, whens } of placedIn(blocks)) {
    if (node.type !== 'action' || node.verb !== 'measure') continue;
    const item = context.guide.items.get(node.target.value);
    if (item?.kind !== 'measure') continue;
    const narrowest = whens.at(-1);
    readings.set(item.id, {
      ...shownWhen(context, narrowest ? { value: narrowest } : item.when),
      id: item.id,
      name: item.noun.label,
      expect: item.expect ? expectView(item.expect.value) : null,
      sides: stepSide === 'each' ? ['left', 'right'] : [''],
    });
  }
  return [...readings.values()];
}

function expectView(range: QuantityRange): ExpectView {
  const { dimension, unit } = range.most;
  const both = [range, rangeCounterpart(range) ?? range];
  return {
    words: formatRangeBoth(range),
    dimension,
    unit,
    least: Math.min(...both.map(({ least }) => printedBase(least))),
    most: Math.max(...both.map(({ most }) => printedBase(most))),
  };
}

/** What is printed is rounded, and whoever measures in inches goes by the inches that are printed. */
function printedBase(quantity: Quantity): number {
  const parsed = parseQuantity(formatQuantity(quantity), quantity.dimension, { negative: true });
  return parsed.ok ? parsed.quantity.base : quantity.base;
}
