import type { RuleCard } from '../../diagnostics/rule-card.ts';
import type { Verb } from '../../model/inline.ts';
import { violationRule } from './violation-rule.ts';
import { done, spoken } from './words.ts';

const card: RuleCard = {
  code: 'part-still-covered',
  severity: 'error',
  title: 'Something is worked on that lies behind another part',
  why: 'What cannot be reached cannot be undone. The step is out of order, or the step that clears the way is missing.',
  bad: '::part[Arch liner]{#liner covers=sensor}\n::part[Level sensor]{#sensor}\n\n::step[Wipe the sensor]{#wipe}\n\nReach behind the :part[liner] and :remove[sensor]. Wipe its seat and :refit[sensor].',
  good: '::part[Arch liner]{#liner covers=sensor}\n::part[Level sensor]{#sensor}\n\n::step[Wipe the sensor]{#wipe}\n\n:move-aside[liner] and :remove[sensor]. Wipe its seat. Then :refit[sensor] and :move-back[liner].',
};

/** What is done to a thing by an action that names another. */
const onto: { readonly [V in Verb]?: string } = {
  apply: 'put on',
  'take-off': 'taken off',
  cut: 'cut in',
  drill: 'drilled in',
};

/** What is lifted, fitted, turned, plugged, coated or cut lies open. */
export const partStillCovered = violationRule(card, ['still-covered'], (violation, guide) => {
  const by = spoken(violation.by, violation.sides, guide);
  const item = spoken(violation.item, violation.sides, guide);
  const verb = by.is === 'is' ? 'covers' : 'cover';
  const { action } = violation;
  const how = action ? onto[action.verb] : undefined;
  if (action && how && action.target.value !== violation.item) {
    const other = spoken(action.target.value, [], guide);
    return { message: `${by.the} still ${verb} ${item.the} when ${other.the} ${other.is} ${how} ${item.it}` };
  }
  const worked = action ? done(action.verb, violation.item, guide) : 'worked on';
  return {
    message: `${by.the} still ${verb} ${item.the} when ${item.it === 'it' ? 'it is' : 'they are'} ${worked}`,
  };
});
