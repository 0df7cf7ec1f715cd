import type { RuleCard } from '../../diagnostics/rule-card.ts';
import { violationRule } from './violation-rule.ts';
import { isA, spoken } from './words.ts';

const card: RuleCard = {
  code: 'fastener-left-over',
  severity: 'error',
  title: 'A fastener is left over',
  why: 'Every screw came from somewhere. One that is left over at the end is missing there.',
  bad: '::part[Bumper cover]{#cover}\n::fastener[Arch screw]{#arch-screw count=2 side=each holds=cover}\n\n::step[Take the cover off]{#cover-off}\n\n:remove[arch-screw] and :remove[cover].\n\n::step[Put the cover on]{#cover-on}\n\n:refit[cover].',
  good: '::part[Bumper cover]{#cover}\n::fastener[Arch screw]{#arch-screw count=2 side=each holds=cover}\n\n::step[Take the cover off]{#cover-off}\n\n:remove[arch-screw] and :remove[cover].\n\n::step[Put the cover on]{#cover-on}\n\n:refit[cover] and :refit[arch-screw].',
};

/** Every fastener, and every piece of the kit, that comes off goes back, or is discarded or handed over. */
export const fastenerLeftOver = violationRule(card, ['left'], (violation, guide) => {
  if (!(violation.state === 'off' && !isA(violation.item, 'part', guide))) return null;
  const item = spoken(violation.item, violation.sides, guide);
  return {
    message: `${item.the} ${item.is} left over at the end: ${item.it === 'it' ? 'it was' : 'they were'} removed and never refitted, discarded or handed over`,
  };
});
