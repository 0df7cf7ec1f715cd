import { finding, type RuleCard } from '../../diagnostics/rule-card.ts';
import { stepsOf } from '../../job/index.ts';
import type { Rule } from '../rule.ts';
import { type Sentence, sentencesOf } from './sentences.ts';
import { isDoubtful, isPerception, isVerb } from './verbs.ts';
import { isWritten } from './written.ts';

const sill = (words: string) =>
  `::fastener[Sill clip]{#clip count=4}\n\n::step[Free the sill]{#sill}\n\n${words}\n\n::step[Close it]{#close}\n\n:refit[clip].`;

const card: RuleCard = {
  code: 'action-doubled',
  severity: 'error',
  title: 'A sentence says the verb or the article of an action twice',
  why: 'An action prints its own verb, article and count: :remove[clip] reads "remove the 4 sill clips". With words of its own before it the sentence reads "Pry the remove the 4 sill clips", and nobody reads the result back. `check --read` prints it.',
  bad: sill('Pry the :remove[clip].'),
  good: sill(':remove[clip]{say=pry}.'),
};

/** No verb and no article stands right before an action. */
export const actionDoubled: Rule = {
  card,
  run: ({ guide }, report) => {
    for (const step of stepsOf(guide).filter(isWritten)) {
      for (const block of step.blocks) {
        if (block.type !== 'prose') continue;
        for (const sentence of sentencesOf(block.content, guide, step.side?.value ?? null)) {
          const words = doubledIn(sentence);
          if (words === null) continue;
          const message = `this reads "${words} …"; an action prints its verb and its article, so leave those words out, or change the verb with say=`;
          report(finding(card, sentence.at, message));
        }
      }
    }
  },
};

const articles = new Set(['the', 'a', 'an', 'both', 'each', 'every', 'all']);

/** The words around the first place where an action says again what was just said; `null` where none does. */
function doubledIn({ words }: Sentence): string | null {
  const at = words.findIndex((word, index) => {
    const before = words[index - 1];
    if (!word.acts || !before || before.mark !== '' || before.acts) return false;
    return articles.has(before.text) || (index === 1 && isPlainVerb(before.text));
  });
  if (at < 1) return null;
  return words
    .slice(Math.max(0, at - 2), at + 3)
    .map(({ text }) => text)
    .join(' ');
}

/** "Peel", but not "tape", which may be a noun, nor "see", which asks for a look at what follows. */
function isPlainVerb(word: string): boolean {
  return (
    isVerb(word) &&
    !isDoubtful(word) &&
    !isPerception(word) &&
    !/^(?:let|help|go|start|try|please)$/.test(word)
  );
}
