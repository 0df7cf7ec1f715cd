import { finding, type RuleCard } from '../../diagnostics/rule-card.ts';
import { cuttersOf } from '../../job/actions/cutters.ts';
import { actionsOf, listed, stepsOf } from '../../job/index.ts';
import type { Tool } from '../../model/item.ts';
import { isWritten } from '../language/written.ts';
import type { Rule } from '../rule.ts';

const cut = (tool: string): string => `::tool[Jigsaw]{#jigsaw}
::tool[13 mm socket]{#socket-13 drive="hex 13"}
::kit[Console]{#console}
::part[Cover]{#cover}

:::cut-template[Notch]{#notch panel=cover face=outside}
::datum[Middle]{axis=vertical at="0 mm"}
::datum[Lower edge]{axis=horizontal at="0 mm"}
::outline{points="-40,20 40,20 40,60 -40,60" unit=mm}
:::

::step[Try the console]{#trial}

Hold the :kit[console] up. The :tool[jigsaw] and the :tool[socket-13] lie ready.

::step[Cut the notch]{#cut-notch}

:::warning[Flying chips]
Chips can injure an eye. Wear :wear[eye-protection].
:::

:cut[notch]{with=${tool} trial=trial}, and :fit[console].`;

const card: RuleCard = {
  code: 'cutter-missing',
  severity: 'error',
  title: 'Nothing that is named for a cut can cut',
  why: 'The line of tools under a step is what the technician takes in hand. A socket or a torque wrench there is a slip of the id, and the corners of the cut were held against no cutter.',
  bad: cut('socket-13'),
  good: cut('jigsaw'),
};

/** Some tool of each cut is not plainly made for turning fasteners. */
export const cutterMissing: Rule = {
  card,
  run: ({ guide, lost }, report) => {
    for (const step of stepsOf(guide).filter(isWritten)) {
      for (const { node } of actionsOf(step)) {
        if (node.verb !== 'cut' || node.unknown.has('with')) continue;
        const refs = cuttersOf(node, step);
        const tools = refs.flatMap(({ value }) => {
          const item = guide.items.get(value);
          return item?.kind === 'tool' ? [item] : [];
        });
        const [only] = refs;
        if (!only || tools.length < refs.length || refs.some(({ value }) => lost.ids.has(value))) continue;
        if (!tools.every(turnsFasteners)) continue;
        const nouns = listed(tools.map(({ noun }) => `the ${noun.singular}`));
        const turns = tools.length === 1 ? 'turns' : 'turn';
        const at = node.with.length === 1 ? only.at : node.at;
        report(
          finding(card, at, `${nouns} ${turns} fasteners and cannot cut; name the saw or cutter with with=`),
        );
      }
    }
  },
};

function turnsFasteners({ drive, range, cutterRadius, diameter, unknown }: Tool): boolean {
  return (drive !== null || range !== null) && !cutterRadius && !diameter && unknown.size === 0;
}
