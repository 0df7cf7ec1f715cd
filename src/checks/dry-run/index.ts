import type { Rule } from '../rule.ts';
import { actionOutOfOrder } from './action-out-of-order.ts';
import { actionRepeated } from './action-repeated.ts';
import { actionTwice } from './action-twice.ts';
import { bondedForGood } from './bonded-for-good.ts';
import { coatMissing } from './coat-missing.ts';
import { conditionGatesNothing } from './condition-gates-nothing.ts';
import { conditionLeftSet } from './condition-left-set.ts';
import { connectorLeftApart } from './connector-left-apart.ts';
import { connectorOnNothing } from './connector-on-nothing.ts';
import { cutBeforeTrial } from './cut-before-trial.ts';
import { cutNeverMade } from './cut-never-made.ts';
import { fastenerHoldsNothing } from './fastener-holds-nothing.ts';
import { fastenerLeftLoose } from './fastener-left-loose.ts';
import { fastenerLeftOver } from './fastener-left-over.ts';
import { figureCountDiffers } from './figure-count-differs.ts';
import { holesDisagree } from './holes-disagree.ts';
import { kitLeftInBox } from './kit-left-in-box.ts';
import { looseTogether } from './loose-together.ts';
import { materialGone } from './material-gone.ts';
import { needUnmet } from './need-unmet.ts';
import { oneTimeNotReplaced } from './one-time-not-replaced.ts';
import { oneTimeRefitted } from './one-time-refitted.ts';
import { openTimeOver } from './open-time-over.ts';
import { partLeftOff } from './part-left-off.ts';
import { partNeverLifted } from './part-never-lifted.ts';
import { partStillConnected } from './part-still-connected.ts';
import { partStillCovered } from './part-still-covered.ts';
import { partStillFastened } from './part-still-fastened.ts';
import { placeTaken } from './place-taken.ts';
import { plugUnhandled } from './plug-unhandled.ts';
import { relationCycle } from './relation-cycle.ts';
import { relationSideMissing } from './relation-side-missing.ts';
import { relationWrongKind } from './relation-wrong-kind.ts';
import { replacementShort } from './replacement-short.ts';
import { roundsOpen } from './rounds-open.ts';
import { settingLeft } from './setting-left.ts';
import { sideContradicted } from './side-contradicted.ts';
import { sideDisagrees } from './side-disagrees.ts';
import { sideForgotten } from './side-forgotten.ts';
import { spareExceedsCount } from './spare-exceeds-count.ts';
import { stackOpen } from './stack-open.ts';
import { supplyNeverApplied } from './supply-never-applied.ts';
import { supplyNotDry } from './supply-not-dry.ts';
import { supplyOverused } from './supply-overused.ts';
import { supplyUnitDiffers } from './supply-unit-differs.ts';
import { supplyYieldShort } from './supply-yield-short.ts';
import { temporaryLeftOn } from './temporary-left-on.ts';
import { tightenedBeforeStarted } from './tightened-before-started.ts';
import { undoneWithoutDoing } from './undone-without-doing.ts';

/** The rules of the dry run: what is held against a guide when it is played. */
export const dryRunRules: readonly Rule[] = [
  actionOutOfOrder,
  actionRepeated,
  actionTwice,
  bondedForGood,
  conditionGatesNothing,
  coatMissing,
  conditionLeftSet,
  connectorLeftApart,
  connectorOnNothing,
  cutBeforeTrial,
  cutNeverMade,
  fastenerHoldsNothing,
  fastenerLeftLoose,
  fastenerLeftOver,
  figureCountDiffers,
  holesDisagree,
  kitLeftInBox,
  looseTogether,
  materialGone,
  needUnmet,
  oneTimeNotReplaced,
  oneTimeRefitted,
  openTimeOver,
  supplyNotDry,
  supplyYieldShort,
  partLeftOff,
  partNeverLifted,
  partStillConnected,
  partStillCovered,
  partStillFastened,
  placeTaken,
  plugUnhandled,
  relationCycle,
  relationSideMissing,
  relationWrongKind,
  replacementShort,
  roundsOpen,
  settingLeft,
  sideContradicted,
  sideDisagrees,
  sideForgotten,
  spareExceedsCount,
  stackOpen,
  supplyNeverApplied,
  supplyOverused,
  supplyUnitDiffers,
  temporaryLeftOn,
  tightenedBeforeStarted,
  undoneWithoutDoing,
];
