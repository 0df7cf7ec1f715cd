import { altMissing } from './alt-missing.ts';
import { anchorMissing } from './anchor-missing.ts';
import { itemUndeclared } from './item-undeclared.ts';
import { itemUnused } from './item-unused.ts';
import { linkMissing } from './link-missing.ts';
import { mentionWrongKind } from './mention-wrong-kind.ts';
import { noneContradicted } from './none-contradicted.ts';
import { noneMissing } from './none-missing.ts';
import { pictureMissing } from './picture-missing.ts';
import { platformUnknown } from './platform-unknown.ts';
import type { PageRule, Rule } from './rule.ts';
import { stepUnknown } from './step-unknown.ts';
import { toolUndeclared } from './tool-undeclared.ts';

export { platformAnchors } from './links.ts';
export type { Lost, Page, PageRule, Rule, Subject } from './rule.ts';

/** Every rule that a finished guide is held against. */
export const rules: readonly Rule[] = [
  itemUndeclared,
  itemUnused,
  mentionWrongKind,
  noneContradicted,
  noneMissing,
  platformUnknown,
  stepUnknown,
  toolUndeclared,
];

/** Every rule that a page is held against. */
export const pageRules: readonly PageRule[] = [altMissing, anchorMissing, linkMissing, pictureMissing];
