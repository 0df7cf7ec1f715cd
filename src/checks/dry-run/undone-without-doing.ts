import type { RuleCard } from '../../diagnostics/rule-card.ts';
import { violationRule } from './violation-rule.ts';
import { done, opposite, spoken, wrongStateOf } from './words.ts';

const card: RuleCard = {
  code: 'undone-without-doing',
  severity: 'error',
  title: 'Something is put back that was never taken away',
  why: 'A refit line without its removal sends the technician after a part that never left the vehicle, or hides a strip-down line that is missing.',
  bad: '::part[Bumper cover]{#cover}\n\n\n::step[Put the cover on]{#cover-on}\n\n:refit[cover].',
  good: '::part[Bumper cover]{#cover}\n\n::step[Take the cover off]{#cover-off}\n\n:remove[cover].\n\n::step[Put the cover on]{#cover-on}\n\n:refit[cover].',
};

/** Nothing is refitted, reconnected, moved back, taken off or cleared that was not removed, disconnected, moved aside, put on or set. */
export const undoneWithoutDoing = violationRule(card, ['wrong-state'], (violation, guide) => {
  const verb = violation.action?.verb;
  if (!verb || wrongStateOf(verb, violation.state) !== 'never-done') return null;
  const item = spoken(violation.item, violation.sides, guide);

  const how = done(verb, violation.item, guide);
  const state = violation.state.startsWith('not ') ? violation.state : `still ${violation.state}`;
  const thing = guide.items.get(violation.item);
  if (thing?.kind === 'condition') {
    return {
      message: `“${thing.noun.singular}” is cleared, and it does not hold: no step before this sets it`,
    };
  }
  if (thing?.kind === 'setting') {
    return { message: `${item.the} is set back, and no step before this sets it` };
  }
  const first = violation.earlier ? { before: 'it was put back here already', at: violation.earlier } : null;
  return {
    message: `${item.the} ${item.is} ${how}, but ${item.it === 'it' ? 'it is' : 'they are'} ${state}: no step before this ${opposite(verb, item)}`,
    notes: first ? [{ message: first.before, at: first.at }] : [],
  };
});
