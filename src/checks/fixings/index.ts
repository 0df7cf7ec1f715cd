import type { Rule } from '../rule.ts';
import { boltShort } from './bolt-short.ts';
import { jointThreadClash } from './joint-thread-clash.ts';
import { sequenceIncomplete } from './sequence-incomplete.ts';
import { sequenceUnfit } from './sequence-unfit.ts';
import { stackCountDiffers } from './stack-count-differs.ts';

/** What lies on a bolt, and in which order bolts are tightened together. */
export const fixingRules: readonly Rule[] = [
  boltShort,
  jointThreadClash,
  sequenceIncomplete,
  sequenceUnfit,
  stackCountDiffers,
];
