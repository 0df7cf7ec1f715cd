import { placedIn } from '../../job/actions/walk.ts';
import { listed } from '../../job/index.ts';
import type { Block } from '../../model/block.ts';
import type { Measure, Side } from '../../model/item.ts';
import { formatReading } from '../../units/format.ts';
import type { GuideContext } from '../frame/context.ts';
import { shownWhen } from '../frame/plans.ts';
import type { ReadingView } from './block-views.ts';
import { sidesOf } from './evidence.ts';
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
      expect: expectedWords(item),
      check: readingCheck(item),
      sides: sidesOf(stepSide, context),
    });
  }
  return [...readings.values()];
}

/** What a reading should be: a range in both systems of units, or words; `null` where nothing is stated. */
export function expectedWords({ expect, words }: Measure): string | null {
  if (expect) return formatReading(expect.value);
  return words.length > 0 ? listed(words, 'or') : null;
}
