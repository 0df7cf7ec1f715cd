import type { RuleCard } from '../../diagnostics/rule-card.ts';
import { violationRule } from './violation-rule.ts';
import { isA, spoken } from './words.ts';

const card: RuleCard = {
  code: 'part-left-off',
  severity: 'error',
  title: 'A part of the vehicle is never put back',
  why: 'A part that lies on the bench when the vehicle is handed over is a complaint, or worse.',
  bad: '::part[Bumper cover]{#cover}\n\n::step[Take the cover off]{#cover-off}\n\n:remove[cover].',
  good: '::part[Bumper cover]{#cover}\n\n::step[Take the cover off]{#cover-off}\n\n:remove[cover].\n\n::step[Put the cover on]{#cover-on}\n\n:refit[cover].',
};

/** Every part that is taken off or moved aside is back, discarded or handed over at the end. */
export const partLeftOff = violationRule(card, ['left'], (violation, guide) => {
  if (!isA(violation.item, 'part', guide)) return null;
  const item = spoken(violation.item, violation.sides, guide);
  return { message: `${item.the} ${item.is} left ${violation.state} at the end` };
});
