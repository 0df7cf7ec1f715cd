import { finding, type RuleCard } from '../../diagnostics/rule-card.ts';
import { actionsOf, inlinesOf, stepsOf } from '../../job/index.ts';
import type { Figure } from '../../model/block.ts';
import type { Guide, Step } from '../../model/guide.ts';
import type { Item } from '../../model/item.ts';
import type { Rule } from '../rule.ts';
import { pictured } from './example.ts';

const guide = (mark: string) => `::part[Edge trim]{#trim}
::fastener[Trim screw]{#screw holds=trim}

::step[Take off the trim]{#trim-off}

:remove[screw] and :remove[trim].

:::figure[The edge]{src=edge.svg alt="Edge of the trim, seen from below"}
- :mark[A]{at="20%,40%"} :part[trim]
${mark}:::

::step[Refit the trim]{#trim-on}

:refit[trim] and :refit[screw].
`;

const card: RuleCard = {
  code: 'item-unpictured',
  severity: 'warning',
  title: 'A part in hand that the step’s picture does not mark',
  why: 'A step whose picture names things by letters looks complete. What is handled and has no letter is what a trainee searches for, and often it is the hidden one.',
  bad: pictured(guide('')),
  good: pictured(guide('- :mark[B]{at="70%,40%"} :fastener[screw], behind the lip\n')),
};

/** Where a step's pictures mark items, they mark every part, fastener and connector that it handles. */
export const itemUnpictured: Rule = {
  card,
  run: ({ guide, lost }, report) => {
    // A figure or a mark that could not be read may be the one that shows it.
    if (lost.declarations.has('figure') || lost.declarations.has('mark')) return;
    for (const step of stepsOf(guide)) {
      const figures = step.blocks.filter((block) => block.type === 'figure');
      const marked = itemsMarked(figures);
      if (marked.size === 0) continue;
      for (const [item, { target }] of itemsHandled(step, guide)) {
        if (marked.has(item.id) || lost.ids.has(item.id)) continue;
        const message = `this step handles the ${item.noun.singular}, and none of its pictures marks it`;
        const notes = figures.slice(0, 1).map(({ at }) => ({ message: 'a mark can name it here', at }));
        report(finding(card, target.at, message, { notes }));
      }
    }
  },
};

function itemsMarked(figures: readonly Figure[]): ReadonlySet<string> {
  const texts = figures.flatMap(({ marks }) => marks.map(({ text }) => text));
  return new Set(texts.flatMap((text) => inlinesOf(text).map(({ node }) => node.target.value)));
}

/** What the hands of a step are on, each with the first action on it. */
function itemsHandled(step: Step, { items }: Guide) {
  const handled = new Map<Item, ReturnType<typeof actionsOf>[number]['node']>();
  for (const { node } of actionsOf(step)) {
    const item = items.get(node.target.value);
    if (item && kinds.has(item.kind) && !handled.has(item)) handled.set(item, node);
  }
  return handled;
}

const kinds: ReadonlySet<Item['kind']> = new Set(['part', 'fastener', 'connector']);
