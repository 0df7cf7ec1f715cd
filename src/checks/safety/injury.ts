/** Words of what happens to people; our own list. */
const injury =
  /\b(?:injur\w*|hurts?|wounds?|kills?|deaths?|deadly|die|burns?|scald\w*|blinds?|eyes?|fingers?|hands?|arms?|foot|feet|legs?|head|face|neck|back|skin|bones?|lungs?|breath\w*|hearing|ears?|falls?|fire|explo\w+|shocks?|electrocut\w*|poison\w*|chok\w*|crush\w*|trap\w*|airbags?|person|people|you|anyone|somebody)\b/;

/** Words of what happens to things. */
const damage =
  /\b(?:scratch\w*|scuff\w*|dents?|cracks?|creas\w*|paint|stain\w*|rusts?|fad\w+|chips? the|splits?|tears?|bends?|leaks?|strip\w*|damag\w*|ruin\w*|mark\w* the)\b/;

/** Somebody, or a part of somebody, that is hurt: narrow, since hands and eyes do work too. */
const certainInjury =
  /\b(?:injur\w*|kills?|deadly|(?:burns?|cuts?|crush\w*|pinch\w*|traps?|hurts?|blinds?|breaks?|harms?) (?:a |an |the |your )?(?:skin|hands?|fingers?|arms?|foot|feet|eyes?|neck|face|bones?|hearing|person|people|lungs?|back))\b/;

/** Whether a text speaks of damage to things and of no harm to people. */
export function isMereDamage(text: string): boolean {
  return damage.test(text) && !injury.test(text);
}

/** Whether a text plainly speaks of somebody who is hurt. */
export function isInjury(text: string): boolean {
  return certainInjury.test(text);
}
