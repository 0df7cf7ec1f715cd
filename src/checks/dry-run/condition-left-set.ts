import type { RuleCard } from '../../diagnostics/rule-card.ts';
import { violationRule } from './violation-rule.ts';
import { spoken } from './words.ts';

const card: RuleCard = {
  code: 'condition-left-set',
  severity: 'error',
  title: 'A condition is never cleared',
  why: 'A battery that stays isolated, or a bonnet that stays propped, is left for the customer to find.',
  bad: '::condition[Battery isolated]{#battery-off}\n\n::step[Isolate the battery]{#battery}\n\n:set[battery-off].',
  good: '::condition[Battery isolated]{#battery-off}\n\n::step[Isolate the battery]{#battery}\n\n:set[battery-off]. Change the bulb and :clear[battery-off].',
};

/** Every condition that is set is cleared again, unless it stays. */
export const conditionLeftSet = violationRule(card, ['left'], (violation, guide) => {
  if (!(violation.state === 'holds')) return null;
  const item = spoken(violation.item, violation.sides, guide);
  return {
    message: `“${guide.items.get(violation.item)?.noun.singular ?? violation.item}” still holds at the end, and nothing clears ${item.it}`,
  };
});
