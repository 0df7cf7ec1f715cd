import { finding, type RuleCard } from '../../diagnostics/rule-card.ts';
import { isFixing } from '../../job/index.ts';
import type { Fastener, KitItem } from '../../model/item.ts';
import { patternCounts, tighteningOrder } from '../../trade/pattern.ts';
import type { Rule } from '../rule.ts';

const card: RuleCard = {
  code: 'pattern-impossible',
  severity: 'error',
  title: 'A tightening order is asked for that cannot be worked out',
  why: 'The order is drawn for 3 to 16 fasteners that lie together. One or two have no order, and more than 16 are tightened in groups that the author names.',
  bad: `::fastener[Bracket bolt]{#bracket-bolt pattern=cross}

::step[Feel the bolt]{#feel}

See that the :fastener[bracket-bolt] sits flat.`,
  good: `::fastener[Bracket bolt]{#bracket-bolt count=4 pattern=cross}

::step[Feel the bolts]{#feel}

See that each :fastener[bracket-bolt] sits flat.`,
};

/** Every pattern has as many fasteners as an order can be worked out for. */
export const patternImpossible: Rule = {
  card,
  run: ({ guide }, report) => {
    for (const item of guide.items.values()) {
      if (!isFixing(item) || !item.pattern || item.unknown.has('count') || item.unknown.has('spare'))
        continue;
      const count = fittedTogether(item);
      if (tighteningOrder(count, item.pattern.value)) continue;
      const { least, most } = patternCounts;
      const message =
        count === 1
          ? `the ${item.noun.singular} is a single one, which has no tightening order; leave the pattern out, or state its count`
          : `there is no tightening order for ${count} ${item.noun.plural}: it is worked out for ${least} to ${most} that lie together`;
      const notes = item.countWritten
        ? [{ message: 'the count is stated here', at: item.count.at }]
        : [{ message: 'no count is stated here, so it is one', at: item.idAt }];
      report(finding(card, item.pattern.at, message, { notes }));
    }
  },
};

/** How many lie together: those of one side, without what stays in the box. */
function fittedTogether({ count, spare }: Fastener | KitItem): number {
  return count.value - (spare?.value ?? 0);
}
