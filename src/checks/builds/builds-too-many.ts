import { finding, type RuleCard } from '../../diagnostics/rule-card.ts';
import type { Rule } from '../rule.ts';

const van = (rest: string) => `---
title: Example van
options:
${Array.from({ length: 13 }, (_, index) => `  extra-${index + 1}: Extra ${index + 1}`).join('\n')}
${rest}---

A van.
`;

const card: RuleCard = {
  code: 'builds-too-many',
  severity: 'error',
  title: 'A platform has more builds than can be told apart',
  why: 'Every build is checked, one by one. Beyond 4,096 of them no one can say that a guide is right for all, and no shop works on as many: list those that exist.',
  bad: { 'platforms/example-van.md': van('') },
  good: {
    'platforms/example-van.md': van('builds:\n  - {extra-1: yes, extra-2: no, extra-3: no, extra-4: no}\n'),
  },
};

/** The builds of a guide can all be checked. */
export const buildsTooMany: Rule = {
  card,
  run: ({ guide, job }, report) => {
    if (job.buildProblem?.kind !== 'too-many-builds') return;
    const count = job.buildProblem.options.length;
    const message = `${count} options make more than 4,096 builds; list the builds that the platform has, or those that are impossible`;
    report(finding(card, guide.platform.at, message, { notes: optionNotes(guide.builds.options) }));
  },
};

function optionNotes(options: Parameters<Rule['run']>[0]['guide']['builds']['options']) {
  const [first] = options;
  return first ? [{ message: 'the first of them', at: first.at }] : [];
}
