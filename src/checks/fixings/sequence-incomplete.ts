import { finding, type RuleCard } from '../../diagnostics/rule-card.ts';
import { isFixing, listed } from '../../job/index.ts';
import type { Rule } from '../rule.ts';

const bolts = (order: string, tightened: string) => `::tool[13 mm socket]{#socket-13 drive="hex 13"}
::tool[Torque wrench, 10–60 N·m]{#torque-60 range="10..60 N·m"}
::kit[Bar]{#bar}
::kit[Upper bolt]{#upper-bolt count=2 drive="hex 13" torque="20 N·m, 45 N·m" holds=bar with="torque-60 socket-13"}
::kit[Lower bolt]{#lower-bolt count=2 drive="hex 13" torque="20 N·m, 45 N·m" holds=bar with="torque-60 socket-13"}
::kit[Axle bolt]{#axle-bolt drive="hex 13" torque="45 N·m" holds=bar with="torque-60 socket-13"}
::sequence[Bar bolts]{#bar-bolts order="${order}"}

::step[Tighten the bar]{#tighten}

:fit[bar]. Then :start[upper-bolt], :start[lower-bolt] and :start[axle-bolt]. Then ${tightened}.`;

const card: RuleCard = {
  code: 'sequence-incomplete',
  severity: 'error',
  title: 'A bolt is missing from the sequence of those that hold the same thing',
  why: 'A sequence pulls a part down evenly. A bolt that stands outside it is tightened against the others, or forgotten until the part has been pulled crooked.',
  bad: bolts('lower-bolt upper-bolt', ':tighten[bar-bolts] and :tighten[axle-bolt]'),
  good: bolts('lower-bolt upper-bolt axle-bolt', ':tighten[bar-bolts]'),
};

/** Every fastener with a torque that holds what the fasteners of a sequence hold stands in it. */
export const sequenceIncomplete: Rule = {
  card,
  run: ({ guide, lost }, report) => {
    for (const sequence of guide.sequences.values()) {
      const members = sequence.order.flatMap(({ value }) => guide.items.get(value) ?? []).filter(isFixing);
      const held = new Set(members.flatMap(({ holds }) => holds.map(({ value }) => value)));
      const missing = [...guide.items.values()].filter(
        (item) =>
          isFixing(item) &&
          item.torque !== null &&
          !members.includes(item) &&
          !lost.ids.has(item.id) &&
          item.holds.some(({ value }) => held.has(value)),
      );
      if (missing.length === 0) continue;
      const names = listed(missing.map(({ noun }) => `the ${noun.singular}`));
      const message = `${names} ${missing.length === 1 ? 'is' : 'are'} not in this sequence, though ${missing.length === 1 ? 'it holds' : 'they hold'} the same thing`;
      const notes = missing.map(({ noun, idAt }) => ({
        message: `the ${noun.singular} is declared here`,
        at: idAt,
      }));
      report(finding(card, sequence.idAt, message, { notes }));
    }
  },
};
