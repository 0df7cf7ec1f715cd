export { type ActionRule, actionRule, actionRules, bindsTool, isFixing, targetKinds } from './actions.ts';
export { fewestTraits, type Trait, traitsForAuthor, whenInWords } from './build-words.ts';
export { buildKey, enumerateBuilds } from './builds.ts';
export { computeJob } from './compute-job.ts';
export { type ConditionPlace, conditionsOf } from './conditions.ts';
export { type CrowfootUse, crowfootUse, settingInLine } from './crowfoot.ts';
export { type ProductDemand, productDemands } from './drying.ts';
export { type GatherLine, whereUsed } from './gather.ts';
export { type Grip, gripOf, isNut, lengthless, piecesOn } from './grip.ts';
export { capitalised, listed, lowered, nounOf } from './noun.ts';
export { oncePer } from './once.ts';
export { packedIds } from './packing.ts';
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
} from './phrase.ts';
export { precedenceOf } from './precedence.ts';
export { workOf } from './proofs.ts';
export { helperWords, secondTechnicianWords } from './schedule/index.ts';
export { type Feature, findTarget, holesOf, type Target, whensOfTarget } from './target.ts';
export { company, tellApart } from './tell-apart.ts';
export { placeOfTemplate } from './template-place.ts';
export { type DrawnVariant, templateVariants } from './template-variants.ts';
export { sideTime } from './time.ts';
export { toolsOf } from './uses.ts';
export { actionsOf, inlinesOf, type Placed, placedIn, placedInStep, provesOf, stepsOf } from './walk.ts';
export { allHold, holds, optionsIn, whenKey } from './when.ts';
export { zonesOfStep, zonesOfThing } from './zones.ts';
