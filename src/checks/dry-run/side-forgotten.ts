import { finding, type RuleCard } from '../../diagnostics/rule-card.ts';
import { actionsOf, stepsOf } from '../../job/index.ts';
import type { Step } from '../../model/guide.ts';
import type { Item } from '../../model/item.ts';
import type { Rule } from '../rule.ts';

const cap = (side: string) => `::fastener[Lug cap]{#cap side=each}

::step[Take the cap out]{#caps side=${side}}

:remove[cap] and :hand-over[cap].`;

const card: RuleCard = {
  code: 'side-forgotten',
  severity: 'warning',
  title: 'Something is on both sides, and every step handles it on one alone',
  why: 'What is declared for each side and has hands on it only on the left is either declared too widely or half forgotten. The ledger can not tell, since nobody ever touches the other one.',
  bad: cap('left'),
  good: cap('each'),
};

/** What a guide itself declares for each side is handled on each, or on none. */
export const sideForgotten: Rule = {
  card,
  run: ({ guide, lost }, report) => {
    const stepsOn = new Map<string, Step[]>();
    for (const step of stepsOf(guide)) {
      for (const { node } of actionsOf(step)) {
        stepsOn.set(node.target.value, [...(stepsOn.get(node.target.value) ?? []), step]);
      }
    }
    for (const item of guide.items.values()) {
      const steps = stepsOn.get(item.id) ?? [];
      if (!isOwnPair(item) || lost.ids.has(item.id) || steps.some(({ unknown }) => unknown.has('side')))
        continue;
      const [side, ...others] = new Set(steps.map((step) => step.side?.value ?? 'each'));
      if (side === undefined || side === 'each' || others.length > 0) continue;
      const { words } = guide;
      const other = side === 'left' ? 'right' : 'left';
      const message = `the ${item.noun.singular} is declared for each side, and no step handles the one on the ${words[other]}; declare side=${side}, or handle both`;
      const notes = steps
        .slice(0, 1)
        .flatMap((step) =>
          step.side ? [{ message: `this step is done on the ${words[side]} alone`, at: step.side.at }] : [],
        );
      report(finding(card, item.side?.at ?? item.idAt, message, { notes }));
    }
  },
};

/** The box is counted to the last piece anyway, and of a procedure a guide may place one half. */
function isOwnPair(item: Item): item is Extract<Item, { kind: 'part' | 'fastener' | 'connector' }> {
  if (item.kind !== 'part' && item.kind !== 'fastener' && item.kind !== 'connector') return false;
  const isShared = item.origins.length > 0 || ('fromPlatform' in item && item.fromPlatform);
  return item.side?.value === 'each' && !isShared && !item.unknown.has('side');
}
