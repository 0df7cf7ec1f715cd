import { finding, type RuleCard } from '../../diagnostics/rule-card.ts';
import type { Rule } from '../rule.ts';

const van = (impossible: string) => `---
title: Example van
options:
  fog: Front fog lamps
impossible: [${impossible}]
---

A van.
`;

const card: RuleCard = {
  code: 'builds-none',
  severity: 'error',
  title: 'No build of the platform is left',
  why: 'When every combination is called impossible, no vehicle is left for which the guide could be right or wrong.',
  bad: { 'platforms/example-van.md': van('fog, not fog') },
  good: { 'platforms/example-van.md': van('fog') },
};

/** A platform has at least one build. */
export const buildsNone: Rule = {
  card,
  run: ({ guide, job }, report) => {
    if (job.buildProblem?.kind !== 'no-build') return;
    const notes = guide.builds.impossible.map((one) => ({ message: 'ruled out here', at: one.at }));
    report(finding(card, guide.platform.at, 'every combination of options is impossible', { notes }));
  },
};
