import type { RuleCard } from '../../diagnostics/rule-card.ts';
import { violationRule } from './violation-rule.ts';
import { spoken } from './words.ts';

const card: RuleCard = {
  code: 'one-time-refitted',
  severity: 'error',
  title: 'A fastener is used again that must not be',
  why: 'A one-time fastener has given its clamping force or its thread-lock once. Used again it works loose. Turned loose is used up, even where it never comes out: repair manuals have bolts that are tightened by an angle, and self-locking nuts, renewed once they are loosened or removed (common practice).',
  bad: '::fastener[Pre-coated bolt]{#bolt reuse=no}\n\n::step[Free the eye]{#free}\n\n:remove[bolt].\n\n::step[Close it]{#close}\n\n:refit[bolt].',
  good: '::fastener[Pre-coated bolt]{#bolt reuse=no}\n::kit[New bolt]{#new-bolt replaces=bolt}\n\n::step[Free the eye]{#free}\n\n:remove[bolt] and :discard[bolt].\n\n::step[Close it]{#close}\n\n:fit[new-bolt].',
};

/** What cannot be used again does not go back in, and is not tightened again. */
export const oneTimeRefitted = violationRule(card, ['one-time-refitted'], (violation, guide) => {
  const item = spoken(violation.item, violation.sides, guide);
  const message =
    violation.action?.verb === 'tighten'
      ? `${item.the} ${item.is} tightened again after being turned loose, and must not be used again: take ${item.it} out, and fit a new one that replaces ${item.it}`
      : `${item.the} ${item.is} refitted, and must not be used again: fit a new one that replaces ${item.it}`;
  return { message };
});
