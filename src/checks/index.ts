import { conditionsOf } from '../job/index.ts';
import type { Guide } from '../model/guide.ts';
import { actionUnplayed } from './action-unplayed.ts';
import { actionWrongKind } from './action-wrong-kind.ts';
import { afterLater } from './after-later.ts';
import { altMissing } from './alt-missing.ts';
import { buildRules } from './builds/index.ts';
import { optionUnknown } from './builds/option-unknown.ts';
import { areKnown } from './builds/witness.ts';
import { contentsDisagree } from './contents-disagree.ts';
import { dryRunRules } from './dry-run/index.ts';
import { figureRules, markRules } from './figures/index.ts';
import { fixingRules } from './fixings/index.ts';
import { itemUnused } from './item-unused.ts';
import { languageRules } from './language/index.ts';
import { anchorMissing } from './names/anchor-missing.ts';
import { itemUndeclared } from './names/item-undeclared.ts';
import { labelRepeated } from './names/label-repeated.ts';
import { linkMissing } from './names/link-missing.ts';
import { mentionWrongKind } from './names/mention-wrong-kind.ts';
import { platformUnknown } from './names/platform-unknown.ts';
import { stepUnknown } from './names/step-unknown.ts';
import { toolUndeclared } from './names/tool-undeclared.ts';
import { noneContradicted } from './none-contradicted.ts';
import { noneMissing } from './none-missing.ts';
import { pictureMissing } from './picture-missing.ts';
import type { Lost, PageRule, Rule } from './rule.ts';
import { safetyRules } from './safety/index.ts';
import { settingSame } from './setting-same.ts';
import { tradeRules } from './trade/index.ts';

export { betweenRules, type GuideFacts, guideFacts } from './between/index.ts';
export { platformAnchors } from './names/links.ts';
export { idsMeant, idsNamed } from './names/references.ts';
export {
  type BetweenRule,
  type Lost,
  nothingLost,
  type Page,
  type PageRule,
  type Rule,
  type Subject,
} from './rule.ts';
export { notChecked } from './trade/not-checked.ts';
export { placeTakenTwice } from './trade/place-taken-twice.ts';

const textRules: readonly Rule[] = [
  actionUnplayed,
  actionWrongKind,
  afterLater,
  contentsDisagree,
  itemUndeclared,
  itemUnused,
  labelRepeated,
  mentionWrongKind,
  noneContradicted,
  noneMissing,
  platformUnknown,
  settingSame,
  stepUnknown,
  toolUndeclared,
  ...figureRules,
  ...fixingRules,
  ...languageRules,
  ...safetyRules,
  ...tradeRules,
];

/** Every rule that a finished guide is held against. */
export const rules: readonly Rule[] = [...textRules, ...buildRules, ...dryRunRules];

/** Whether a directive is one without which another job would be played than the author wrote. */
export function isWork(name: string): boolean {
  return name === 'step' || name === 'procedure' || name === 'reverse';
}

/**
 * The rules that can be relied on after what was lost: a job with a step missing is played up to there, and one with
 * a condition that nobody can work out is not played at all.
 */
export function rulesFor({ gap, conditions }: Lost, guide: Guide): readonly Rule[] {
  const known = areKnown(
    conditionsOf(guide).map(({ when }) => when.value),
    guide,
  );
  if (conditions || !known) return gap ? textRules : [...textRules, optionUnknown];
  return gap ? [...textRules, ...dryRunRules.filter(({ played }) => played)] : rules;
}

/** Every rule that a page is held against. */
export const pageRules: readonly PageRule[] = [
  altMissing,
  anchorMissing,
  linkMissing,
  pictureMissing,
  ...markRules,
];
