import type { RuleCard } from '../../diagnostics/rule-card.ts';
import type { Rule } from '../rule.ts';
import { reportCircuits } from './circuits.ts';

const card: RuleCard = {
  code: 'voltage-drop-high',
  severity: 'error',
  title: 'Too much voltage is lost in the wire',
  why: 'Above 10 % (ABYC E-11) a motor does not start and a control unit resets, however new the battery is. The run counts there and back.',
  bad: '::circuit[Vent feed]{#vent-feed load="8 A" length="9 m" wire="1.5 mm²" fuse="15 A" voltage="12 V"}\n\n::step[Look for the fuse box]{#box}\n\nFind the fuse box.',
  good: '::circuit[Vent feed]{#vent-feed load="3.5 A" length="6 m" wire="2.5 mm²" fuse="10 A" voltage="12 V"}\n\n::step[Look for the fuse box]{#box}\n\nFind the fuse box.',
};

/** No circuit loses more than a tenth of its voltage. */
export const voltageDropHigh: Rule = {
  card,
  run: ({ guide }, report) => reportCircuits(card, ['voltage-drop-high'], guide, report),
};
