import { finding, type RuleCard } from '../../diagnostics/rule-card.ts';
import { totalCount } from '../../job/index.ts';
import type { Rule } from '../rule.ts';

const clips = (label: string) =>
  `::fastener[${label}]{#clip count=4}\n\n::step[Free the sill]{#sill}\n\n:remove[clip].\n\n::step[Close it]{#close}\n\n:refit[clip].`;

const card: RuleCard = {
  code: 'plural-doubled',
  severity: 'warning',
  title: 'A name is in the plural already, and would be printed with a second one',
  why: 'An item is named in the singular, and its count makes the plural. Four "Sill clips" would read "remove the 4 sill clipses".',
  bad: clips('Sill clips'),
  good: clips('Sill clip'),
};

/** What there is more than one of is named in the singular, or says its plural itself. */
export const pluralDoubled: Rule = {
  card,
  run: ({ guide }, report) => {
    for (const item of guide.items.values()) {
      const { singular, plural } = item.noun;
      if (totalCount(item) < 2 || !isPlural(singular) || !/ses$/.test(plural)) continue;
      const message = `with a count of ${totalCount(item)} this reads "the ${totalCount(item)} ${plural}"; name one of them, or say the plural with plural=`;
      report(finding(card, item.at, message));
    }
  },
};

/** Ends as a plural does: "clips", "holes"; not "glass", "chassis", "bus" or "lens". */
function isPlural(noun: string): boolean {
  return /[^aiousy]s$/i.test(noun) && !/\b(?:lens|always)$/i.test(noun);
}
