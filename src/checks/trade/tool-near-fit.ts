import type { RuleCard } from '../../diagnostics/rule-card.ts';
import type { Rule } from '../rule.ts';
import { boundDrive, offeredFit } from './drive-of-use.ts';
import type { ToolUse } from './tool-use.ts';
import { fastenerNoun, placeOfOffers, reportUses, toolNouns, type UseFault } from './use-fault.ts';

const card: RuleCard = {
  code: 'tool-near-fit',
  severity: 'warning',
  title: 'The tool is not the fastener’s own size, but the trade accepts it',
  why: 'Some inch and metric tools go on one another. They hold less well than the right size, and a fastener that is tight or rusted wants the right one.',
  bad: `::tool[Inch socket, 5/16 in]{#socket-5-16 drive="hex 5/16 in"}
::fastener[Lamp screw]{#lamp-screw drive="hex 8" count=2 with=socket-5-16}

::step[Take out the screws]{#screws}

:remove[lamp-screw].

::step[Put the screws back]{#screws-back}

:refit[lamp-screw].`,
  good: `::tool[8 mm socket]{#socket-8 drive="hex 8"}
::fastener[Lamp screw]{#lamp-screw drive="hex 8" count=2 with=socket-8}

::step[Take out the screws]{#screws}

:remove[lamp-screw].

::step[Put the screws back]{#screws-back}

:refit[lamp-screw].`,
};

/** Where no tool of an action is the fastener's own, one that the trade accepts is told. */
export const toolNearFit: Rule = {
  card,
  run: (subject, report) => reportUses(card, subject, judge, report),
};

function judge(use: ToolUse): UseFault | null {
  const drive = boundDrive(use);
  if (!drive) return null;
  const fit = offeredFit(use.offers, drive.value);
  if (fit.kind !== 'near' || !fit.near.accepted) return null;
  return {
    at: placeOfOffers(use, [fit.offer]),
    message: `${toolNouns([fit.offer])} is not the size of the ${fastenerNoun(use)}: ${fit.near.message}`,
    notes: [{ message: 'the drive is stated here', at: drive.at }],
    better: null,
  };
}
