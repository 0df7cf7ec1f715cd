import type { RuleCard } from '../../diagnostics/rule-card.ts';
import { listed } from '../../job/index.ts';
import { wrenchFits } from '../../trade/torque.ts';
import { formatRange } from '../../units/format.ts';
import type { Quantity } from '../../units/quantity.ts';
import type { Rule, Subject } from '../rule.ts';
import type { ToolUse } from './tool-use.ts';
import { fastenerNoun, firstTool, placeOfOffers, reportUses, type UseFault } from './use-fault.ts';
import { torquesAsked, type Wrench, wrenchesOf } from './wrenches.ts';

const card: RuleCard = {
  code: 'torque-outside-wrench',
  severity: 'error',
  title: 'The torque lies outside what the torque wrench can be trusted with',
  why: 'A wrench is checked from its lowest mark to its greatest, or from 20 % of its greatest where its scale begins at nought (ISO 6789). Below that it may click at almost anything.',
  bad: `::tool[T25 bit]{#bit-t25 drive=T25}
::tool[Torque wrench, 10–60 N·m]{#torque-60 range="10..60 N·m"}
::fastener[Bezel screw]{#bezel-screw drive=T25 torque="3 N·m" count=2}

::step[Loosen the screws]{#loosen}

:loosen[bezel-screw]{with=bit-t25}.

::step[Tighten the screws]{#tighten}

:tighten[bezel-screw]{with="torque-60 bit-t25"}.`,
  good: `::tool[T25 bit]{#bit-t25 drive=T25}
::tool[Torque wrench, 2–20 N·m]{#torque-20 range="2..20 N·m"}
::fastener[Bezel screw]{#bezel-screw drive=T25 torque="3 N·m" count=2}

::step[Loosen the screws]{#loosen}

:loosen[bezel-screw]{with=bit-t25}.

::step[Tighten the screws]{#tighten}

:tighten[bezel-screw]{with="torque-20 bit-t25"}.`,
};

/** Every pass of a tightening lies within the range of some torque wrench that is named for it. */
export const torqueOutsideWrench: Rule = {
  card,
  run: (subject, report) => reportUses(card, subject, (use) => judge(use, subject), report),
};

function judge(use: ToolUse, subject: Subject): UseFault | null {
  const wrenches = wrenchesOf(use);
  const torques = torquesAsked(use);
  if (wrenches.length === 0 || !use.item?.torque) return null;
  const beyond = torques.find((torque) => !wrenches.some(({ range }) => covers(torque, range)));
  if (!beyond) return null;
  const offers = use.offers.filter(({ any }) => any.some(({ range }) => range !== null));
  return {
    at: placeOfOffers(use, offers),
    message: `${nounsOf(wrenches)} cannot tighten the ${fastenerNoun(use)}: ${reasons(beyond, wrenches)}`,
    notes: [{ message: 'the torque is stated here', at: use.item.torque.at }],
    better: firstTool(subject, ({ range }) =>
      torques.every((torque) => range !== null && covers(torque, range.value)),
    ),
  };
}

function covers(torque: Quantity<'torque'>, range: Wrench['range']): boolean {
  return wrenchFits(torque, range).verdict === 'within';
}

function nounsOf(wrenches: readonly Wrench[]): string {
  const nouns = wrenches.map(({ tool, range }) => `the ${tool.noun.singular} (${formatRange(range)})`);
  return listed([...new Set(nouns)]);
}

function reasons(torque: Quantity<'torque'>, wrenches: readonly Wrench[]): string {
  const found = wrenches.flatMap(({ range }) => {
    const fit = wrenchFits(torque, range);
    return fit.verdict === 'within' ? [] : [fit.message];
  });
  return [...new Set(found)].join('; ');
}
