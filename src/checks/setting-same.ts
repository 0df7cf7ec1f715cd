import { finding, type RuleCard } from '../diagnostics/rule-card.ts';
import type { Rule } from './rule.ts';

const card: RuleCard = {
  code: 'setting-same',
  severity: 'error',
  title: 'A setting is set to what it stands at',
  why: 'One of the two is a slip, and the print would have the technician tick a change that is none.',
  bad: '::setting[Trailer coding]{#coding from="not fitted" to="Not fitted"}\n\n::step[Code the module]{#code}\n\n:set[coding].',
  good: '::setting[Trailer coding]{#coding from="not fitted" to="13-pin socket"}\n\n::step[Code the module]{#code}\n\n:set[coding].',
};

/** What a setting is set to differs from what it stands at as the vehicle comes. */
export const settingSame: Rule = {
  card,
  run: ({ guide }, report) => {
    for (const item of guide.items.values()) {
      if (item.kind !== 'setting' || item.from.value.toLowerCase() !== item.to.value.toLowerCase()) continue;
      report(
        finding(
          card,
          item.to.at,
          `the ${item.noun.singular} stands at "${item.from.value}" as the vehicle comes, and is set to the same; write what it is set to`,
        ),
      );
    }
  },
};
