import type { Rule } from '../rule.ts';
import { conditionLate } from './condition-late.ts';
import { noteInstructs } from './note-instructs.ts';
import { sentenceCrowded } from './sentence-crowded.ts';
import { sentenceLong } from './sentence-long.ts';
import { sentenceNotImperative } from './sentence-not-imperative.ts';

/** Plain language: what a program can tell of a sentence that is hard to work by. */
export const languageRules: readonly Rule[] = [
  conditionLate,
  noteInstructs,
  sentenceCrowded,
  sentenceLong,
  sentenceNotImperative,
];
