import type { RuleCard } from '../../diagnostics/rule-card.ts';
import { violationRule } from './violation-rule.ts';
import { done, spoken } from './words.ts';

const card: RuleCard = {
  code: 'place-taken',
  severity: 'error',
  title: 'A new part goes in where the old one still sits',
  why: 'Two things cannot sit in one place. Either the old one has not been taken off yet, or it goes back where the new one already is.',
  bad: '::part[Tow eye cap]{#old-cap}\n::kit[Vented cap]{#new-cap replaces=old-cap}\n\n::step[Change the cap]{#cap}\n\n:fit[new-cap].',
  good: '::part[Tow eye cap]{#old-cap}\n::kit[Vented cap]{#new-cap replaces=old-cap}\n\n::step[Change the cap]{#cap}\n\n:remove[old-cap] and :discard[old-cap]. Then :fit[new-cap].',
};

/** A replacement goes in only when what it replaces is out. */
export const placeTaken = violationRule(card, ['place-taken'], (violation, guide) => {
  const item = spoken(violation.item, violation.sides, guide);
  const by = spoken(violation.by, violation.sides, guide);
  const how = violation.action ? done(violation.action.verb, violation.item, guide) : 'fitted';
  return {
    message: `${item.the} ${item.is} ${how} while ${by.the} still ${by.is === 'is' ? 'sits' : 'sit'} in the same place`,
  };
});
