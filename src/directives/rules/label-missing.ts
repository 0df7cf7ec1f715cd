import type { RuleCard } from '../../diagnostics/rule-card.ts';

export const labelMissing: RuleCard = {
  code: 'label-missing',
  severity: 'error',
  title: 'A directive lacks its label',
  why: 'The label is what the technician reads: the name of the step, the part or the hazard.',
  bad: `::step{#arch}

Look behind the edge.`,
  good: `::step[Free the arch edge]{#arch}

Look behind the edge.`,
};
