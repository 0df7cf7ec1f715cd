import type { RuleCard } from '../../diagnostics/rule-card.ts';

const bolts = `::tool[13 mm socket]{#socket-13 drive="hex 13"}
::tool[Torque wrench, 10–60 N·m]{#torque-60 range="10..60 N·m"}
::kit[Bar]{#bar}
::kit[Upper bolt]{#upper-bolt count=2 drive="hex 13" torque="20 N·m, 45 N·m" holds=bar with="torque-60 socket-13"}
::kit[Lower bolt]{#lower-bolt count=2 drive="hex 13" torque="20 N·m, 45 N·m" holds=bar with="torque-60 socket-13"}
::sequence[Bar bolts]{#bar-bolts order="lower-bolt upper-bolt"}

::step[Tighten the bar]{#tighten}

:fit[bar]. `;

export const sequenceAction: RuleCard = {
  code: 'sequence-action',
  severity: 'error',
  title: 'Something is done to a sequence besides tightening and loosening',
  why: 'A sequence is an order of tightening. Its fasteners are fitted and started one kind at a time, where each is named.',
  bad: `${bolts}:start[upper-bolt], :start[lower-bolt] and :start[bar-bolts]. Then :tighten[bar-bolts].`,
  good: `${bolts}:start[upper-bolt] and :start[lower-bolt]. Then :tighten[bar-bolts].`,
};
