import { finding, type RuleCard } from '../diagnostics/rule-card.ts';
import { stepsOf } from '../job/index.ts';
import type { Rule } from './rule.ts';

const steps = (first: string, second: string) =>
  `::step[Lay the loom]{#loom${first}}\n\nLay it along the sill.\n\n::step[Prime the seam]{#prime${second}}\n\nPrime it.`;

const card: RuleCard = {
  code: 'after-later',
  severity: 'error',
  title: 'A step is to come after one that stands below it',
  why: 'The order of the text is the order of doing. A step that must come after another stands below it; after= keeps it there where it may otherwise be done in any order.',
  bad: steps(' after=prime', ''),
  good: steps('', ' any-order after=loom'),
};

/** What a step names in `after` stands above it. */
export const afterLater: Rule = {
  card,
  run: ({ guide }, report) => {
    const all = stepsOf(guide).map(({ id }) => id);
    const told = new Set<string>();
    for (const [place, step] of stepsOf(guide).entries()) {
      for (const { value, at } of step.after) {
        const key = `${at.file}\n${at.start}`;
        if (all.indexOf(value) < place || told.has(key)) continue;
        told.add(key);
        const message =
          value === step.id
            ? 'a step cannot come after itself'
            : `the step "${value}" stands below this one; move this step under it`;
        report(finding(card, at, message));
      }
    }
  },
};
