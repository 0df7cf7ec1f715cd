import { finding, type RuleCard } from '../../diagnostics/rule-card.ts';
import { actionsOf, stepsOf } from '../../job/index.ts';
import type { Rule } from '../rule.ts';

const wipe = (amount: string) =>
  `::supply[Panel wipe]{#wipe quantity="40 ml"}\n\n::step[Wipe the edge]{#edge}\n\n:apply[wipe]{amount="${amount}"}.`;

const card: RuleCard = {
  code: 'supply-unit-differs',
  severity: 'error',
  title: 'A supply is declared in one kind of unit and used in another',
  why: 'Metres and millilitres cannot be added up, so nobody can tell whether there is enough.',
  bad: wipe('0.4 m'),
  good: wipe('40 ml'),
};

/** The amounts that are used are of the kind that is declared. */
export const supplyUnitDiffers: Rule = {
  card,
  run: ({ guide }, report) => {
    for (const { node } of stepsOf(guide).flatMap(actionsOf)) {
      const item = guide.items.get(node.target.value);
      if (item?.kind !== 'supply' || !item.quantity || !node.amount) continue;
      const { dimension } = item.quantity.value;
      if (node.amount.value.dimension === dimension) continue;
      const message = `the amount is a ${node.amount.value.dimension}, and the ${item.noun.singular} is declared as a ${dimension}`;
      const notes = [{ message: 'declared here', at: item.quantity.at }];
      report(finding(card, node.amount.at, message, { notes }));
    }
  },
};
