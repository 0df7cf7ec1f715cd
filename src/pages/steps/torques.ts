import { crowfootUse, itemTorqueWords } from '../../job/index.ts';
import type { Step } from '../../model/guide.ts';
import type { GuideContext } from '../frame/context.ts';
import { always, shownWhen } from '../frame/plans.ts';
import type { TorqueView } from './step-views.ts';
import { tightenedIn } from './tightening.ts';
import { torqueCheck } from './typed-check.ts';
import { wrenchSetting } from './wrench-setting.ts';

/** The torques that a step sets, with their order of tightening. */
export function torquesOf(step: Step, context: GuideContext): readonly TorqueView[] {
  return tightenedIn(step, context).flatMap(({ item, action, whens, count, sides }) => {
    if (!item.torque) return [];
    const all = count * sides;
    const narrowest = whens.at(-1);
    const crowfoot = crowfootUse(action, context.guide);
    return {
      ...(narrowest ? shownWhen(context, { value: narrowest }) : always),
      id: item.id,
      item: all === 1 ? item.noun.singular : `${all} ${item.noun.plural}`,
      torque: itemTorqueWords(item),
      setting: crowfoot && wrenchSetting(item.torque.value, crowfoot),
      pattern: item.pattern && count > 1 ? patternWords(item.pattern.value) : null,
      check: torqueCheck(item.torque.value, crowfoot),
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
