import { toDecide } from './read/markdown-text.ts';
import { lettersOf, type OldBlock, wordsIn } from './read/old-guide.ts';
import { bareHeading, markerOf, sentencesIn } from './words.ts';

/**
 * Marked places for whatever of an old guide is not in its draft: none, as long as everything that reads and writes does
 * what it should. It is here so that an old guide of a kind that nobody thought of loses nothing either.
 */
export function lostWords(blocks: readonly OldBlock[], draft: string): readonly string[] {
  const told = lettersOf(draft.replace(/\\(?=[^\p{L}\p{N}\s])/gu, ''));
  const lost = blocks.flatMap((block) =>
    wordsIn(block)
      .split('\n')
      .flatMap((line) => sentencesIn(markerOf(line)?.rest ?? line))
      .map((sentence) => (block.kind === 'heading' ? bareHeading(sentence) : sentence))
      .filter((sentence) => !told.includes(lettersOf(sentence)))
      .map((sentence) => toDecide('where this belongs', sentence, block.place)),
  );
  return lost.length === 0 ? [] : ['', ...lost.flatMap((line) => [line, ''])];
}
