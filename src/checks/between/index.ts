import { anchorMissingElsewhere } from '../names/anchor-missing.ts';
import type { BetweenRule } from '../rule.ts';
import { productFactsDiffer } from './product-facts-differ.ts';

export { type GuideFacts, guideFacts } from './guide-facts.ts';

/** Every rule about what lies between guides. */
export const betweenRules: readonly BetweenRule[] = [anchorMissingElsewhere, productFactsDiffer];
