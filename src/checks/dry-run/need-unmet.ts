import type { RuleCard } from '../../diagnostics/rule-card.ts';
import { violationRule } from './violation-rule.ts';
import { spoken } from './words.ts';

const card: RuleCard = {
  code: 'need-unmet',
  severity: 'error',
  title: 'Something is needed that has not been seen to',
  why: 'A step that waits for an isolated battery, or for a reading, must find it. Otherwise the guide sends the technician to a live plug.',
  bad: '::condition[Battery isolated]{#battery-off}\n::part[Bumper cover]{#cover}\n\n::step[Take the cover off]{#cover-off needs=battery-off}\n\n:remove[cover]. :set[battery-off] and :clear[battery-off].\n\n::step[Put the cover on]{#cover-on}\n\n:refit[cover].',
  good: '::condition[Battery isolated]{#battery-off}\n::part[Bumper cover]{#cover}\n\n::step[Isolate the battery]{#battery}\n\n:set[battery-off].\n\n::step[Take the cover off]{#cover-off needs=battery-off}\n\n:remove[cover].\n\n::step[Put the cover on]{#cover-on}\n\n:refit[cover] and :clear[battery-off].',
};

/** Every condition that a step or an item needs holds, and every measure has been taken, before it is worked on. */
export const needUnmet = violationRule(card, ['needs-unmet'], (violation, guide) => {
  const need = guide.items.get(violation.need);
  const no = violation.ended === null ? 'does not hold' : 'no longer holds';
  const missing =
    need?.kind === 'measure'
      ? `the ${need.noun.singular} has not been measured`
      : need?.kind === 'inspection'
        ? `the ${need.noun.singular} has not been inspected`
        : need?.kind === 'setting'
          ? `the ${need.noun.singular} is not set`
          : `“${need?.noun.singular ?? violation.need}” ${no}`;
  const ended =
    violation.state === 'lapsed'
      ? 'it lapsed here, with what it needs itself'
      : `it was ${need?.kind === 'setting' ? 'set back' : 'cleared'} here`;
  const notes = violation.ended ? [{ message: ended, at: violation.ended }] : [];
  if (violation.item === null) {
    const what = violation.step ? 'this step' : 'this proof';
    const message = violation.action
      ? `${what} needs it until it is done, and ${missing} here`
      : `${what} needs it, and ${missing} when it begins`;
    return { message, notes };
  }
  const item = spoken(violation.item, violation.sides, guide);
  return { message: `${item.the} ${item.is === 'is' ? 'needs' : 'need'} it, and ${missing} here`, notes };
});
