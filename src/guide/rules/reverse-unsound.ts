import type { RuleCard } from '../../diagnostics/rule-card.ts';
import { refitExample, reverseExample } from './reverse-example.ts';

export const reverseUnsound: RuleCard = {
  code: 'reverse-unsound',
  severity: 'error',
  title: 'A step cannot be undone by itself',
  why: 'Undoing is sound where everything goes back as it came off. What is cut, bonded or used once does not, so the author writes that step.',
  bad: reverseExample(refitExample, ' reuse=no'),
  good: reverseExample(refitExample),
};
