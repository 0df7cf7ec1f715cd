import { finding, type RuleCard } from '../../diagnostics/rule-card.ts';
import type { Guide, Step } from '../../model/guide.ts';
import type { Item } from '../../model/item.ts';
import type { Rule } from '../rule.ts';
import { classedSteps, classNotes, workNames } from './work-class.ts';

const guide = (needs: string) =>
  `::condition[Battery isolated]{#battery-off}\n::connector[Airbag plug]{#airbag-plug work=airbag${needs}}\n\n::step[Isolate the battery]{#battery}\n\n:set[battery-off]{say="make sure of"}.\n\n::step[Free the plug]{#free sign-off=second}\n\n:disconnect[airbag-plug], look at it and :connect[airbag-plug].\n\n::step[Connect the battery]{#again}\n\n:clear[battery-off]{say="end"}.`;

const card: RuleCard = {
  code: 'work-unprepared',
  severity: 'error',
  title: 'Airbag or high-voltage work that asks for no condition',
  why: 'An airbag module keeps its charge for some minutes, and a high-voltage system has to be made dead and kept so. The vehicle maker’s data says how. The guide declares it as a condition, and the work needs it.',
  bad: guide(''),
  good: guide(' needs=battery-off'),
};

/** A step that acts on an airbag or high-voltage item, or the item itself, names a condition that it needs. */
export const workUnprepared: Rule = {
  card,
  run: ({ guide }, report) => {
    for (const { step, items, work } of classedSteps(guide)) {
      if ((work !== 'airbag' && work !== 'high-voltage') || step.unknown.has('needs')) continue;
      const item = items.find((one) => isUnprepared(one, step, guide));
      if (!item) continue;
      const message = `${workNames[work]} in this step needs no condition to be set before; name one with needs=, on the step or on the ${item.noun.singular}`;
      report(finding(card, step.at, message, { notes: classNotes(item, guide) }));
    }
  },
};

/** Setting a condition is itself the preparation. */
function isUnprepared(item: Item, step: Step, guide: Guide): boolean {
  return item.kind !== 'condition' && !item.unknown.has('needs') && !needsCondition(step, item, guide);
}

/** An id that nobody declares is another rule's finding. */
function needsCondition(step: Step, item: Item, guide: Guide): boolean {
  return [...step.needs, ...item.needs].some(({ value }) => {
    const need = guide.items.get(value);
    return need === undefined || need.kind === 'condition';
  });
}
