import type { RuleCard } from '../../diagnostics/rule-card.ts';
import { violationRule } from './violation-rule.ts';
import { done, spoken } from './words.ts';

const card: RuleCard = {
  code: 'part-still-fastened',
  severity: 'error',
  title: 'A part is lifted while something holds it',
  why: 'The technician pulls, the part does not come, and the next pull breaks the boss that the hidden screw sits in.',
  bad: '::part[Bumper cover]{#cover}\n::fastener[Arch screw]{#arch-screw count=2 side=each holds=cover}\n\n::step[Take the cover off]{#cover-off}\n\nMind the :fastener[arch-screw] and :remove[cover].\n\n::step[Put the cover on]{#cover-on}\n\n:refit[cover].',
  good: '::part[Bumper cover]{#cover}\n::fastener[Arch screw]{#arch-screw count=2 side=each holds=cover}\n\n::step[Take the cover off]{#cover-off}\n\n:remove[arch-screw] and :remove[cover].\n\n::step[Put the cover on]{#cover-on}\n\n:refit[cover] and :refit[arch-screw].',
};

/** A part is lifted, or moved aside, only when every fastener that holds it is out. */
export const partStillFastened = violationRule(card, ['still-held'], (violation, guide) => {
  const by = spoken(violation.by, violation.sides, guide);
  const part = spoken(violation.item, [], guide);
  const verb = by.is === 'is' ? 'holds' : 'hold';
  const lifted = violation.action ? done(violation.action.verb, violation.item, guide) : 'lifted';
  const message = `${by.the} still ${verb} ${part.the} when ${part.it === 'it' ? 'it is' : 'they are'} ${lifted}`;
  return { message: violation.later ? message : `${message}; no step before this takes ${by.it} out` };
});
