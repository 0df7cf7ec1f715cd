import { finding, type RuleCard } from '../../diagnostics/rule-card.ts';
import { formatQuantity, quantityOf } from '../../units/format.ts';
import type { Rule } from '../rule.ts';
import { timedDemands } from './product-times.ts';

const wipe = '::step[Sort the bolts]{#sort time="20 min"}\n\nLay the bolts out by length.\n\n';

const guide = (before: string, between: string) => `::part[Rail]{#rail}
::kit[Bracket]{#bracket}
::kit[Bracket bolt]{#bolt holds="bracket rail"}
::supply[Sealant]{#sealant quantity="30 ml" open-time="10 min"}

${before}::step[Lay the bead]{#bead time="5 min"}

:apply[sealant]{amount="10 ml" on=rail}.

${between}::step[Hang the bracket]{#hang time="5 min"}

:fit[bracket] and :fit[bolt].`;

const card: RuleCard = {
  code: 'open-time-over',
  severity: 'error',
  title: 'What a product is put on for comes after it has skinned over',
  why: 'A bead that has a skin does not wet what is pressed onto it. It looks sealed and leaks. The time runs from the end of the step that puts it on; what lies between is counted at its least.',
  bad: guide('', wipe),
  good: guide(wipe, ''),
};

/** What goes onto a product that stays open for a while goes on in time. */
export const openTimeOver: Rule = {
  card,
  played: true,
  run: (subject, report) => {
    for (const { kind, supply, at, applied, time, passed } of timedDemands(subject)) {
      if (kind !== 'open-time' || passed <= time.base) continue;
      const sure = formatQuantity(quantityOf('time', passed, 'min'));
      const message = `the ${supply.noun.singular} stays open for ${formatQuantity(time)}, and at least ${sure} pass before this; put it on later, or do what lies between first`;
      report(finding(card, at, message, { notes: [{ message: 'put on here', at: applied.at }] }));
    }
  },
};
