import type { RuleCard } from '../../diagnostics/rule-card.ts';
import type { Rule } from '../rule.ts';
import type { ToolUse } from './tool-use.ts';
import { fastenerNoun, reportUses, type UseFault } from './use-fault.ts';

const bolt = (torque: string) => `::tool[13 mm socket]{#socket-13 drive="hex 13"}
::tool[Torque wrench, 10–60 N·m]{#torque-60 range="10..60 N·m"}
::fastener[Bracket bolt]{#bracket-bolt drive="hex 13"${torque}}

::step[Loosen the bolt]{#loosen}

:loosen[bracket-bolt]{with=socket-13}.

::step[Tighten the bolt]{#tighten}

:tighten[bracket-bolt]{with="torque-60 socket-13"}.`;

const card: RuleCard = {
  code: 'torque-unstated',
  severity: 'warning',
  title: 'A torque wrench is named, and no torque',
  why: 'Whoever takes a torque wrench in hand needs to know what to set it to. Without a torque on the item the step prints none, the torque log has no line for it, and nothing is checked.',
  bad: bolt(''),
  good: bolt(' torque="25 N·m"'),
};

/** What is tightened with a torque wrench states its torque. */
export const torqueUnstated: Rule = {
  card,
  run: (subject, report) => {
    // What a sequence names without a torque is told at the sequence.
    const inSequence = new Set(
      [...subject.guide.sequences.values()].flatMap(({ order }) => order.map(({ value }) => value)),
    );
    reportUses(card, subject, (use) => (use.item && inSequence.has(use.item.id) ? null : judge(use)), report);
  },
};

function judge(use: ToolUse): UseFault | null {
  const { action, item, named, offers } = use;
  const tightens = action.verb === 'tighten' || action.verb === 'refit';
  if (!tightens || !item || item.torque || item.unknown.has('torque') || !named) return null;
  const wrench = offers.find(({ tool }) => tool.range !== null);
  if (!wrench) return null;
  const noun = fastenerNoun(use);
  return {
    at: wrench.ref.at,
    message: `the ${wrench.tool.noun.singular} is named for the ${noun}, and no torque is stated; state it on the item, as in torque="…", or name another tool`,
    notes: [{ message: 'the torque would stand here', at: item.idAt }],
    better: null,
  };
}
