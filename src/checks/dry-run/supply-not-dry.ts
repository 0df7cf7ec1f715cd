import { finding, type RuleCard } from '../../diagnostics/rule-card.ts';
import { formatQuantity, quantityOf } from '../../units/format.ts';
import type { Rule } from '../rule.ts';
import { timedDemands } from './product-times.ts';

const guide = (wait: string) => `::part[Rail]{#rail}
::kit[Bracket]{#bracket}
::kit[Bracket bolt]{#bolt holds="bracket rail"}
::supply[Zinc primer]{#primer quantity="30 ml" dries="30 min"}

::step[Prime the edges]{#prime time="5 min"${wait}}

:apply[primer]{amount="10 ml" on=rail}.

::step[Hang the bracket]{#hang time="5 min"}

:fit[bracket] and :fit[bolt].`;

const card: RuleCard = {
  code: 'supply-not-dry',
  severity: 'error',
  title: 'Something is worked on before what was put on it is dry, or has cured',
  why: 'Sealant over wet primer does not hold, and a load on glue that has not cured comes down. The time runs from the end of the step that puts the product on; only what the guide states counts: waits, and the least time of the steps between.',
  bad: guide(''),
  good: guide(' wait="30 min"'),
};

/** What a product was put on is left alone until it is dry, and what needs it waits until it has cured. */
export const supplyNotDry: Rule = {
  card,
  played: true,
  run: (subject, report) => {
    for (const { kind, supply, at, applied, appliedIn, time, passed } of timedDemands(subject)) {
      if (kind === 'open-time' || passed >= time.base) continue;
      const verb = kind === 'dries' ? 'dries' : 'cures';
      const sure = formatQuantity(quantityOf('time', passed, 'min'));
      const so = passed <= 0 ? 'no time passes' : `only ${sure} pass for certain`;
      const needed = formatQuantity(time);
      const message = `the ${supply.noun.singular} ${verb} for ${needed}, and ${so} before this; write wait="${needed}" on the step "${appliedIn.titleText}", or put other work between`;
      report(finding(card, at, message, { notes: [{ message: 'put on here', at: applied.at }] }));
    }
  },
};
