import type { RuleCard } from '../../diagnostics/rule-card.ts';
import { instructionsOf, ordersIndirectly } from './clauses.ts';
import { languageRule } from './language-rule.ts';

const card: RuleCard = {
  code: 'note-instructs',
  severity: 'warning',
  title: 'A note gives an instruction',
  why: 'A technician in a hurry skips the notes: they inform. What is to be done stands in the text of the step, or in a safety message, where it is ticked.',
  bad: '::step[Free the arch edge]{#arch}\n\nWork the lever behind the edge.\n\n:::note\nCheck the seal before you close the panel.\n:::',
  good: '::step[Free the arch edge]{#arch}\n\nWork the lever behind the edge. Check the seal.\n\n:::note\nA torn seal lets water into the sill.\n:::',
};

/** A note informs and never instructs. */
export const noteInstructs = languageRule(card, 'notes', (sentence) => {
  // An action in a note is another rule's: it is not played.
  if (sentence.words.some(({ acts }) => acts)) return null;
  return instructionsOf(sentence).length > 0 || ordersIndirectly(sentence)
    ? 'a note informs; put this instruction into the text of the step'
    : null;
});
