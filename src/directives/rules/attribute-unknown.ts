import type { RuleCard } from '../../diagnostics/rule-card.ts';

export const attributeUnknown: RuleCard = {
  code: 'attribute-unknown',
  severity: 'error',
  title: 'A directive has an attribute that it does not know',
  why: 'A misspelt attribute would be lost in silence: a torque that never prints, a fastener that holds nothing.',
  bad: `::step[Free the arch edge]{#arch tiem="5 min"}

Look behind the edge.`,
  good: `::step[Free the arch edge]{#arch time="5 min"}

Look behind the edge.`,
};
