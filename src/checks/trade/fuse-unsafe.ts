import type { RuleCard } from '../../diagnostics/rule-card.ts';
import type { Rule } from '../rule.ts';
import { reportCircuits } from './circuits.ts';

const card: RuleCard = {
  code: 'fuse-unsafe',
  severity: 'error',
  title: 'A fuse does not lie between the load and the wire',
  why: 'A fuse is there for the wire: above what the wire may carry, the wire burns first. Below the load it blows on the first evening.',
  bad: '::circuit[Vent feed]{#vent-feed load="3.5 A" length="6 m" wire="2.5 mm²" fuse="40 A" voltage="12 V"}\n\n::step[Look for the fuse box]{#box}\n\nFind the fuse box.',
  good: '::circuit[Vent feed]{#vent-feed load="3.5 A" length="6 m" wire="2.5 mm²" fuse="10 A" voltage="12 V"}\n\n::step[Look for the fuse box]{#box}\n\nFind the fuse box.',
};

/** Every fuse carries the load and protects the wire. */
export const fuseUnsafe: Rule = {
  card,
  run: ({ guide }, report) => reportCircuits(card, ['fuse-above-wire', 'fuse-below-load'], guide, report),
};
