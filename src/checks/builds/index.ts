import type { Rule } from '../rule.ts';

/** The rules of options and builds. */
export const buildRules: readonly Rule[] = [];
