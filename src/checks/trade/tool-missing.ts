import type { RuleCard } from '../../diagnostics/rule-card.ts';
import { toolFitsDrive } from '../../trade/drive-fit.ts';
import { formatDrive } from '../../trade/drives.ts';
import type { Rule, Subject } from '../rule.ts';
import { boundDrive, offeredFit } from './drive-of-use.ts';
import type { ToolUse } from './tool-use.ts';
import { firstTool, reportUses, toolNouns, type UseFault, wordsOfUse } from './use-fault.ts';

const card: RuleCard = {
  code: 'tool-missing',
  severity: 'error',
  title: 'No tool is named for an action that needs one',
  why: 'The line of tools under a step is what the technician takes in hand. A fastener with a drive, a cut and a hole each need a tool that is named there, or in the sentence.',
  bad: `::tool[T15 bit]{#bit-t15 drive=T15}
::fastener[Liner screw]{#liner-screw drive=T15 count=3}

::step[Look at the liner]{#look}

Hold the :tool[bit-t15] ready.

::step[Take out the screws]{#screws}

:remove[liner-screw].

::step[Put the screws back]{#screws-back}

:refit[liner-screw]{with=bit-t15}.`,
  good: `::tool[T15 bit]{#bit-t15 drive=T15}
::fastener[Liner screw]{#liner-screw drive=T15 count=3}

::step[Take out the screws]{#screws}

Set the :tool[bit-t15] square and :remove[liner-screw].

::step[Put the screws back]{#screws-back}

:refit[liner-screw]{with=bit-t15}.`,
};

/** Every action on a fastener with a drive, every cut and every drilling has a tool. */
export const toolMissing: Rule = {
  card,
  run: (subject, report) => reportUses(card, subject, (use) => judge(use, subject), report),
};

function judge(use: ToolUse, subject: Subject): UseFault | null {
  const drive = boundDrive(use);
  if (!use.bound || (drive ? offeredFit(use.offers, drive.value).kind !== 'none' : use.offers.length > 0)) {
    return null;
  }
  const fits = drive ? ` (${formatDrive(drive.value)})` : '';
  const mend = 'name one with with=, or mention it in the step';
  const { offers, action } = use;
  const message =
    offers.length === 0
      ? `no tool is named to ${wordsOfUse(use, subject)}${fits}; ${mend}`
      : `nothing that is named fits, to ${wordsOfUse(use, subject)}${fits}: ${toolNouns(offers)} ${offers.length === 1 ? 'has no drive of its own' : 'have no drive of their own'}; ${mend}`;
  return {
    at: action.at,
    message,
    notes: drive ? [{ message: 'its drive is stated here', at: drive.at }] : [],
    better: drive
      ? firstTool(
          subject,
          (tool) => tool.drive !== null && toolFitsDrive(tool.drive.value, drive.value) === 'fits',
        )
      : null,
  };
}
