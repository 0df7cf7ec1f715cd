import type { RuleCard } from '../../diagnostics/rule-card.ts';
import { handledCount } from '../../job/index.ts';
import type { Tool } from '../../model/item.ts';
import type { Rule, Subject } from '../rule.ts';
import type { ToolUse } from './tool-use.ts';
import { fastenerNoun, firstTool, placeOfOffers, reportUses, type UseFault } from './use-fault.ts';
import { torquesAsked, wrenchesOf } from './wrenches.ts';

const guide = (tool: string, id: string) => `::tool[Torque wrench, 10–60 N·m]{#torque-60 range="10..60 N·m"}
${tool}
::kit[Cradle]{#cradle}
::kit[M8 nut]{#m8-nut count=4 drive="hex 13" torque="25 N·m" holds=cradle}

::step[Hang the cradle]{#hang}

:fit[cradle] and :start[m8-nut]. Then :tighten[m8-nut]{with="torque-60 ${id}"}.`;

const card: RuleCard = {
  code: 'torque-with-spanner',
  severity: 'warning',
  title: 'A torque is set with a plain spanner',
  why: 'A plain spanner has no square for a torque wrench, so the torque is guessed. A socket takes one, and so does a crowfoot, whose `offset` changes what the wrench is set to.',
  bad: guide('::tool[13 mm open-ended spanner]{#spanner-13 drive="hex 13"}', 'spanner-13'),
  good: guide('::tool[13 mm socket]{#socket-13 drive="hex 13"}', 'socket-13'),
};

/** What turns a fastener to its torque can be driven by a torque wrench. */
export const torqueWithSpanner: Rule = {
  card,
  run: (subject, report) => reportUses(card, subject, (use) => judge(use, subject), report),
};

/** Spanners as the trade calls them; a crowfoot with its offset is one that takes a torque wrench. */
const SPANNER = /\b(?:spanner|(?:open[- ]end(?:ed)?|ring|combination) wrench)\b/i;

function isPlain({ noun, synonyms, drive, range, offset }: Tool): boolean {
  if (drive === null || range !== null || offset !== null) return false;
  return [noun.label, ...synonyms].some((name) => SPANNER.test(name));
}

function judge(use: ToolUse, subject: Subject): UseFault | null {
  if (!use.named || torquesAsked(use).length === 0 || wrenchesOf(use).length === 0) return null;
  const turning = use.offers.filter(({ tool }) => tool.drive !== null && tool.range === null);
  const plain = turning.filter(({ any }) => any.every(isPlain));
  const [first] = plain;
  // A spanner beside a socket holds the other end.
  if (!first || plain.length < turning.length || !use.item?.torque) return null;
  const fits = first.tool.drive?.value;
  return {
    at: placeOfOffers(use, plain),
    message: `the ${first.tool.noun.singular} takes no torque wrench, and the ${fastenerNoun(use)} ${handledCount(use.item) === 1 ? 'has' : 'have'} a torque; name a socket, or a crowfoot with its offset`,
    notes: [{ message: 'the torque is stated here', at: use.item.torque.at }],
    better: firstTool(
      subject,
      (tool) =>
        tool.drive !== null && !isPlain(tool) && JSON.stringify(tool.drive.value) === JSON.stringify(fits),
    ),
  };
}
