import type { RuleCard } from '../../diagnostics/rule-card.ts';
import { lateCondition } from './clauses.ts';
import { languageRule } from './language-rule.ts';

const card: RuleCard = {
  code: 'condition-late',
  severity: 'warning',
  title: 'A condition stands after its command',
  why: 'The hands begin at the verb. A condition that comes after it is read when the work is done.',
  bad: '::step[Free the arch edge]{#arch}\n\nWarm the trim first if it is colder than 10 °C.',
  good: '::step[Free the arch edge]{#arch}\n\nIf the trim is colder than 10 °C, warm it first.',
};

/** In a step, "if", "when", "once" and "unless" stand before the command. */
export const conditionLate = languageRule(card, 'steps', (sentence) => {
  const index = lateCondition(sentence);
  if (index === null) return null;
  const word = sentence.words[index]?.text ?? '';
  return `"${word}" stands after the command that it is a condition for; put the condition first`;
});
