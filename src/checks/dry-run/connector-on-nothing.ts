import type { RuleCard } from '../../diagnostics/rule-card.ts';
import { violationRule } from './violation-rule.ts';
import { spoken } from './words.ts';

const card: RuleCard = {
  code: 'connector-on-nothing',
  severity: 'error',
  title: 'A plug goes on before what it sits on',
  why: 'A plug that is mated to a part on the bench hangs the part by its wires, or cannot reach it at all. A part in the hand is different: a step may connect its plug and then put the part in.',
  bad: '::part[Bumper cover]{#cover}\n::connector[Sensor plug]{#plug on=cover}\n\n::step[Take the cover off]{#cover-off}\n\n:disconnect[plug] and :remove[cover]. Then :connect[plug].\n\n::step[Put the cover on]{#cover-on}\n\n:refit[cover].',
  good: '::part[Bumper cover]{#cover}\n::connector[Sensor plug]{#plug on=cover}\n\n::step[Take the cover off]{#cover-off}\n\n:disconnect[plug] and :remove[cover].\n\n::step[Put the cover on]{#cover-on}\n\n:connect[plug] and :refit[cover].',
};

/** A connector is mated only when what it sits on is in place, hangs aside, or is in the hand: the step puts it in. */
export const connectorOnNothing = violationRule(card, ['nothing-to-connect'], (violation, guide) => {
  const item = spoken(violation.item, violation.sides, guide);
  const part = spoken(violation.part, violation.sides, guide);
  return {
    message: `${item.the} ${item.is} connected while ${part.the} ${part.is} ${violation.state}`,
  };
});
