import type { RuleCard } from '../../diagnostics/rule-card.ts';
import { refitExample, reverseExample } from './reverse-example.ts';

export const reverseItself: RuleCard = {
  code: 'reverse-itself',
  severity: 'error',
  title: 'A section reverses itself',
  why: 'A refit that stands in the strip-down that it undoes has no beginning.',
  bad: reverseExample('::reverse{of=strip-down}\n'),
  good: reverseExample(refitExample),
};
