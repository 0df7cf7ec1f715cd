import type { RuleCard } from '../../diagnostics/rule-card.ts';

export const headingUnnamed: RuleCard = {
  code: 'heading-unnamed',
  severity: 'error',
  title: 'A heading has no id',
  why: 'Links and reversals hang on ids, never on wording, so that a heading can be reworded without breaking what points at it.',
  bad: `## Strip down

::step[Free the arch edge]{#arch}

Look behind the edge.`,
  good: `## Strip down {#strip-down}

::step[Free the arch edge]{#arch}

Look behind the edge.`,
};
