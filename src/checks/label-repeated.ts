import { finding, type RuleCard } from '../diagnostics/rule-card.ts';
import { company } from '../job/index.ts';
import type { Item } from '../model/item.ts';
import type { Rule } from './rule.ts';

const card: RuleCard = {
  code: 'label-repeated',
  severity: 'error',
  title: 'Two things have the same label',
  why: 'Text, log and sheets name a thing by its label. Under one label nobody can tell which of two spacers is meant, or which cable.',
  bad: '::kit[Spacer]{#spacer-front count=2}\n::kit[Spacer]{#spacer-rear count=2}\n\n::step[Fit the spacers]{#fit}\n\n:fit[spacer-front] in front and :fit[spacer-rear] behind.',
  good: '::kit[Spacer, 12 mm]{#spacer-front count=2}\n::kit[Spacer, 18 mm]{#spacer-rear count=2}\n\n::step[Fit the spacers]{#fit}\n\n:fit[spacer-front] in front and :fit[spacer-rear] behind.',
};

/** No two items of a guide have the same label. */
export const labelRepeated: Rule = {
  card,
  run: ({ guide }, report) => {
    const first = new Map<string, Item>();
    for (const item of guide.items.values()) {
      const label = item.noun.label.trim().replace(/\s+/g, ' ').toLowerCase();
      const key = `${company(item)}\n${label}`;
      const earlier = first.get(key);
      if (!earlier) {
        first.set(key, item);
        continue;
      }
      if (isSameLine(earlier, item)) continue;
      const message = `the label “${item.noun.label}” is given twice; add what tells the two apart, after a comma, as in “${item.noun.label}, 12 mm”`;
      report(finding(card, item.at, message, { notes: [{ message: 'first given here', at: earlier.at }] }));
    }
  },
};

/** A procedure that is placed twice declares its items once. */
function isSameLine({ at: one }: Item, { at: other }: Item): boolean {
  return one.file === other.file && one.start === other.start;
}
