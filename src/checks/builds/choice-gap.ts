import { finding, type RuleCard } from '../../diagnostics/rule-card.ts';
import type { Rule } from '../rule.ts';
import { splitsOf } from './splits.ts';
import { buildsOf, buildsWith } from './witness.ts';

const van = `---
title: Example van
options:
  lamps: {one-of: {halogen: Halogen lamps, led: LED lamps, laser: Laser lamps}}
---

A van.
`;
const words = (rest: string) =>
  `::step[Find the plug]{#find}\n\n:where[It is behind the lamp.]{when="lamps is halogen"}\n:where[It is under the lamp.]{when="lamps is led"}\n${rest}`;

const card: RuleCard = {
  code: 'choice-gap',
  severity: 'error',
  title: 'A choice is split, and one of its values is forgotten',
  why: 'Where the text says what to do for some lamps and is silent about the others, the technician cannot tell whether there is nothing to do or something was forgotten.',
  bad: { 'platforms/example-van.md': van, 'example/guide.md': words('') },
  good: {
    'platforms/example-van.md': van,
    'example/guide.md': words(':where[There is none.]{when="lamps is laser"}\n'),
  },
};

/** Conditions that split a choice leave none of its values out. */
export const choiceGap: Rule = {
  card,
  run: ({ guide, job }, report) => {
    const builds = buildsOf(job);
    const open = splitsOf(guide, ({ outer }, option) => [
      ...new Set(buildsWith(outer, builds).map((build) => String(build[option.id]))),
    ]);
    for (const { option, branches, open: choices } of open) {
      const covered = new Set(branches.flatMap((branch) => branch.choices));
      const missing = choices.filter((choice) => !covered.has(choice));
      const [first, ...others] = branches;
      // Where nothing hangs on an outcome, the inspection's own list says to go on.
      if (!first || missing.length === 0 || guide.items.get(option.id)?.kind === 'inspection') continue;
      const message = `nothing is said here for *${option.id}* is ${missing.join(' or ')}`;
      const notes = others.map((branch) => ({ message: 'the choice is split here too', at: branch.at }));
      report(finding(card, first.at, message, { notes }));
    }
  },
};
