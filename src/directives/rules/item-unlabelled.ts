import type { RuleCard } from '../../diagnostics/rule-card.ts';

export const itemUnlabelled: RuleCard = {
  code: 'item-unlabelled',
  severity: 'error',
  title: 'Something is declared without a name',
  why: 'A part or a condition without a label takes its name from the platform, a fastener from its type. Where none of them knows the id, the page would have nothing to print.',
  bad: '::part{#arch-liner}\n\n::step[Free the arch edge]{#arch}\n\nLook behind the :part[arch-liner].',
  good: '::part[Arch liner]{#arch-liner}\n\n::step[Free the arch edge]{#arch}\n\nLook behind the :part[arch-liner].',
};
