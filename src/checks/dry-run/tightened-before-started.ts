import type { RuleCard } from '../../diagnostics/rule-card.ts';
import { violationRule } from './violation-rule.ts';
import { spoken, wrongStateOf } from './words.ts';

const card: RuleCard = {
  code: 'tightened-before-started',
  severity: 'error',
  title: 'A fastener is tightened that has not been started',
  why: 'A nut that is run on with a wrench from the first turn crosses its thread. It is started by hand, and then tightened.',
  bad: '::tool[Torque wrench, 10–60 N·m]{#wrench range="10..60 N·m"}\n::kit[M8 nut]{#nut torque="20 N·m" drive="hex 13"}\n::tool[13 mm socket]{#socket drive="hex 13"}\n\n::step[Fit the nut]{#fit}\n\n:tighten[nut]{with="wrench socket"}.',
  good: '::tool[Torque wrench, 10–60 N·m]{#wrench range="10..60 N·m"}\n::kit[M8 nut]{#nut torque="20 N·m" drive="hex 13"}\n::tool[13 mm socket]{#socket drive="hex 13"}\n\n::step[Fit the nut]{#fit}\n\n:start[nut] and :tighten[nut]{with="wrench socket"}.',
};

/** A fastener is tightened only when it has been started. */
export const tightenedBeforeStarted = violationRule(card, ['wrong-state'], (violation, guide) => {
  const verb = violation.action?.verb;
  if (!verb || wrongStateOf(verb, violation.state) !== 'not-started') return null;
  const item = spoken(violation.item, violation.sides, guide);

  const where = violation.state === 'in the box' ? `still ${violation.state}` : violation.state;
  return {
    message: `${item.the} ${item.is} tightened, but ${item.it === 'it' ? 'it is' : 'they are'} ${where}: start ${item.it} first`,
  };
});
