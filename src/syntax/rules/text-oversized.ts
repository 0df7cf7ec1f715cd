import type { RuleCard } from '../../diagnostics/rule-card.ts';

export const textOversized: RuleCard = {
  code: 'text-oversized',
  severity: 'error',
  title: 'A text that is too large or too deep to be a guide',
  why: 'A guide has some pages. A file of megabytes, or lists and quotations a hundred deep, is damaged or is no guide, and reading it would hold up every other guide.',
  bad: `${'> '.repeat(120)}Look behind the edge.`,
  good: '> Look behind the edge.',
};
