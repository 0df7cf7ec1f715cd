import type { RuleCard } from '../../diagnostics/rule-card.ts';

export const attributeMissing: RuleCard = {
  code: 'attribute-missing',
  severity: 'error',
  title: 'A directive lacks an attribute that it needs',
  why: 'Everything that is counted, linked to or worked out hangs on an id; without it the line means nothing.',
  bad: `::step[Free the arch edge]

Look behind the edge.`,
  good: `::step[Free the arch edge]{#arch}

Look behind the edge.`,
};
