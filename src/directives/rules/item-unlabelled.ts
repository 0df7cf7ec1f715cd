import type { RuleCard } from '../../diagnostics/rule-card.ts';

export const itemUnlabelled: RuleCard = {
  code: 'item-unlabelled',
  severity: 'error',
  title: 'Something is declared without a name',
  why: 'A declaration without a label takes its name from the tool crib, the fastener types or the platform. Where none of them knows the id, the page would have nothing to print.',
  bad: '::tool{#trim-lifter}\n\n::step[Free the arch edge]{#arch}\n\nWork the :tool[trim-lifter] behind the edge.',
  good: '::tool[Trim lifter]{#trim-lifter}\n\n::step[Free the arch edge]{#arch}\n\nWork the :tool[trim-lifter] behind the edge.',
};
