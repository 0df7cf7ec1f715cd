import type { RuleCard } from '../../diagnostics/rule-card.ts';
import { toolFitsDrive } from '../../trade/drive-fit.ts';
import { formatDrive } from '../../trade/drives.ts';
import type { Rule, Subject } from '../rule.ts';
import { boundDrive, offeredFit } from './drive-of-use.ts';
import type { Offer, ToolUse } from './tool-use.ts';
import { fastenerNoun, firstTool, placeOfOffers, reportUses, toolNouns, type UseFault } from './use-fault.ts';

const card: RuleCard = {
  code: 'tool-misfit',
  severity: 'error',
  title: 'The tool does not fit the fastener',
  why: 'A tool of the wrong kind does not go on, and one of nearly the right size rounds the head. Then the fastener has to be drilled out, under a vehicle that is half apart.',
  bad: `::tool[Half-inch socket]{#socket-half drive="hex 1/2 in"}
::tool[13 mm socket]{#socket-13 drive="hex 13"}
::fastener[Bracket bolt]{#bracket-bolt drive="hex 13" count=2}

::step[Take out the bolts]{#bolts}

:remove[bracket-bolt]{with=socket-half}.

::step[Put the bolts back]{#bolts-back}

:refit[bracket-bolt]{with=socket-13}.`,
  good: `::tool[13 mm socket]{#socket-13 drive="hex 13"}
::fastener[Bracket bolt]{#bracket-bolt drive="hex 13" count=2}

::step[Take out the bolts]{#bolts}

:remove[bracket-bolt]{with=socket-13}.

::step[Put the bolts back]{#bolts-back}

:refit[bracket-bolt]{with=socket-13}.`,
};

/** Some tool of every action on a fastener fits its drive, or nearly enough for the trade to accept it. */
export const toolMisfit: Rule = {
  card,
  run: (subject, report) => reportUses(card, subject, (use) => judge(use, subject), report),
};

function judge(use: ToolUse, subject: Subject): UseFault | null {
  const drive = boundDrive(use);
  if (!drive) return null;
  const fit = offeredFit(use.offers, drive.value);
  if (fit.kind === 'fits' || fit.kind === 'none' || (fit.kind === 'near' && fit.near.accepted)) return null;
  const offers = fit.kind === 'near' ? [fit.offer] : fit.offers;
  const noun = fastenerNoun(use);
  const message =
    fit.kind === 'near'
      ? `${toolNouns(offers)} does not fit the ${noun}: ${fit.near.message}`
      : `${misfits(use, offers)} the ${noun} (${formatDrive(drive.value)})`;
  return {
    at: placeOfOffers(use, offers),
    message,
    notes: [{ message: 'the drive is stated here', at: drive.at }],
    better: firstTool(
      subject,
      (tool) => tool.drive !== null && toolFitsDrive(tool.drive.value, drive.value) === 'fits',
    ),
  };
}

function misfits({ named }: ToolUse, offers: readonly Offer[]): string {
  const [only, ...others] = offers;
  if (only?.tool.drive && others.length === 0 && named) {
    return `the ${only.tool.noun.singular} (${formatDrive(only.tool.drive.value)}) does not fit`;
  }
  return `none of ${named ? 'its tools' : 'the tools that the step names'} fits`;
}
