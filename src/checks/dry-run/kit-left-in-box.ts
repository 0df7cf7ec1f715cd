import type { RuleCard } from '../../diagnostics/rule-card.ts';
import { violationRule } from './violation-rule.ts';
import { spoken } from './words.ts';

const card: RuleCard = {
  code: 'kit-left-in-box',
  severity: 'error',
  title: 'Something from the box is never fitted',
  why: 'What the box holds is meant for the vehicle. What stays in it was forgotten, or is a spare that should be named as one.',
  bad: '::kit[Cradle]{#cradle}\n::kit[Clip]{#clip count=2}\n\n::step[Hang it]{#hang}\n\n:fit[cradle].',
  good: '::kit[Cradle]{#cradle}\n::kit[Clip]{#clip count=2}\n\n::step[Hang it]{#hang}\n\n:fit[cradle] and :fit[clip].',
};

/** Everything from the box is fitted, named as spare, discarded or handed over. */
export const kitLeftInBox = violationRule(card, ['left'], (violation, guide) => {
  if (!(violation.state === 'in the box')) return null;
  const item = spoken(violation.item, violation.sides, guide);
  return {
    message: `${item.the} ${item.is} still in the box at the end: no step fits ${item.it}, and ${item.it === 'it' ? 'it is' : 'they are'} not named as spare`,
  };
});
