import { placedIn } from '../../job/walk.ts';
import type { Block } from '../../model/block.ts';
import type { Side } from '../../model/item.ts';
import { formatRangeBoth } from '../../units/format.ts';
import type { GuideContext } from '../frame/context.ts';
import { shownWhen } from '../frame/plans.ts';
import type { ReadingView } from './block-views.ts';
import { readingCheck } from './typed-check.ts';

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
      expect: item.expect ? formatRangeBoth(item.expect.value) : null,
      check: item.expect ? readingCheck(item.expect.value) : null,
      sides:
        stepSide === 'each'
          ? (['left', 'right'] as const).map((side) => ({ side, name: context.guide.words[side] }))
          : [{ side: '' as const, name: '' }],
    });
  }
  return [...readings.values()];
}
