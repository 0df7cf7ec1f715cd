import { finding, type RuleCard } from '../../diagnostics/rule-card.ts';
import type { Relation } from '../../job/actions/relations.ts';
import type { Item } from '../../model/item.ts';
import { compareSpans } from '../../source/span.ts';
import type { Rule } from '../rule.ts';
import { circlesOf } from './circles.ts';

const parts = (covers: string) =>
  `::part[Grille]{#grille covers=shutter}\n::part[Shutter]{#shutter${covers}}\n\n::step[Wipe the grille]{#wipe}\n\n:clean[grille], and look at the :part[shutter].`;

const card: RuleCard = {
  code: 'relation-cycle',
  severity: 'error',
  title: 'Things cover or hold each other in a circle',
  why: 'When each of two parts lies over the other, neither can be taken off first, and no order of steps is right.',
  bad: parts(' covers=grille'),
  good: parts(''),
};

/** What holds, sits on, covers and replaces forms no circle. */
export const relationCycle: Rule = {
  card,
  run: ({ guide }, report) => {
    const told = new Set<string>();
    for (const circle of circlesOf(guide.items)) {
      const key = circle
        .map(({ from }) => from.id)
        .sort()
        .join(' ');
      const [first, ...rest] = [...circle].sort((a, b) => compareSpans(a.to.at, b.to.at));
      if (!first || told.has(key)) continue;
      told.add(key);
      const notes = rest.map((edge) => ({ message: sentence(edge, guide.items), at: edge.to.at }));
      const message =
        first.from.id === first.to.value
          ? `the ${first.from.noun.singular} ${verbs[first.name]} itself`
          : `${sentence(first, guide.items)}, and this comes round in a circle`;
      report(finding(card, first.to.at, message, { notes }));
    }
  },
};

const verbs = {
  holds: 'holds',
  on: 'sits on',
  covers: 'covers',
  takes: 'takes',
  replaces: 'replaces',
  needs: 'needs',
  stack: 'goes through',
  coat: 'is coated with',
} as const;

function sentence({ from, name, to }: Relation, items: ReadonlyMap<string, Item>): string {
  return `the ${from.noun.singular} ${verbs[name]} the ${items.get(to.value)?.noun.singular ?? to.value}`;
}
