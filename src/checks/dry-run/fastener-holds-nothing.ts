import type { RuleCard } from '../../diagnostics/rule-card.ts';
import { violationRule } from './violation-rule.ts';
import { done, spoken } from './words.ts';

const card: RuleCard = {
  code: 'fastener-holds-nothing',
  severity: 'error',
  title: 'A fastener goes in before what it holds',
  why: 'A screw that is driven home before its part is there has to come out again, and a clip may not survive that.',
  bad: '::part[Bumper cover]{#cover}\n::fastener[Arch screw]{#arch-screw count=2 side=each holds=cover}\n\n::step[Take the cover off]{#cover-off}\n\n:remove[arch-screw] and :remove[cover].\n\n::step[Put the cover on]{#cover-on}\n\n:refit[arch-screw] and :refit[cover].',
  good: '::part[Bumper cover]{#cover}\n::fastener[Arch screw]{#arch-screw count=2 side=each holds=cover}\n\n::step[Take the cover off]{#cover-off}\n\n:remove[arch-screw] and :remove[cover].\n\n::step[Put the cover on]{#cover-on}\n\n:refit[cover] and :refit[arch-screw].',
};

/** A fastener goes in only when every part that it holds is in place. */
export const fastenerHoldsNothing = violationRule(card, ['nothing-to-hold'], (violation, guide) => {
  const item = spoken(violation.item, violation.sides, guide);
  const part = spoken(violation.part, violation.sides, guide);
  const how = violation.action ? done(violation.action.verb, violation.item, guide) : 'fitted';
  return {
    message: `${item.the} ${item.is} ${how} before ${part.the} ${part.is} in place: ${part.it === 'it' ? 'it is' : 'they are'} ${violation.state}`,
  };
});
