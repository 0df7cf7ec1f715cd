import { finding, type RuleCard } from '../../diagnostics/rule-card.ts';
import { actionsOf, crowfootUse, isFixing, stepsOf } from '../../job/index.ts';
import type { Guide, Step } from '../../model/guide.ts';
import type { Fastener, KitItem } from '../../model/item.ts';
import type { Prose } from '../../model/prose.ts';
import type { Span } from '../../source/span.ts';
import { formatBoth } from '../../units/format.ts';
import { parseQuantity } from '../../units/parse.ts';
import type { Quantity } from '../../units/quantity.ts';
import { formatTorque, statedTorques } from '../../units/torque.ts';
import { isWritten } from '../language/written.ts';
import type { Rule } from '../rule.ts';

const bolt = (words: string) => `::tool[13 mm socket]{#socket-13 drive="hex 13"}
::tool[Torque wrench, 10–60 N·m]{#torque-60 range="10..60 N·m"}
::fastener[Bracket bolt]{#bracket-bolt drive="hex 13" torque="25 N·m"}

::step[Turn the bolt]{#bolt}

:loosen[bracket-bolt]{with=socket-13}.
:tighten[bracket-bolt]{with="torque-60 socket-13"}. ${words}`;

const card: RuleCard = {
  code: 'torque-contradicted',
  severity: 'error',
  title: 'A torque in a sentence is not the one that is stated',
  why: 'The torque stands on the item and is printed from there. Another one in the words of the step leaves the technician with two numbers and a wrench in hand.',
  bad: bolt('Check it at 35 N·m.'),
  good: bolt('Check that it clicks.'),
};

/** A torque in the words of a step is one that something in the step is tightened to. */
export const torqueContradicted: Rule = {
  card,
  run: ({ guide }, report) => {
    for (const step of stepsOf(guide).filter(isWritten)) {
      const tightened = tightenedIn(step, guide);
      const stated = tightened.flatMap((item) => (item.torque ? statedTorques(item.torque.value) : []));
      if (stated.length === 0) continue;
      for (const { torque, at } of step.blocks.flatMap((block) =>
        block.type === 'prose' ? torquesIn(block.content) : [],
      )) {
        if (stated.some((one) => isSame(one, torque))) continue;
        const [item] = tightened.filter((one) => one.torque);
        const notes = item?.torque ? [{ message: 'the torque is stated here', at: item.torque.at }] : [];
        const own = item?.torque ? formatTorque(item.torque.value) : '';
        const message = `${formatBoth(torque)} stands in this sentence, and the ${item?.noun.singular} is tightened to ${own}; take the number out of the sentence, where the action prints it`;
        report(finding(card, at, message, { notes }));
      }
    }
  },
};

/** What a step tightens; nothing where a crowfoot makes the wrench show another number. */
function tightenedIn(step: Step, guide: Guide): readonly (Fastener | KitItem)[] {
  const actions = actionsOf(step).filter(({ node }) => node.verb === 'tighten');
  if (actions.some(({ node }) => crowfootUse(node, guide))) return [];
  return actions.flatMap(({ node }) => {
    const item = guide.items.get(node.target.value);
    return item && isFixing(item) ? [item] : [];
  });
}

/** "25 N·m (18 lbf·ft)": a number that was converted and rounded is the same torque. */
function isSame(one: Quantity<'torque'>, other: Quantity<'torque'>): boolean {
  return Math.abs(one.base / other.base - 1) < 0.03;
}

/** A number with a unit of torque that something is tightened to: after "to", "at" or "of", and no end of a range. */
const tightenedTo =
  /(?<!\bup )(?<!\d[^.;]{0,12})\b(?:to|at|of)\s+(\d+(?:[.,]\d+)?\s*(?:N[·⋅ -]?m|lbf?[·⋅ -]?(?:ft|in)|(?:ft|in)[·⋅ -]?lbs?|kgf?[·⋅ -]?m)\b)/giu;

function torquesIn(prose: Prose): readonly { readonly torque: Quantity<'torque'>; readonly at: Span }[] {
  return prose.flatMap((node) => {
    if (node.type === 'element' || node.type === 'where') return torquesIn(node.children);
    if (node.type !== 'text' || !node.at) return [];
    const { file, start, end } = node.at;
    const exact = end - start === node.value.length;
    return [...node.value.matchAll(tightenedTo)].flatMap((match) => {
      const written = match[1] ?? '';
      const reading = parseQuantity(written, 'torque');
      if (!reading.ok) return [];
      const from = start + match.index + match[0].length - written.length;
      const at = exact ? { file, start: from, end: from + written.length } : { file, start, end };
      return [{ torque: reading.quantity, at }];
    });
  });
}
