import { finding, type RuleCard } from '../../diagnostics/rule-card.ts';
import type { Rule } from '../rule.ts';
import { torqueFault, torqueNotes } from './torque-faults.ts';

const card: RuleCard = {
  code: 'torque-over-proof',
  severity: 'error',
  title: 'The torque is more than the fastener can bear',
  why: 'Above its proof load a bolt is stretched for good or breaks. A torque that does this on paper is a slip of the pen, a wrong unit, or a wrong class. What is assumed about friction stands in the message.',
  bad: `::tool[10 mm socket]{#socket-10 drive="hex 10"}
::tool[Torque wrench, 10–60 N·m]{#torque-60 range="10..60 N·m"}
::fastener[Shutter bolt]{#shutter-bolt thread=M6x1 grade=8.8 drive="hex 10" torque="18 N·m"}

::step[Turn the bolt]{#bolt}

:loosen[shutter-bolt]{with=socket-10}.
:tighten[shutter-bolt]{with="torque-60 socket-10"}.`,
  good: `::tool[10 mm socket]{#socket-10 drive="hex 10"}
::tool[Torque wrench, 2–20 N·m]{#torque-20 range="2..20 N·m"}
::fastener[Shutter bolt]{#shutter-bolt thread=M6x1 grade=8.8 drive="hex 10" torque="8 N·m"}

::step[Turn the bolt]{#bolt}

:loosen[shutter-bolt]{with=socket-10}.
:tighten[shutter-bolt]{with="torque-20 socket-10"}.`,
};

/** No stated torque loads its fastener beyond proof load. */
export const torqueOverProof: Rule = {
  card,
  run: ({ guide }, report) => {
    for (const item of guide.items.values()) {
      const fault = torqueFault(item);
      if (fault?.verdict !== 'over-proof' || !fault.item.torque) continue;
      report(finding(card, fault.item.torque.at, fault.message, { notes: torqueNotes(fault.item, guide) }));
    }
  },
};
