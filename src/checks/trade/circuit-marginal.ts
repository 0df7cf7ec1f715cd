import type { RuleCard } from '../../diagnostics/rule-card.ts';
import type { Rule } from '../rule.ts';
import { reportCircuits } from './circuits.ts';

const card: RuleCard = {
  code: 'circuit-marginal',
  severity: 'warning',
  title: 'A circuit works, but only just',
  why: 'A lamp dims when more than 3 % of the voltage is lost (ABYC E-11), a fuse ages when it carries more than 80 % of its mark (our own rule of thumb, as the trade has it), and a fuse of an odd rating cannot be bought on the road.',
  bad: '::circuit[Vent feed]{#vent-feed load="5 A" length="6 m" wire="2.5 mm²" fuse="10 A" voltage="12 V"}\n\n::step[Look for the fuse box]{#box}\n\nFind the fuse box.',
  good: '::circuit[Vent feed]{#vent-feed load="3.5 A" length="6 m" wire="2.5 mm²" fuse="10 A" voltage="12 V"}\n\n::step[Look for the fuse box]{#box}\n\nFind the fuse box.',
};

/** What a careful shop would look at twice in a circuit. */
export const circuitMarginal: Rule = {
  card,
  run: ({ guide }, report) =>
    reportCircuits(card, ['voltage-drop', 'fuse-near-load', 'no-such-fuse'], guide, report),
};
