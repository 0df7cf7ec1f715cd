import type { RuleCard } from '../../diagnostics/rule-card.ts';
import { listed } from '../../job/index.ts';
import { instructionsOf } from './clauses.ts';
import { languageRule } from './language-rule.ts';

/** What the hands do in one go may share a sentence; that is three things at most (common practice, no source). */
const MOST_INSTRUCTIONS = 3;

const card: RuleCard = {
  code: 'sentence-crowded',
  severity: 'warning',
  title: 'A sentence asks for more than three things',
  why: 'Of four things in one sentence, the third is the one that gets left out. What the hands do in one go may share a sentence; the rest gets its own.',
  bad: '::step[Take out the lamp]{#lamp}\n\nOpen the flap, unplug the lamp, lift it out and set it on the bench.',
  good: '::step[Take out the lamp]{#lamp}\n\nOpen the flap and unplug the lamp. Lift it out and set it on the bench.',
};

/** A sentence of a step gives at most three instructions. */
export const sentenceCrowded = languageRule(card, 'steps', (sentence) => {
  const verbs = instructionsOf(sentence);
  if (verbs.length <= MOST_INSTRUCTIONS) return null;
  const words = verbs.map((index) => `"${sentence.words[index]?.text ?? ''}"`);
  return `this sentence asks for ${verbs.length} things (${listed(words)}); at most ${MOST_INSTRUCTIONS} fit in one`;
});
