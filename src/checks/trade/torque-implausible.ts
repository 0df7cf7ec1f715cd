import { finding, type RuleCard } from '../../diagnostics/rule-card.ts';
import type { Rule } from '../rule.ts';
import { torqueFault, torqueNotes } from './torque-faults.ts';

const card: RuleCard = {
  code: 'torque-implausible',
  severity: 'warning',
  title: 'The torque is unusually low or high for the fastener',
  why: 'A torque that hardly clamps, or nearly stretches the bolt, is often a slip: lbf·in for lbf·ft, or the line above in the table. Some makers mean it, so it is worth one look.',
  bad: `::tool[13 mm socket]{#socket-13 drive="hex 13"}
::tool[Torque wrench, 2–20 N·m]{#torque-20 range="2..20 N·m"}
::fastener[Bracket bolt]{#bracket-bolt thread=M8x1.25 grade=8.8 drive="hex 13" torque="25 lbf·in"}

::step[Turn the bolt]{#bolt}

:loosen[bracket-bolt]{with=socket-13}.
:tighten[bracket-bolt]{with="torque-20 socket-13"}.`,
  good: `::tool[13 mm socket]{#socket-13 drive="hex 13"}
::tool[Torque wrench, 2–20 N·m]{#torque-20 range="2..20 N·m"}
::fastener[Bracket bolt]{#bracket-bolt thread=M8x1.25 grade=8.8 drive="hex 13" torque="18 N·m"}

::step[Turn the bolt]{#bolt}

:loosen[bracket-bolt]{with=socket-13}.
:tighten[bracket-bolt]{with="torque-20 socket-13"}.`,
};

/** Stated torques clamp, and leave something in hand. */
export const torqueImplausible: Rule = {
  card,
  run: ({ guide }, report) => {
    for (const item of guide.items.values()) {
      const fault = torqueFault(item);
      if (!fault?.item.torque || (fault.verdict !== 'low' && fault.verdict !== 'high')) continue;
      report(finding(card, fault.item.torque.at, fault.message, { notes: torqueNotes(fault.item, guide) }));
    }
  },
};
