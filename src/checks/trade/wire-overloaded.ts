import type { RuleCard } from '../../diagnostics/rule-card.ts';
import type { Rule } from '../rule.ts';
import { reportCircuits } from './circuits.ts';

const card: RuleCard = {
  code: 'wire-overloaded',
  severity: 'error',
  title: 'A wire is too thin for its load',
  why: 'A wire that carries more than it may grows hot inside the loom, where nobody sees it. What it may carry is taken from a table for single wires in an engine space (ABYC E-11).',
  bad: '::circuit[Vent feed]{#vent-feed load="40 A" length="0.5 m" wire="2.5 mm²" fuse="50 A" voltage="12 V"}\n\n::step[Look for the fuse box]{#box}\n\nFind the fuse box.',
  good: '::circuit[Vent feed]{#vent-feed load="20 A" length="0.5 m" wire="2.5 mm²" fuse="30 A" voltage="12 V"}\n\n::step[Look for the fuse box]{#box}\n\nFind the fuse box.',
};

/** No circuit asks more of its wire than it may carry. */
export const wireOverloaded: Rule = {
  card,
  run: ({ guide }, report) => reportCircuits(card, ['wire-too-small'], guide, report),
};
