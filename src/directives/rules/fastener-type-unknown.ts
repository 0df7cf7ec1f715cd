import type { RuleCard } from '../../diagnostics/rule-card.ts';

export const fastenerTypeUnknown: RuleCard = {
  code: 'fastener-type-unknown',
  severity: 'error',
  title: 'A fastener names a type that the shop does not list',
  why: 'The type says which tool fits and whether the fastener can be used again. A misspelt type loses both.',
  bad: '::part[Cover]{#cover}\n::fastener[Clip]{#clip type=push-clop holds=cover}',
  good: '::part[Cover]{#cover}\n::fastener[Clip]{#clip type=push-clip holds=cover}',
};
