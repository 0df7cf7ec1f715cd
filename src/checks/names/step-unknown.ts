import type { RuleCard } from '../../diagnostics/rule-card.ts';
import { nearest } from '../../diagnostics/suggest.ts';
import { stepsOf } from '../../job/index.ts';
import type { Rule } from '../rule.ts';
import { referencesOf } from './references.ts';
import { reportUndeclared, whoNames } from './undeclared.ts';

const card: RuleCard = {
  code: 'step-unknown',
  severity: 'error',
  title: 'A step is named that the guide does not have',
  why: 'A sentence that sends the technician to a step must find it, and what cannot be undone must name the step that tried it.',
  bad: '::step[Free the arch edge]{#arch}\n\nLook behind the edge.\n\n::step[Look again]{#again}\n\nLook as in :step[arches].',
  good: '::step[Free the arch edge]{#arch}\n\nLook behind the edge.\n\n::step[Look again]{#again}\n\nLook as in :step[arch].',
};

/** Every step that a sentence or `trial=` names exists. */
export const stepUnknown: Rule = {
  card,
  run: ({ guide, lost }, report) => {
    if (lost.nameless.has('place')) return;
    const steps = stepsOf(guide).map(({ id }) => id);
    const missing = referencesOf(guide).filter(
      ({ ref, wanted }) => wanted === 'step' && !steps.includes(ref.value) && !lost.ids.has(ref.value),
    );
    reportUndeclared(
      card,
      missing,
      (first) => ({
        message: `${whoNames(first)} the step "${first.ref.value}", which this guide does not have`,
        likely: nearest(first.ref.value, steps)[0],
      }),
      report,
    );
  },
};
