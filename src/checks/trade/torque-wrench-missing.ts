import type { RuleCard } from '../../diagnostics/rule-card.ts';
import { wrenchFits } from '../../trade/torque.ts';
import type { Rule, Subject } from '../rule.ts';
import type { ToolUse } from './tool-use.ts';
import { firstTool, reportUses, type UseFault, wordsOfUse } from './use-fault.ts';
import { torquesAsked, wrenchesOf } from './wrenches.ts';

const card: RuleCard = {
  code: 'torque-wrench-missing',
  severity: 'error',
  title: 'A torque is asked for, and no torque wrench is named',
  why: 'Nobody feels a torque in the hand. A fastener with a stated torque is tightened with a wrench that shows it, and that wrench has to be within reach.',
  bad: `::tool[13 mm socket]{#socket-13 drive="hex 13"}
::tool[Torque wrench, 10–60 N·m]{#torque-60 range="10..60 N·m"}
::fastener[Bracket bolt]{#bracket-bolt drive="hex 13" torque="25 N·m"}

::step[Loosen the bolt]{#loosen}

Lay the :tool[torque-60] ready and :loosen[bracket-bolt]{with=socket-13}.

::step[Tighten the bolt]{#tighten}

:tighten[bracket-bolt]{with=socket-13}.`,
  good: `::tool[13 mm socket]{#socket-13 drive="hex 13"}
::tool[Torque wrench, 10–60 N·m]{#torque-60 range="10..60 N·m"}
::fastener[Bracket bolt]{#bracket-bolt drive="hex 13" torque="25 N·m"}

::step[Loosen the bolt]{#loosen}

:loosen[bracket-bolt]{with=socket-13}.

::step[Tighten the bolt]{#tighten}

:tighten[bracket-bolt]{with="torque-60 socket-13"}.`,
};

/** Every tightening to a torque has a torque wrench: a tool with a range. */
export const torqueWrenchMissing: Rule = {
  card,
  run: (subject, report) => reportUses(card, subject, (use) => judge(use, subject), report),
};

function judge(use: ToolUse, subject: Subject): UseFault | null {
  const torques = torquesAsked(use);
  // Where a fastener with a drive has no tool at all, that is told, and the wrench with it.
  const toolless = use.bound && use.offers.length === 0;
  if (torques.length === 0 || wrenchesOf(use).length > 0 || toolless) return null;
  return {
    at: use.action.at,
    message: `no torque wrench is named to ${wordsOfUse(use, subject)}; name one with with=, on the action or on the item`,
    notes: use.item?.torque ? [{ message: 'the torque is stated here', at: use.item.torque.at }] : [],
    better: firstTool(subject, ({ range }) =>
      torques.every((torque) => range !== null && wrenchFits(torque, range.value).verdict === 'within'),
    ),
  };
}
