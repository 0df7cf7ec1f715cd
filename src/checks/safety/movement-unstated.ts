import { finding, type RuleCard } from '../../diagnostics/rule-card.ts';
import { actionsOf } from '../../job/index.ts';
import type { Rule } from '../rule.ts';
import { classedSteps, classNotes, workNames } from './work-class.ts';

const guide = (attributes: string) =>
  `::part[Seat]{#seat}\n::fastener[Seat bolt]{#seat-bolt count=4 holds=seat work=seat-belt${attributes}}\n\n::step[Free the seat]{#free sign-off=second}\n\n:remove[seat-bolt] and :remove[seat].\n\n::step[Put it back]{#back sign-off=second}\n\n:refit[seat] and :refit[seat-bolt].`;

const card: RuleCard = {
  code: 'movement-unstated',
  severity: 'warning',
  title: 'What carries a belt, the brakes or a load is out, and the vehicle may be moved',
  why: 'The bench state says after each step whether the vehicle may be moved. It can only say no where the guide marks what must not be missing. A seat that stands unbolted, or a caliper that hangs, looks finished to whoever comes to move the vehicle.',
  bad: guide(''),
  good: guide(' immobile'),
};

/** What comes out of a brake, a belt or what tows is `immobile`, so that the bench state says so. */
export const movementUnstated: Rule = {
  card,
  run: ({ guide }, report) => {
    const told = new Set<string>();
    for (const { step, work, items } of classedSteps(guide)) {
      if (work !== 'brakes' && work !== 'seat-belt' && work !== 'towing') continue;
      for (const item of items) {
        const comesOut = actionsOf(step).some(
          ({ node }) => node.verb === 'remove' && node.target.value === item.id,
        );
        if (item.kind !== 'fastener' || item.immobile || !comesOut || told.has(item.id)) continue;
        told.add(item.id);
        const message = `the ${item.noun.singular} comes out, which is ${workNames[work]}, and nothing says that the ${guide.words.vehicle} must not be moved then; write immobile on it`;
        report(finding(card, item.idAt, message, { notes: classNotes(item, guide) }));
      }
    }
  },
};
