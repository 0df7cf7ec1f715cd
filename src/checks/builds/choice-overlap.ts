import { finding, type RuleCard } from '../../diagnostics/rule-card.ts';
import type { Rule } from '../rule.ts';
import { splitsOf } from './splits.ts';

const van = `---
title: Example van
options:
  lamps: {one-of: {halogen: Halogen lamps, led: LED lamps, laser: Laser lamps}}
---

A van.
`;
const words = (second: string) =>
  `::step[Find the plug]{#find}\n\n:where[It is behind the lamp.]{when="lamps is halogen or lamps is led"}\n:where[It is under the lamp.]{when="${second}"}\n`;

const card: RuleCard = {
  code: 'choice-overlap',
  severity: 'error',
  title: 'A choice is split, and one of its values is told twice',
  why: 'Two branches that both hold tell the technician two things of which one is wrong.',
  bad: {
    'platforms/example-van.md': van,
    'example/guide.md': words('lamps is led or lamps is laser'),
  },
  good: { 'platforms/example-van.md': van, 'example/guide.md': words('lamps is laser') },
};

/** Conditions that split a choice do not hold together. */
export const choiceOverlap: Rule = {
  card,
  run: ({ guide }, report) => {
    for (const { option, branches } of splitsOf(guide, () => [])) {
      for (const [index, later] of branches.entries()) {
        const earlier = branches
          .slice(0, index)
          .find((one) => overlaps(one.choices, later.choices) && one.choices.join() !== later.choices.join());
        if (!earlier) continue;
        const both = later.choices.filter((choice) => earlier.choices.includes(choice));
        const message = `*${option.id}* is ${both.join(' or ')} has been told already`;
        const notes = [{ message: 'this branch holds for it too', at: earlier.at }];
        report(finding(card, later.at, message, { notes }));
      }
    }
  },
};

function overlaps(a: readonly string[], b: readonly string[]): boolean {
  return a.some((choice) => b.includes(choice));
}
