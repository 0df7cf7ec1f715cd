import type { RuleCard } from '../../diagnostics/rule-card.ts';

export const textOversized: RuleCard = {
  code: 'text-oversized',
  severity: 'error',
  title: 'A text that is too large or too deep to be a guide or a list',
  why: "A guide has some pages. A file of megabytes, with thousands of directives, or with lists and quotations a hundred deep, is damaged or is no guide, and reading it would hold up every other guide. A list of tools or fastener types has some hundreds; one of tens of thousands is another system's catalogue.",
  bad: `${'> '.repeat(120)}Look behind the edge.`,
  good: '> Look behind the edge.',
};
