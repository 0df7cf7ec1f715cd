import { finding, type RuleCard } from '../../diagnostics/rule-card.ts';
import { handledCount, isCounted, totalCount } from '../../job/index.ts';
import type { Rule } from '../rule.ts';

const bolts = (count: number) =>
  `::fastener[Pre-coated bolt]{#bolt count=4 reuse=no}\n::kit[New bolt]{#new-bolt count=${count} replaces=bolt}\n\n::step[Change the bolts]{#change}\n\n:remove[bolt] and :discard[bolt]. Then :fit[new-bolt].`;

const card: RuleCard = {
  code: 'replacement-short',
  severity: 'error',
  title: 'There are not as many new ones as old ones',
  why: 'Each one that comes out leaves a place for a new one. One too few stops the job with the vehicle open.',
  bad: bolts(3),
  good: bolts(4),
};

/** What replaces a fastener or a part comes in the same number, spares apart. */
export const replacementShort: Rule = {
  card,
  run: ({ guide }, report) => {
    for (const item of guide.items.values()) {
      if (item.kind !== 'kit' || !item.replaces) continue;
      const old = guide.items.get(item.replaces.value);
      if (!old || !isCounted(old)) continue;
      if (old.unknown.has('count') || item.unknown.has('count')) continue;
      const fitted = handledCount(item);
      if (fitted === totalCount(old)) continue;
      const message = `${fitted} of the ${item.noun.plural} are fitted in the place of ${totalCount(old)} ${old.noun.plural}`;
      report(
        finding(card, item.count.at, message, {
          notes: [{ message: 'they replace these', at: old.count.at }],
        }),
      );
    }
  },
};
