import { crowfootUse, itemTorqueWords } from '../../job/index.ts';
import type { Step } from '../../model/guide.ts';
import type { Fixing } from '../../model/item.ts';
import { type StatedFriction, stretchesGreased } from '../../trade/torque.ts';
import { greatestTorque } from '../../units/torque.ts';
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
      thread: threadWords(item),
      setting: crowfoot && wrenchSetting(item.torque.value, crowfoot),
      pattern: item.pattern && count > 1 ? patternWords(item.pattern.value) : null,
      check: torqueCheck(item.torque.value, crowfoot),
    };
  });
}

/** For which state of the thread the torque is, and what must not be done to it. */
function threadWords({ torque, thread, grade, friction }: Fixing): string | null {
  if (friction) return `for a thread that is ${frictionWords(friction.value)}`;
  const greatest = torque && greatestTorque(torque.value);
  if (!greatest || !thread || !grade) return null;
  return stretchesGreased(greatest, thread.value, grade.value)
    ? 'for a dry thread: oil or grease on it would let this torque stretch the bolt'
    : null;
}

function frictionWords({ words, k }: StatedFriction): string {
  return /\d/.test(words) ? `at a nut factor of ${k.toFixed(2)}` : `${words} (nut factor ${k.toFixed(2)})`;
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
