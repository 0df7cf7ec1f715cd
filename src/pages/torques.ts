import { isCounted, isFixing, itemTorqueWords } from '../job/index.ts';
import { actionsOf } from '../job/walk.ts';
import type { Step } from '../model/guide.ts';
import type { GuideContext } from './context.ts';
import { always, shownWhen } from './plans.ts';
import type { TorqueView } from './step-views.ts';

/** The torques that a step sets, with their order of tightening. */
export function torquesOf(step: Step, context: GuideContext): readonly TorqueView[] {
  return actionsOf(step).flatMap(({ node, whens }) => {
    const item = node.verb === 'tighten' ? context.guide.items.get(node.target.value) : undefined;
    if (!item || !isFixing(item) || !item.torque || !isCounted(item)) return [];
    const sides = item.side?.value === 'each' && !step.side ? 2 : 1;
    const count = item.count.value * sides;
    const narrowest = whens.at(-1);
    return {
      ...(narrowest ? shownWhen(context, { value: narrowest }) : always),
      item: count === 1 ? item.noun.singular : `${count} ${item.noun.plural}`,
      torque: itemTorqueWords(item),
      pattern: item.pattern && count > 1 ? patternWords(item.pattern.value) : null,
    };
  });
}

function patternWords(pattern: 'cross' | 'circle' | 'row'): string {
  switch (pattern) {
    case 'cross':
      return 'crosswise';
    case 'circle':
      return 'one after another round the circle';
    case 'row':
      return 'along the row';
  }
}
