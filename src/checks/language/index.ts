import type { Rule } from '../rule.ts';
import { actionDoubled } from './action-doubled.ts';
import { conditionLate } from './condition-late.ts';
import { noteInstructs } from './note-instructs.ts';
import { pluralDoubled } from './plural-doubled.ts';
import { sentenceCrowded } from './sentence-crowded.ts';
import { sentenceLong } from './sentence-long.ts';
import { sentenceNotImperative } from './sentence-not-imperative.ts';

/** Plain language: what a program can tell of a sentence that is hard to work by. */
export const languageRules: readonly Rule[] = [
  actionDoubled,
  conditionLate,
  noteInstructs,
  pluralDoubled,
  sentenceCrowded,
  sentenceLong,
  sentenceNotImperative,
];
