import type { Report } from '../../diagnostics/report.ts';
import { finding, type RuleCard } from '../../diagnostics/rule-card.ts';
import { actionsOf, company, findTarget, stepsOf, targetNoun } from '../../job/index.ts';
import type { Guide, Step } from '../../model/guide.ts';
import type { Item } from '../../model/item.ts';
import type { Span } from '../../source/span.ts';
import type { Rule } from '../rule.ts';

const card: RuleCard = {
  code: 'label-repeated',
  severity: 'error',
  title: 'Two things have the same label',
  why: 'Text, log and sheets name a thing by its label. Under one label nobody can tell which of two spacers is meant, or which cable.',
  bad: '::kit[Spacer]{#spacer-front count=2}\n::kit[Spacer]{#spacer-rear count=2}\n\n::step[Fit the spacers]{#fit}\n\n:fit[spacer-front] in front and :fit[spacer-rear] behind.',
  good: '::kit[Spacer, 12 mm]{#spacer-front count=2}\n::kit[Spacer, 18 mm]{#spacer-rear count=2}\n\n::step[Fit the spacers]{#fit}\n\n:fit[spacer-front] in front and :fit[spacer-rear] behind.',
};

/** No two items of a guide have the same label, nor two holes or templates that one step handles. */
export const labelRepeated: Rule = {
  card,
  run: ({ guide }, report) => {
    const first = new Map<string, Item>();
    for (const item of guide.items.values()) {
      const label = item.noun.label.trim().replace(/\s+/g, ' ').toLowerCase();
      const key = `${company(item)}\n${label}`;
      const earlier = first.get(key);
      if (!earlier) {
        first.set(key, item);
        continue;
      }
      if (isSameLine(earlier, item)) continue;
      const message = `the label “${item.noun.label}” is given twice; add what tells the two apart, after a comma, as in “${item.noun.label}, 12 mm”`;
      report(finding(card, item.at, message, { notes: [{ message: 'first given here', at: earlier.at }] }));
    }
    for (const step of stepsOf(guide)) tellCutsAlike(step, guide, report);
  },
};

/** A step that drills two rows of one name reads "Drill the row of holes and drill the row of holes". */
function tellCutsAlike(step: Step, guide: Guide, report: Report): void {
  const first = new Map<string, Cut>();
  for (const { node } of actionsOf(step)) {
    const target = findTarget(guide, node.target.value);
    if (!target || target.kind === 'item') continue;
    const cut = target.kind === 'hole' ? target.feature : target.template;
    const noun = targetNoun(target).singular.toLowerCase();
    const earlier = first.get(noun);
    if (!earlier) first.set(noun, cut);
    else if (earlier.at.start !== cut.at.start) {
      const message = `the step "${step.titleText}" handles this and another, and both read “the ${noun}”; give each a label that tells the two apart`;
      report(
        finding(card, cut.at, message, { notes: [{ message: 'the other', at: earlier.at }], cause: noun }),
      );
    }
  }
}

/** A template, or one of its holes. */
type Cut = { readonly at: Span };

/** A procedure that is placed twice declares its items once. */
function isSameLine({ at: one }: Item, { at: other }: Item): boolean {
  return one.file === other.file && one.start === other.start;
}
