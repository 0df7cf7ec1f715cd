import { finding, type RuleCard } from '../../diagnostics/rule-card.ts';
import { isFixing } from '../../job/index.ts';
import type { Rule } from '../rule.ts';

const bolts = (torque: string) => `::tool[13 mm socket]{#socket-13 drive="hex 13"}
::tool[Torque wrench, 10–60 N·m]{#torque-60 range="10..60 N·m"}
::kit[Bar]{#bar}
::kit[Upper bolt]{#upper-bolt count=2 drive="hex 13" torque="45 N·m" holds=bar with="torque-60 socket-13"}
::kit[Lower bolt]{#lower-bolt count=2 drive="hex 13" ${torque}holds=bar with="torque-60 socket-13"}
::sequence[Bar bolts]{#bar-bolts order="lower-bolt upper-bolt"}

::step[Tighten the bar]{#tighten}

:fit[bar], :start[upper-bolt] and :start[lower-bolt]. Then :tighten[bar-bolts].`;

const card: RuleCard = {
  code: 'sequence-unfit',
  severity: 'error',
  title: 'A sequence names something that has no torque',
  why: 'A sequence says in which order fasteners are brought to their torques, pass by pass. What has no torque has no pass.',
  bad: bolts(''),
  good: bolts('torque="20 N·m, 45 N·m" '),
};

/** A sequence is of fasteners that state a torque, each once. */
export const sequenceUnfit: Rule = {
  card,
  run: ({ guide }, report) => {
    for (const { order } of guide.sequences.values()) {
      for (const [index, ref] of order.entries()) {
        const item = guide.items.get(ref.value);
        if (!item || item.unknown.has('torque')) continue;
        const notes = [{ message: `the ${item.noun.singular} is declared here`, at: item.idAt }];
        if (!isFixing(item) || !item.torque) {
          const message = `the sequence names the ${item.noun.singular}, which states no torque`;
          report(finding(card, ref.at, message, { notes }));
        } else if (order.findIndex(({ value }) => value === ref.value) < index) {
          const message = `the sequence names the ${item.noun.singular} twice; passes stand on the fastener, as in torque="20 N·m, 45 N·m"`;
          report(finding(card, ref.at, message, { notes }));
        }
      }
    }
  },
};
