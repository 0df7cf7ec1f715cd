import { finding, type RuleCard } from '../../diagnostics/rule-card.ts';
import { actionsOf, stepsOf } from '../../job/index.ts';
import type { Guide, Step } from '../../model/guide.ts';
import type { Measure } from '../../model/item.ts';
import type { Rule } from '../rule.ts';

const step = (attributes: string) =>
  `::measure[Toe at the front]{#toe expect="1..2 mm"}\n\n::step[Set the toe]{#set-toe ${attributes}}\n\nTurn the rod by an eighth and :measure[toe].\n`;

const card: RuleCard = {
  code: 'rounds-open',
  severity: 'error',
  title: 'A step is repeated without an end',
  why: 'Adjusting ends when a reading is as it should be, or when so many rounds have not helped. Where either is missing, one technician gives up too early and the next never does.',
  bad: step('until=toe'),
  good: step('until=toe times=4'),
};

/** What is repeated until a reading is right takes that reading, knows what is right, and has a limit. */
export const roundsOpen: Rule = {
  card,
  run: ({ guide }, report) => {
    for (const one of stepsOf(guide)) {
      const item = one.until && guide.items.get(one.until.value);
      if (!one.until || !item) continue;
      const message =
        item.kind === 'measure'
          ? openWords(one, item, guide)
          : `until= names a measure; "${item.id}" is declared as another kind of thing`;
      if (message !== null) report(finding(card, one.until.at, message));
    }
  },
};

function openWords(step: Step, measure: Measure, guide: Guide): string | null {
  const { singular } = measure.noun;
  const isTaken = actionsOf(step).some(
    ({ node }) => node.verb === 'measure' && guide.items.get(node.target.value) === measure,
  );
  if (!isTaken) return `this step is repeated until the ${singular} is right, and does not measure it`;
  if (!measure.expect && measure.words.length === 0 && !measure.unknown.has('expect'))
    return `nothing says when the ${singular} is right: give the measure an expect=`;
  if (step.times || step.unknown.has('times')) return null;
  return 'nothing says after how many times to stop and ask: give the step a times=';
}
