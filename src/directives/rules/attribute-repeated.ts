import type { RuleCard } from '../../diagnostics/rule-card.ts';

export const attributeRepeated: RuleCard = {
  code: 'attribute-repeated',
  severity: 'error',
  title: 'An attribute is written twice',
  why: 'Two values for one thing contradict each other, and nobody can say which of them the author meant.',
  bad: `::step[Free the arch edge]{#arch time="5 min" time="6 min"}

Look behind the edge.`,
  good: `::step[Free the arch edge]{#arch time="5 min"}

Look behind the edge.`,
};
