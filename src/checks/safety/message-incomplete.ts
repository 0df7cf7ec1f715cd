import { finding, type RuleCard } from '../../diagnostics/rule-card.ts';
import { instructionsOf, ordersIndirectly } from '../language/clauses.ts';
import type { Sentence } from '../language/sentences.ts';
import { isVerb } from '../language/verbs.ts';
import type { Rule } from '../rule.ts';
import { bodyOf, messagesWritten } from './messages-written.ts';

const card: RuleCard = {
  code: 'message-incomplete',
  severity: 'error',
  title: 'A safety message does not say what happens, or not how to avoid it',
  why: 'A hazard alone is a fright. A safety message names the hazard in its label, and its text says what happens and what to do about it (ANSI Z535.6).',
  bad: '::step[Draw the panel back]{#draw}\n\n:::caution[Sharp edge]\nThe lip of the panel can cut a finger.\n:::\n\nDraw the panel back.',
  good: '::step[Draw the panel back]{#draw}\n\n:::caution[Sharp edge]\nThe lip of the panel can cut a finger. Keep your hands on the outside.\n:::\n\nDraw the panel back.',
};

/** Every safety message says what happens and how to avoid it. */
export const messageIncomplete: Rule = {
  card,
  run: ({ guide }, report) => {
    for (const written of messagesWritten(guide)) {
      const { word, at } = written.message;
      const lacks = whatIsMissing(bodyOf(written, guide));
      if (lacks !== null) report(finding(card, at, `this ${word} does not say ${lacks}`));
    }
  },
};

function whatIsMissing(sentences: readonly Sentence[]): string | null {
  const avoids = sentences.some(tellsWhatToDo);
  const happens = sentences.some(tellsWhatHappens);
  if (!avoids && !happens) return 'what happens, nor how to avoid it';
  if (!happens) return 'what happens; add a sentence on what the hazard does';
  return avoids ? null : 'how to avoid it; add a sentence on what to do';
}

/** Lenient on purpose: a command of any kind, or a word that forbids. */
function tellsWhatToDo(sentence: Sentence): boolean {
  const forbids = sentence.words.some(({ text }) => /^(?:never|not|don't|no|only|avoid|must)$/.test(text));
  const begins = isVerb(sentence.words[0]?.text ?? '');
  return forbids || begins || ordersIndirectly(sentence) || instructionsOf(sentence).length > 0;
}

/** Lenient on purpose: a sentence that is no command, or one that says why. */
function tellsWhatHappens(sentence: Sentence): boolean {
  const says = sentence.words.some(
    ({ text, mark }) => mark === ':' || /^(?:can|could|may|will|might|because|or|otherwise)$/.test(text),
  );
  return says || instructionsOf(sentence).length === 0;
}
