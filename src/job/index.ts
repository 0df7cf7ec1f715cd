export {
  type ActionRule,
  actionRule,
  actionRules,
  bindsTool,
  isFixing,
  targetKinds,
} from './actions/actions.ts';
export { type CrowfootUse, crowfootUse, settingInLine } from './actions/crowfoot.ts';
export { type Grip, gripOf, isNut, lengthless, piecesOn } from './actions/grip.ts';
export { type Feature, findTarget, holesOf, type Target, whensOfTarget } from './actions/target.ts';
export { toolsOf } from './actions/uses.ts';
export {
  actionsOf,
  inlinesOf,
  type Placed,
  placedIn,
  placedInStep,
  provesOf,
  stepsOf,
} from './actions/walk.ts';
export { fewestTraits, type Trait, traitsForAuthor, whenInWords } from './builds/build-words.ts';
export { buildKey, enumerateBuilds } from './builds/builds.ts';
export { type ConditionPlace, conditionsOf } from './builds/conditions.ts';
export { placeOfTemplate } from './builds/template-place.ts';
export { type DrawnVariant, templateVariants } from './builds/template-variants.ts';
export { allHold, holds, optionsIn, whenKey } from './builds/when.ts';
export { computeJob } from './compute-job.ts';
export { type ProductDemand, productDemands } from './drying.ts';
export { type GatherLine, whereUsed } from './gather.ts';
export { oncePer } from './once.ts';
export { packedIds } from './packing.ts';
export { precedenceOf } from './precedence.ts';
export { workOf } from './proofs.ts';
export { helperWords, secondTechnicianWords } from './schedule/index.ts';
export { sideTime } from './time.ts';
export { capitalised, listed, lowered, nounOf } from './words/noun.ts';
export {
  actionWords,
  countWords,
  handledCount,
  handledEach,
  isCounted,
  itemTorqueWords,
  mentionWords,
  type PhrasePlace,
  targetNoun,
  totalCount,
} from './words/phrase.ts';
export { company, tellApart } from './words/tell-apart.ts';
export { zonesOfStep, zonesOfThing } from './zones.ts';
