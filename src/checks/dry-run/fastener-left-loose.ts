import type { RuleCard } from '../../diagnostics/rule-card.ts';
import { violationRule } from './violation-rule.ts';
import { spoken } from './words.ts';

const card: RuleCard = {
  code: 'fastener-left-loose',
  severity: 'error',
  title: 'A fastener is left loose',
  why: 'A nut that is only started holds through the test drive and falls off on the motorway.',
  bad: '::tool[Torque wrench, 10–60 N·m]{#wrench range="10..60 N·m"}\n::kit[M8 nut]{#nut torque="20 N·m"}\n\n::step[Fit the nut]{#fit}\n\n:start[nut]. Keep the :tool[wrench] at hand.',
  good: '::tool[Torque wrench, 10–60 N·m]{#wrench range="10..60 N·m"}\n::kit[M8 nut]{#nut torque="20 N·m"}\n\n::step[Fit the nut]{#fit}\n\n:start[nut] and :tighten[nut]{with=wrench}.',
};

/** Every fastener that is started or loosened is tightened through its last pass. */
export const fastenerLeftLoose = violationRule(card, ['left'], (violation, guide) => {
  if (!(violation.state === 'started' || violation.state === 'loosened')) return null;
  const item = spoken(violation.item, violation.sides, guide);
  return { message: `${item.the} ${item.is} only ${violation.state} at the end, and never tightened` };
});
