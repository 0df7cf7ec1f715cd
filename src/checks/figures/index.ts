import type { PageRule, Rule } from '../rule.ts';
import { itemUnpictured } from './item-unpictured.ts';
import { markLetterRepeated } from './mark-letter-repeated.ts';
import { markOutsidePicture } from './mark-outside-picture.ts';
import { pictureWrongSide } from './picture-wrong-side.ts';

/** What a figure must do for its step: show the right side, and mark what is handled. */
export const figureRules: readonly Rule[] = [itemUnpictured, pictureWrongSide];

/** What the marks of any picture must do: point into it, each by a letter of its own. */
export const markRules: readonly PageRule[] = [markLetterRepeated, markOutsidePicture];
