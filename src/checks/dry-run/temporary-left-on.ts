import type { RuleCard } from '../../diagnostics/rule-card.ts';
import { violationRule } from './violation-rule.ts';
import { spoken } from './words.ts';

const card: RuleCard = {
  code: 'temporary-left-on',
  severity: 'error',
  title: 'Something temporary is left on',
  why: 'Masking tape that stays on bakes in, and a cover that stays on an intake stops the engine.',
  bad: '::supply[Masking tape]{#tape temporary}\n\n::step[Mask the edge]{#mask}\n\n:apply[tape].',
  good: '::supply[Masking tape]{#tape temporary}\n\n::step[Mask the edge]{#mask}\n\n:apply[tape]. Cut and :take-off[tape].',
};

/** Every temporary supply comes off again. */
export const temporaryLeftOn = violationRule(card, ['left'], (violation, guide) => {
  if (!(violation.state === 'on')) return null;
  const item = spoken(violation.item, violation.sides, guide);
  return { message: `${item.the} ${item.is} still on at the end` };
});
