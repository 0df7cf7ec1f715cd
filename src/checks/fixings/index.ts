import type { Rule } from '../rule.ts';
import { boltShort } from './bolt-short.ts';
import { holeLate } from './hole-late.ts';
import { jointThreadClash } from './joint-thread-clash.ts';
import { sequenceIncomplete } from './sequence-incomplete.ts';
import { sequenceUnfit } from './sequence-unfit.ts';
import { stackCountDiffers } from './stack-count-differs.ts';

/** What a bolt goes through, what lies on it, and in which order bolts are tightened together. */
export const fixingRules: readonly Rule[] = [
  boltShort,
  holeLate,
  jointThreadClash,
  sequenceIncomplete,
  sequenceUnfit,
  stackCountDiffers,
];
