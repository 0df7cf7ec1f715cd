import type { RuleCard } from '../../diagnostics/rule-card.ts';
import { refitExample, reverseExample } from './reverse-example.ts';

export const reverseDoubled: RuleCard = {
  code: 'reverse-doubled',
  severity: 'error',
  title: 'A step is reversed twice',
  why: 'What is refitted twice was taken off once.',
  bad: reverseExample(`${refitExample}\n## Refit again {#again}\n\n::reverse{of=cover-off}\n`),
  good: reverseExample(refitExample),
};
