import { finding, type RuleCard } from '../../diagnostics/rule-card.ts';
import { isCounted, stepsOf } from '../../job/index.ts';
import type { Guide } from '../../model/guide.ts';
import type { Counted, Item } from '../../model/item.ts';
import type { Prose } from '../../model/prose.ts';
import type { Span } from '../../source/span.ts';
import { isWritten } from '../language/written.ts';
import type { Rule } from '../rule.ts';

const tee = (side: string) => `::connector[Lamp tee]{#tee side=${side}}

::step[Undo the tee]{#tee-off}

:disconnect[tee] behind the left tail lamp.

::step[Plug the tee in]{#tee-on}

:connect[tee].`;

const card: RuleCard = {
  code: 'side-contradicted',
  severity: 'warning',
  title: 'A sentence tells another side than the declaration',
  why: 'The side stands on the item, and counts, bags and the work on each side go by it. A sentence that sends the technician to the other side has one of the two wrong.',
  bad: tee('right'),
  good: tee('left'),
};

/** Where the right is no side: in the right order, at the right angle, to the right place. */
const notASide =
  'place|order|way|angle|one|size|length|torque|time|tool|sequence|position|direction|moment|amount|depth|kind|type|tension|fit|hand|of';

/** What is on one side alone is not told to be behind, at or under something on the other. */
export const sideContradicted: Rule = {
  card,
  run: ({ guide, lost }, report) => {
    for (const step of stepsOf(guide).filter(isWritten)) {
      const texts = step.blocks.flatMap((block) => {
        if (block.type === 'prose') return [block.content];
        return block.type === 'figure' ? block.marks.map(({ text }) => text) : [];
      });
      for (const { item, told, at } of texts.flatMap((text) => sidesTold(text, guide))) {
        const { side } = item;
        if (!side || side.value === 'each' || side.value === told) continue;
        if (lost.ids.has(item.id) || item.unknown.has('side')) continue;
        const message = `this tells of the ${guide.words[told]}, and the ${item.noun.singular} is declared for the ${guide.words[side.value]}`;
        report(
          finding(card, at, message, { notes: [{ message: 'its side is declared here', at: side.at }] }),
        );
      }
    }
  },
};

interface Told {
  readonly item: Item & Counted;
  readonly told: 'left' | 'right';
  readonly at: Span;
}

/** Each item with the one side that the rest of its clause tells of. */
function sidesTold(prose: Prose, guide: Guide): readonly Told[] {
  return prose.flatMap((node, index): readonly Told[] => {
    if (node.type === 'element' || node.type === 'where') return sidesTold(node.children, guide);
    const next = prose[index + 1];
    if ((node.type !== 'mention' && node.type !== 'action') || next?.type !== 'text') return [];
    const item = guide.items.get(node.target.value);
    const [clause = ''] = next.value.split(/[.;:]/);
    const told = (['left', 'right'] as const).filter((side) => isToldIn(clause, guide.words[side]));
    const [only] = told;
    return item && isCounted(item) && only && told.length === 1 ? [{ item, told: only, at: node.at }] : [];
  });
}

function isToldIn(clause: string, word: string): boolean {
  const side = word.replace(/[^\p{L}]/gu, '.');
  return new RegExp(`\\bthe (?:\\w+ )?${side}(?:-hand)? (?!(?:${notASide})s?\\b)\\p{L}`, 'iu').test(clause);
}
