import type { RuleCard } from '../../diagnostics/rule-card.ts';
import { formatQuantity } from '../../units/format.ts';
import { violationRule } from './violation-rule.ts';
import { amountIn, usedElsewhere } from './words.ts';

const card: RuleCard = {
  code: 'supply-underused',
  severity: 'warning',
  title: 'Far more of a supply is declared than is used',
  why: 'Either the gather list asks for too much, or a step that uses the rest has been forgotten.',
  bad: '::supply[Foam tape]{#tape quantity="1 m"}\n\n::step[Tape the end]{#end}\n\n:apply[tape]{amount="0.4 m"}.',
  good: '::supply[Foam tape]{#tape quantity="0.5 m"}\n\n::step[Tape the end]{#end}\n\n:apply[tape]{amount="0.4 m"}.',
};

/** The steps use at least three fifths of what is declared. Temporary supplies come on rolls. */
export const supplyUnderused = violationRule(card, ['supply-underused'], (violation, guide) => {
  const item = guide.items.get(violation.item);
  if (item?.kind !== 'supply' || !item.quantity) return null;
  const used = amountIn(item.quantity.value, violation.used);
  const notes = usedElsewhere(violation);
  return {
    message: `the steps use only ${used} of ${item.noun.singular}, and ${formatQuantity(item.quantity.value)} is declared`,
    notes,
  };
});
