import { finding, type RuleCard } from '../../diagnostics/rule-card.ts';
import { isFixing } from '../../job/index.ts';
import { formatBoth } from '../../units/format.ts';
import { statedTorques } from '../../units/torque.ts';
import type { Rule } from '../rule.ts';

const bolt = (torque: string) => `::tool[13 mm socket]{#socket-13 drive="hex 13"}
::tool[Torque wrench, 10–60 N·m]{#torque-60 range="10..60 N·m"}
::fastener[Beam bolt]{#beam-bolt thread=M10x1.5 grade=8.8 drive="hex 13" torque="${torque}"}

::step[Turn the bolt]{#bolt}

:loosen[beam-bolt]{with=socket-13}.
:tighten[beam-bolt]{with="torque-60 socket-13"}.`;

const card: RuleCard = {
  code: 'torque-passes-fall',
  severity: 'error',
  title: 'A later pass of a tightening is less than an earlier one',
  why: 'A wrench that is set lower clicks at once on a bolt that is already tighter, and nothing is turned: the two passes have changed places, or one of them is a slip.',
  bad: bolt('40 N·m, 20 N·m'),
  good: bolt('20 N·m, 40 N·m'),
};

/** The torques of a tightening grow from pass to pass, or stay. */
export const torquePassesFall: Rule = {
  card,
  run: ({ guide }, report) => {
    for (const item of guide.items.values()) {
      if (!isFixing(item) || !item.torque) continue;
      const torques = statedTorques(item.torque.value);
      const at = torques.findIndex((torque, index) => torque.base < (torques[index - 1]?.base ?? 0));
      const [less, more] = [torques[at], torques[at - 1]];
      if (!less || !more) continue;
      const message = `for the ${item.noun.singular}, ${formatBoth(less)} follows ${formatBoth(more)}; each pass is as much as the one before or more`;
      report(finding(card, item.torque.at, message));
    }
  },
};
