import type { RuleCard } from '../../diagnostics/rule-card.ts';

export const attributeValue: RuleCard = {
  code: 'attribute-value',
  severity: 'error',
  title: 'The value of an attribute cannot be read',
  why: 'A number without its unit, a range the wrong way round or a word out of place could be taken for something else in the bay.',
  bad: `::step[Free the arch edge]{#arch time=5}

Look behind the edge.`,
  good: `::step[Free the arch edge]{#arch time="5 min"}

Look behind the edge.`,
};
