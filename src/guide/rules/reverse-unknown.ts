import type { RuleCard } from '../../diagnostics/rule-card.ts';
import { refitExample, reverseExample } from './reverse-example.ts';

export const reverseUnknown: RuleCard = {
  code: 'reverse-unknown',
  severity: 'error',
  title: 'A reversal names steps that do not exist',
  why: 'The refit of a section that is not there would be left out in silence, and the vehicle would leave with its cover off.',
  bad: reverseExample(refitExample.replace('strip-down', 'stripdown')),
  good: reverseExample(refitExample),
};
