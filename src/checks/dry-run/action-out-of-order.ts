import type { RuleCard } from '../../diagnostics/rule-card.ts';
import { violationRule } from './violation-rule.ts';
import { done, spoken, wrongStateOf } from './words.ts';

const card: RuleCard = {
  code: 'action-out-of-order',
  severity: 'error',
  title: 'An action does not fit the state that its item is in',
  why: 'The order of the text is the order of doing. An action that asks for a part on the bench cannot be done to one on the vehicle.',
  bad: '::part[Bumper cover]{#cover}\n\n::step[Part with the cover]{#part}\n\n:hand-over[cover].',
  good: '::part[Bumper cover]{#cover}\n\n::step[Part with the cover]{#part}\n\n:remove[cover] and :hand-over[cover].',
};

/** Every action starts from a state that the action table allows. */
export const actionOutOfOrder = violationRule(card, ['wrong-state'], (violation, guide) => {
  const verb = violation.action?.verb;
  if (!verb || wrongStateOf(verb, violation.state) !== 'other') return null;
  const item = spoken(violation.item, violation.sides, guide);

  const notes = violation.earlier ? [{ message: 'so since here', at: violation.earlier }] : [];
  return {
    message: `${item.the} cannot be ${done(verb, violation.item, guide)}: ${item.it === 'it' ? 'it is' : 'they are'} ${violation.state}`,
    notes,
  };
});
