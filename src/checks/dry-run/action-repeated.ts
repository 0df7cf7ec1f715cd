import type { Note } from '../../diagnostics/finding.ts';
import type { RuleCard } from '../../diagnostics/rule-card.ts';
import type { Guide } from '../../model/guide.ts';
import { violationRule } from './violation-rule.ts';
import { done, spoken, wrongStateOf } from './words.ts';

const card: RuleCard = {
  code: 'action-repeated',
  severity: 'error',
  title: 'Something is done that has been done already',
  why: 'A line that stands twice makes the technician look for a second set of screws, and makes every count on the page wrong.',
  bad: '::part[Bumper cover]{#cover}\n\n::step[Take the cover off]{#cover-off}\n\n:remove[cover]. Then :remove[cover].\n\n::step[Put the cover on]{#cover-on}\n\n:refit[cover].',
  good: '::part[Bumper cover]{#cover}\n\n::step[Take the cover off]{#cover-off}\n\n:remove[cover].\n\n::step[Put the cover on]{#cover-on}\n\n:refit[cover].',
};

/** Nothing is removed, refitted, tightened or disconnected twice running. */
export const actionRepeated = violationRule(card, ['wrong-state'], (violation, guide) => {
  const verb = violation.action?.verb;
  if (!verb || wrongStateOf(verb, violation.state) !== 'repeated') return null;
  const item = spoken(violation.item, violation.sides, guide);

  const notes = [
    ...(violation.earlier ? [{ message: 'it was done here', at: violation.earlier }] : []),
    ...inParts(violation.item, guide),
  ];
  return { message: `${item.the} ${item.is} ${done(verb, violation.item, guide)} a second time`, notes };
});

/** Whoever fits some of a lot here and some there is told how that is said. */
function inParts(id: string, guide: Guide): readonly Note[] {
  const item = guide.items.get(id);
  if (item?.kind !== 'kit' || item.side || item.count.value < 2) return [];
  const message = `all ${item.count.value} go in at once; where some go here and others there, declare them apart, as in "${item.noun.label}, left" and "${item.noun.label}, right", each with its count`;
  return [{ message }];
}
