import type { RuleCard } from '../../diagnostics/rule-card.ts';

export const labelUnwanted: RuleCard = {
  code: 'label-unwanted',
  severity: 'error',
  title: 'A directive has a label that nothing prints',
  why: 'Words in a place where they are never printed are lost to the technician.',
  bad: `::step[Free the arch edge]{#arch}

Look behind the edge.

:::refit-note[Lip first]
Seat the lower lip.
:::`,
  good: `::step[Free the arch edge]{#arch}

Look behind the edge.

:::refit-note
Seat the lower lip first.
:::`,
};
