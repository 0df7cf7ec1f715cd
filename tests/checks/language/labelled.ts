/** Where a sentence stands in the guide that is made of it. */
export type Place = 'step' | 'note' | 'message' | 'prove' | 'figure';

/** A place, what stands there as printed, and the rules that a careful reader would expect to speak. */
export type Labelled = readonly [place: Place, text: string, ...codes: readonly string[]];
