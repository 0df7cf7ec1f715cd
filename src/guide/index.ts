import type { RuleCard } from '../diagnostics/rule-card.ts';
import { conditionUnreadable } from './rules/condition-unreadable.ts';
import { frontMatterMissing } from './rules/front-matter-missing.ts';
import { guideTooLong } from './rules/guide-too-long.ts';
import { headingUnnamed } from './rules/heading-unnamed.ts';
import { idDoubled } from './rules/id-doubled.ts';
import { optionDoubled } from './rules/option-doubled.ts';
import { procedureLoop } from './rules/procedure-loop.ts';
import { procedureOption } from './rules/procedure-option.ts';
import { procedurePlacedTwice } from './rules/procedure-placed-twice.ts';
import { procedureStepUnknown } from './rules/procedure-step-unknown.ts';
import { procedureUnknown } from './rules/procedure-unknown.ts';
import { proceduresTooMany } from './rules/procedures-too-many.ts';
import { reverseDoubled } from './rules/reverse-doubled.ts';
import { reverseItself } from './rules/reverse-itself.ts';
import { reverseUnknown } from './rules/reverse-unknown.ts';
import { reverseUnsound } from './rules/reverse-unsound.ts';
import { sequenceAction } from './rules/sequence-action.ts';
import { stepHomeless } from './rules/step-homeless.ts';
import { zoneUnknown } from './rules/zone-unknown.ts';

export type { ReadingContext } from './context.ts';
export { directiveNames } from './names.ts';
export { placeChains, placedReport } from './procedures/placed-report.ts';
export { readGuide } from './read-guide.ts';
export { readPlatform } from './read-platform.ts';
export { readProcedure } from './read-procedure.ts';
export { readWords, wordsSchema } from './words.ts';

/** The rules that putting a guide together can raise. */
export const guideRules: readonly RuleCard[] = [
  conditionUnreadable,
  frontMatterMissing,
  guideTooLong,
  headingUnnamed,
  idDoubled,
  optionDoubled,
  procedureLoop,
  proceduresTooMany,
  procedureOption,
  procedurePlacedTwice,
  procedureStepUnknown,
  procedureUnknown,
  reverseDoubled,
  reverseItself,
  reverseUnknown,
  reverseUnsound,
  sequenceAction,
  stepHomeless,
  zoneUnknown,
];
