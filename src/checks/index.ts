import { altMissing } from './alt-missing.ts';
import { anchorMissing } from './anchor-missing.ts';
import { itemUndeclared } from './item-undeclared.ts';
import { itemUnused } from './item-unused.ts';
import { linkMissing } from './link-missing.ts';
import { mentionWrongKind } from './mention-wrong-kind.ts';
import { noneContradicted } from './none-contradicted.ts';
import { noneMissing } from './none-missing.ts';
import { pictureMissing } from './picture-missing.ts';
import type { Rule } from './rule.ts';
import { stepUnknown } from './step-unknown.ts';
import { toolUndeclared } from './tool-undeclared.ts';

export type { Rule, Subject } from './rule.ts';

/** Every rule that a finished guide is held against. */
export const rules: readonly Rule[] = [
  altMissing,
  anchorMissing,
  itemUndeclared,
  itemUnused,
  linkMissing,
  mentionWrongKind,
  noneContradicted,
  noneMissing,
  pictureMissing,
  stepUnknown,
  toolUndeclared,
];
