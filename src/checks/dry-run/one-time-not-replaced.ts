import type { RuleCard } from '../../diagnostics/rule-card.ts';
import { violationRule } from './violation-rule.ts';
import { spoken } from './words.ts';

const card: RuleCard = {
  code: 'one-time-not-replaced',
  severity: 'error',
  title: 'A one-time fastener is gone and nothing takes its place',
  why: 'What may be used only once has to be in the box as new. Otherwise the job ends with a hole where a bolt was.',
  bad: '::fastener[Pre-coated bolt]{#bolt reuse=no}\n\n::step[Free the eye]{#free}\n\n:remove[bolt] and :discard[bolt].',
  good: '::fastener[Pre-coated bolt]{#bolt reuse=no}\n::kit[New bolt]{#new-bolt replaces=bolt}\n\n::step[Free the eye]{#free}\n\n:remove[bolt] and :discard[bolt].\n\n::step[Close it]{#close}\n\n:fit[new-bolt].',
};

/** What cannot be used again has its replacement fitted in its place. */
export const oneTimeNotReplaced = violationRule(card, ['one-time-lost'], (violation, guide) => {
  const item = spoken(violation.item, violation.sides, guide);
  return { message: `${item.the} cannot be used again, and nothing that replaces ${item.it} is fitted` };
});
