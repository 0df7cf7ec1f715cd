import type { RuleCard } from '../../diagnostics/rule-card.ts';
import { violationRule } from './violation-rule.ts';
import { spoken } from './words.ts';

const card: RuleCard = {
  code: 'supply-never-applied',
  severity: 'warning',
  title: 'A supply has a quantity, and no step applies it',
  why: 'A quantity is fetched because some step uses it up. Where none does, that step has been forgotten, or the quantity is a guess.',
  bad: '::supply[Edge trim]{#trim quantity="0.3 m"}\n\n::step[Dress the edge]{#edge}\n\nLay out the :supply[trim].',
  good: '::supply[Edge trim]{#trim quantity="0.3 m"}\n\n::step[Dress the edge]{#edge}\n\n:apply[trim]{amount="0.25 m"} onto the raw edge.',
};

/** A supply whose quantity is declared is applied by some step. */
export const supplyNeverApplied = violationRule(card, ['never-applied'], (violation, guide) => {
  const item = spoken(violation.item, [], guide);
  return { message: `${item.the} ${item.has} a quantity, and no step applies ${item.it}` };
});
