import type { RuleCard } from '../../diagnostics/rule-card.ts';
import { violationRule } from './violation-rule.ts';
import { spoken } from './words.ts';

const card: RuleCard = {
  code: 'bonded-for-good',
  severity: 'error',
  title: 'Something is removed that has been bonded',
  why: 'Adhesive does not let go. What is bonded in one step and removed in another would be torn off.',
  bad: '::kit[Lip]{#lip}\n\n::step[Bond the lip]{#bond}\n\n:bond[lip]. Then :remove[lip]. Then :fit[lip].',
  good: '::kit[Lip]{#lip}\n\n::step[Bond the lip]{#bond}\n\n:bond[lip].',
};

/** Nothing that has been bonded is removed. */
export const bondedForGood = violationRule(card, ['bonded'], (violation, guide) => {
  const item = spoken(violation.item, violation.sides, guide);
  return { message: `${item.the} ${item.is} removed after being bonded` };
});
