import { finding, type RuleCard } from '../../diagnostics/rule-card.ts';
import type { Rule } from '../rule.ts';
import { classedSteps, classNotes, workNames } from './work-class.ts';

const guide = (attributes: string) =>
  `::fastener[Caliper bolt]{#caliper-bolt work=brakes}\n\n::step[Move the hose bracket]{#bracket${attributes}}\n\n:loosen[caliper-bolt], turn the bracket, and :tighten[caliper-bolt].`;

const card: RuleCard = {
  code: 'work-unsigned',
  severity: 'error',
  title: 'Dangerous work without a second person’s signature',
  why: 'A mistake on airbags, brakes, seat belts, high voltage or what tows shows when it is too late. A second person looks at it and signs (common practice, no source).',
  bad: guide(''),
  good: guide(' sign-off=second'),
};

/** A step that acts on an item with `work=` has `sign-off=second`. */
export const workUnsigned: Rule = {
  card,
  run: ({ guide }, report) => {
    for (const { step, items, work } of classedSteps(guide)) {
      if (step.signOff || step.unknown.has('sign-off')) continue;
      const message = `${workNames[work]} in this step wants a second person to look at it: add sign-off=second`;
      report(finding(card, step.at, message, { notes: classNotes(items[0], guide) }));
    }
  },
};
