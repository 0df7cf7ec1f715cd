import type { RuleCard } from '../../diagnostics/rule-card.ts';
import { violationRule } from './violation-rule.ts';
import { spoken } from './words.ts';

const card: RuleCard = {
  code: 'side-disagrees',
  severity: 'error',
  title: 'A step is done on other sides than its item has',
  why: 'A step that is done on each side takes off twice what is there once. A step on the left finds nothing that is on the right.',
  bad: '::part[Bumper cover]{#cover}\n\n::step[Take the cover off]{#cover-off side=each}\n\n:remove[cover].\n\n::step[Put the cover on]{#cover-on}\n\n:refit[cover].',
  good: '::part[Bumper cover]{#cover}\n\n::step[Take the cover off]{#cover-off}\n\n:remove[cover].\n\n::step[Put the cover on]{#cover-on}\n\n:refit[cover].',
};

/** A step is done where its items are, and as often as they are there. */
export const sideDisagrees = violationRule(card, ['side-mismatch'], (violation, guide) => {
  const item = spoken(violation.item, [], guide);
  const { stepSide, itemSide } = violation;
  const step = stepSide === 'each' ? 'done on each side' : `done on the ${guide.words[stepSide]} side`;
  const where =
    itemSide === null || itemSide === 'each'
      ? `${item.has} no sides`
      : `${item.is} only on the ${guide.words[itemSide]}`;
  const notes = violation.step?.side
    ? [{ message: 'the step says so here', at: violation.step.side.at }]
    : [];
  // The refit that is worked out of a step has its sides.
  const source = violation.step?.origins.findLast(({ kind }) => kind === 'reverse');
  const home = source?.kind === 'reverse' ? source.step : violation.step?.id;
  const cause = home === undefined ? {} : { cause: home };
  return { message: `the step is ${step}, and ${item.the} ${where}`, notes, ...cause };
});
