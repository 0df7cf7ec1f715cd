import type { RuleCard } from '../../diagnostics/rule-card.ts';
import { barStep, clampedBar } from '../fixings/example.ts';
import { violationRule } from './violation-rule.ts';
import { spoken } from './words.ts';

const card: RuleCard = {
  code: 'stack-open',
  severity: 'error',
  title: 'A bolt is tightened while something that lies on it is missing',
  why: 'What lies between head and nut goes in before the bolt is tight. A spacer that is found on the bench afterwards means undoing the joint; one that is never found means that the bar is clamped crooked.',
  bad: clampedBar('') + barStep('fit[bar]', 'start[bolt]', 'tighten[bolt]', 'fit[spacer]'),
  good: clampedBar('') + barStep('fit[bar]', 'fit[spacer]', 'start[bolt]', 'tighten[bolt]'),
};

/** All that lies on a bolt is there when its joint is tightened. */
export const stackOpen = violationRule(card, ['stack-open'], (violation, guide) => {
  const bolt = spoken(violation.item, violation.sides, guide);
  const part = spoken(violation.part, violation.sides, guide);
  return {
    message: `${bolt.the} ${bolt.is} tightened while ${part.the} ${part.is} not on ${bolt.it}; ${part.it === 'it' ? 'it goes' : 'they go'} in first`,
  };
});
