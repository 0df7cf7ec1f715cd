import type { RuleCard } from '../../diagnostics/rule-card.ts';
import { languageRule } from './language-rule.ts';

/** ASD-STE100 allows a procedural sentence twenty words. */
const MOST_WORDS = 20;

const card: RuleCard = {
  code: 'sentence-long',
  severity: 'warning',
  title: 'A sentence of a step is too long to be held in mind',
  why: 'A technician reads a sentence, puts the print down and does it. Beyond some twenty words the first half is forgotten. A quantity counts as one word, and what stands in brackets is left out.',
  bad: '::step[Free the arch edge]{#arch}\n\nWork the lever behind the rear edge of the trim from below, beginning at the foot, and move up one clip at a time.',
  good: '::step[Free the arch edge]{#arch}\n\nBegin at the foot. Work the lever behind the rear edge of the trim, and move up one clip at a time.',
};

/** A sentence of a step has at most twenty words. */
export const sentenceLong = languageRule(card, 'steps', ({ words }) =>
  words.length > MOST_WORDS
    ? `this sentence has ${words.length} words; more than ${MOST_WORDS} are hard to keep in mind while working`
    : null,
);
