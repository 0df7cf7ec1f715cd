import { placedIn } from '../job/walk.ts';
import type { Block } from '../model/block.ts';
import { formatRangeBoth } from '../units/format.ts';
import type { ReadingView } from './block-views.ts';
import type { GuideContext } from './context.ts';
import { shownWhen } from './plans.ts';

/** The values that some blocks ask to be measured, each once, with what is expected. */
export function readingsOf(blocks: readonly Block[], context: GuideContext): readonly ReadingView[] {
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
      expect: item.expect ? formatRangeBoth(item.expect.value) : null,
    });
  }
  return [...readings.values()];
}
