import type { RuleCard } from '../../diagnostics/rule-card.ts';
import { formatQuantity } from '../../units/format.ts';
import { violationRule } from './violation-rule.ts';
import { amountIn, usedElsewhere } from './words.ts';

const card: RuleCard = {
  code: 'supply-overused',
  severity: 'error',
  title: 'More of a supply is used than is declared',
  why: 'The gather list is what the technician fetches. A roll that ends in the middle of a bond ruins the bond.',
  bad: '::supply[Foam tape]{#tape quantity="1 m"}\n\n::step[Tape both ends]{#ends side=each}\n\n:apply[tape]{amount="0.6 m"}.',
  good: '::supply[Foam tape]{#tape quantity="1.2 m"}\n\n::step[Tape both ends]{#ends side=each}\n\n:apply[tape]{amount="0.6 m"}.',
};

/** The amounts that the steps use, both sides counted, do not exceed what is declared. */
export const supplyOverused = violationRule(card, ['supply-overused'], (violation, guide) => {
  const item = guide.items.get(violation.item);
  if (item?.kind !== 'supply' || !item.quantity) return null;
  const used = amountIn(item.quantity.value, violation.used);
  const notes = usedElsewhere(violation);
  return {
    message: `the steps use ${used} of ${item.noun.singular}, and ${formatQuantity(item.quantity.value)} is declared`,
    notes,
  };
});
