import { finding, type RuleCard } from '../../diagnostics/rule-card.ts';
import { actionsOf, stepsOf } from '../../job/index.ts';
import { formatQuantity } from '../../units/format.ts';
import type { Rule } from '../rule.ts';
import { amountIn } from './words.ts';

const cover = (amount: string) =>
  `::part[Roof panel]{#roof}\n::supply[Masking tape, 50 mm]{#tape quantity="20 m" yields="0.05 m² per m" temporary}\n\n::step[Cover the paint]{#cover}\n\n:apply[tape]{amount="${amount}" on=roof over="0.8 m²"}, saw, and :take-off[tape].`;

const card: RuleCard = {
  code: 'supply-yield-short',
  severity: 'error',
  title: 'The amount of a product does not go as far as it must',
  why: 'Five metres of a tape 50 mm wide cover a quarter of a square metre. Who has to cover more stops halfway and drives to the shop, or leaves paint bare under the saw.',
  bad: cover('5 m'),
  good: cover('16 m'),
};

/** An amount that is put on covers what it is said to cover, by the yield of the product. */
export const supplyYieldShort: Rule = {
  card,
  run: ({ guide }, report) => {
    for (const { node } of stepsOf(guide).flatMap(actionsOf)) {
      const item = guide.items.get(node.target.value);
      if (item?.kind !== 'supply' || !item.yields || !node.amount || !node.over) continue;
      const { does, of } = item.yields.value;
      const { value: over } = node.over;
      const { value: amount } = node.amount;
      const notes = [{ message: 'how far it goes is said here', at: item.yields.at }];
      const goes = `${formatQuantity(does)} per ${formatQuantity(of)}`;
      if (over.dimension !== does.dimension || amount.dimension !== of.dimension) {
        const message = `how far the ${item.noun.singular} goes is ${goes}; state the amount and what it is put over in units of these kinds`;
        report(finding(card, node.amount.at, message, { notes }));
        continue;
      }
      const needed = (over.base / does.base) * of.base;
      // Quotients of decimals are off by less than a billionth.
      if (amount.base >= needed * (1 - 1e-9)) continue;
      const message = `${formatQuantity(over)} take ${amountIn(amount, needed)} of the ${item.noun.singular} (${goes}), and ${formatQuantity(amount)} are put on`;
      report(finding(card, node.amount.at, message, { notes }));
    }
  },
};
