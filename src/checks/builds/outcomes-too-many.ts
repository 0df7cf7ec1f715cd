import { finding, type RuleCard } from '../../diagnostics/rule-card.ts';
import type { Rule } from '../rule.ts';

const ids = Array.from({ length: 7 }, (_, index) => `extra-${index + 1}`);
const van = `---
title: Example van
options:
${ids.map((id) => `  ${id}: ${id.replace('-', ' ')}`).join('\n')}
---

A van.
`;
const words = (count: number) =>
  `::step[Look around]{#look}\n\n${ids
    .slice(0, count)
    .map((id) => `:where[Look at ${id.replace('-', ' ')}.]{when=${id}}`)
    .join('\n')}\n`;

const card: RuleCard = {
  code: 'outcomes-too-many',
  severity: 'error',
  title: 'A guide comes out in more ways than a page can carry',
  why: 'What differs between builds is worked out beforehand for each outcome. Beyond 64 of them the guide is really several guides, and nobody can proof-read it.',
  bad: { 'platforms/example-van.md': van, 'example/guide.md': words(7) },
  good: { 'platforms/example-van.md': van, 'example/guide.md': words(6) },
};

/** A guide has at most 64 outcomes. */
export const outcomesTooMany: Rule = {
  card,
  run: ({ guide, job }, report) => {
    if (job.buildProblem?.kind !== 'too-many-outcomes') return;
    const { outcomes, split } = job.buildProblem;
    const named = split.map((id) => `*${id}*`).join(' and ');
    const mend = split.some((id) => guide.items.get(id)?.kind === 'inspection')
      ? `let less hang on ${named}`
      : `write a guide for each value of ${named}`;
    const message = `this guide comes out in ${outcomes} ways; ${mend}`;
    const notes = guide.builds.options
      .filter((option) => split.includes(option.id))
      .map((option) => ({ message: `*${option.id}* is declared here`, at: option.at }));
    report(finding(card, guide.title.at, message, { notes }));
  },
};
