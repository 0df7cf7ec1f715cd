import { finding, type RuleCard } from '../../diagnostics/rule-card.ts';
import type { Rule } from '../rule.ts';

const card: RuleCard = {
  code: 'spare-exceeds-count',
  severity: 'error',
  title: 'More spares are named than there are pieces',
  why: 'The count is what the box holds, and spares are part of it. More spares than pieces leave fewer than none to fit.',
  bad: '::kit[Clip]{#clip count=2 spare=3}\n\n::step[Fit the clips]{#fit}\n\n:fit[clip].',
  good: '::kit[Clip]{#clip count=3 spare=1}\n\n::step[Fit the clips]{#fit}\n\n:fit[clip].',
};

/** Fewer pieces are spare than the box holds, or all of them. */
export const spareExceedsCount: Rule = {
  card,
  run: ({ guide }, report) => {
    for (const item of guide.items.values()) {
      if (item.kind !== 'kit' || !item.spare || item.unknown.has('count')) continue;
      if (item.spare.value <= item.count.value) continue;
      const message = `${item.spare.value} of the ${item.noun.plural} are spare, and the box holds ${item.count.value}`;
      report(finding(card, item.spare.at, message));
    }
  },
};
