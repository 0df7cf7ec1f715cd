import { finding, type RuleCard } from '../../diagnostics/rule-card.ts';
import { listed } from '../../job/index.ts';
import type { Rule } from '../rule.ts';
import { circuitFacts, circuitsOf } from './circuits.ts';

const card: RuleCard = {
  code: 'circuit-incomplete',
  severity: 'warning',
  title: 'A circuit does not state enough to be checked',
  why: 'Load, length, wire, fuse and voltage together show whether the wire stays cool and the voltage arrives. With one of them missing not all of that is checked, and a reader may think that it was.',
  bad: '::circuit[Vent feed]{#vent-feed load="3.5 A" length="6 m" wire="2.5 mm²" voltage="12 V"}\n\n::step[Look for the fuse box]{#box}\n\nFind the fuse box.',
  good: '::circuit[Vent feed]{#vent-feed load="3.5 A" length="6 m" wire="2.5 mm²" fuse="10 A" voltage="12 V"}\n\n::step[Look for the fuse box]{#box}\n\nFind the fuse box.',
};

/** Every circuit states all that it is judged by; what was written and could not be read is told elsewhere. */
export const circuitIncomplete: Rule = {
  card,
  run: ({ guide }, report) => {
    for (const circuit of circuitsOf(guide)) {
      const missing = circuitFacts.filter((fact) => circuit[fact] === null && !circuit.unknown.has(fact));
      if (missing.length === 0) continue;
      const message = `the ${circuit.noun.singular} states no ${listed(missing, 'or')}, so not all of it is checked`;
      report(finding(card, circuit.idAt, message));
    }
  },
};
