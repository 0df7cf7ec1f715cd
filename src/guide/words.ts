import * as z from 'zod';
import { yamlKey, yamlText } from '../syntax/read-yaml.ts';
import type { TradeWords } from '../trade/words.ts';

function word(expects: string, means: string) {
  return yamlKey(yamlText.optional(), expects, means);
}

/** `words:` of a shop or a platform. */
export const wordsSchema = z
  .strictObject({
    vehicle: word('a word, as in `boat`', 'What is worked on.'),
    vehicles: word('a word, as in `boats`', 'Several of them; without it, the word for one with an s.'),
    left: word('a word, as in `port`', 'What is printed for the left side. In a guide, `side=left` stays.'),
    right: word(
      'a word, as in `starboard`',
      'What is printed for the right side. Both sides are named, or neither.',
    ),
    registration: word(
      'a label, as in `hull number`',
      'What one of them is known by, on the cover and the hand-over sheet.',
    ),
  })
  .refine(({ left, right }) => (left === undefined) === (right === undefined), {
    error: 'both left and right, or neither',
  })
  // The chart of the time names a side by its first letter.
  .refine(({ left, right }) => left === undefined || initial(left) !== initial(right), {
    error: 'words for left and right that begin with different letters',
  })
  .optional();

/** The words of a platform or a shop over those that stand around them; what is several of a thing follows from it. */
export function readWords(written: z.infer<typeof wordsSchema>, around: TradeWords): TradeWords {
  const { vehicle, vehicles, left, right, registration } = written ?? {};
  return {
    vehicle: vehicle ?? around.vehicle,
    vehicles: vehicles ?? (vehicle === undefined ? around.vehicles : `${vehicle}s`),
    left: left ?? around.left,
    right: right ?? around.right,
    registration: registration ?? around.registration,
  };
}

function initial(word: string | undefined): string {
  return [...(word ?? '')][0]?.toLowerCase() ?? '';
}
