import { z } from 'zod';
import { yamlText } from '../syntax/read-yaml.ts';
import type { TradeWords } from '../trade/words.ts';

/** `words:` of a shop or a platform. */
export const wordsSchema = z
  .strictObject({
    vehicle: yamlText.optional(),
    vehicles: yamlText.optional(),
    left: yamlText.optional(),
    right: yamlText.optional(),
    registration: yamlText.optional(),
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
