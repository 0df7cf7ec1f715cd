import type { Rule } from '../rule.ts';
import { actionImpossible } from './action-impossible.ts';
import { branchDead } from './branch-dead.ts';
import { buildsNone } from './builds-none.ts';
import { buildsTooMany } from './builds-too-many.ts';
import { choiceGap } from './choice-gap.ts';
import { choiceOverlap } from './choice-overlap.ts';
import { messageNarrower } from './message-narrower.ts';
import { optionUnknown } from './option-unknown.ts';
import { outcomesTooMany } from './outcomes-too-many.ts';
import { referenceDropped } from './reference-dropped.ts';

/** The rules of options and builds. */
export const buildRules: readonly Rule[] = [
  actionImpossible,
  branchDead,
  buildsNone,
  buildsTooMany,
  choiceGap,
  choiceOverlap,
  messageNarrower,
  optionUnknown,
  outcomesTooMany,
  referenceDropped,
];
