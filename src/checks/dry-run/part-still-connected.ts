import type { RuleCard } from '../../diagnostics/rule-card.ts';
import { violationRule } from './violation-rule.ts';
import { done, spoken } from './words.ts';

const card: RuleCard = {
  code: 'part-still-connected',
  severity: 'error',
  title: 'A part is lifted while it is plugged in',
  why: 'A plug that is forgotten tears its wires out of the lamp when the panel is drawn away.',
  bad: '::part[Bumper cover]{#cover}\n::connector[Fog lamp plug]{#fog-plug side=each on=cover when=fog}\n\n::step[Take the cover off]{#cover-off}\n\nMind the :where[:connector[fog-plug]]{when=fog} and :remove[cover].\n\n::step[Put the cover on]{#cover-on}\n\n:refit[cover].',
  good: '::part[Bumper cover]{#cover}\n::connector[Fog lamp plug]{#fog-plug side=each on=cover when=fog}\n\n::step[Take the cover off]{#cover-off}\n\n:where[:disconnect[fog-plug].]{when=fog} :remove[cover].\n\n::step[Put the cover on]{#cover-on}\n\n:refit[cover]. :where[:connect[fog-plug].]{when=fog}',
};

/** A part is lifted only when every connector on it is apart. */
export const partStillConnected = violationRule(card, ['still-connected'], (violation, guide) => {
  const plug = spoken(violation.by, violation.sides, guide);
  const part = spoken(violation.item, [], guide);
  const lifted = violation.action ? done(violation.action.verb, violation.item, guide) : 'lifted';
  const message = `${plug.the} ${plug.is} still connected when ${part.the} ${part.is} ${lifted}`;
  return { message: violation.later ? message : `${message}; no step before this disconnects ${plug.it}` };
});
