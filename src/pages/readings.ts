import { placedIn } from '../job/walk.ts';
import type { Block } from '../model/block.ts';
import type { Side } from '../model/item.ts';
import { formatRangeBoth } from '../units/format.ts';
import type { QuantityRange } from '../units/quantity.ts';
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
  const { least, most } = range;
  return {
    words: formatRangeBoth(range),
    dimension: most.dimension,
    unit: most.unit,
    least: least.base,
    most: most.base,
  };
}
