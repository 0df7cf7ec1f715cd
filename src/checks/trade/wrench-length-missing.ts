import type { RuleCard } from '../../diagnostics/rule-card.ts';
import { crowfootUse } from '../../job/index.ts';
import type { Rule, Subject } from '../rule.ts';
import { crowfootExample } from './crowfoot-example.ts';
import type { ToolUse } from './tool-use.ts';
import { reportUses, type UseFault } from './use-fault.ts';
import { torquesAsked } from './wrenches.ts';

const card: RuleCard = {
  code: 'wrench-length-missing',
  severity: 'error',
  title: 'A crowfoot on a torque wrench whose length nobody states',
  why: 'A crowfoot that reaches forward makes the wrench longer, and more reaches the bolt than the wrench is set to. What to set follows from the length of the wrench, from the middle of its grip to that of its square.',
  bad: crowfootExample('25 N·m'),
  good: crowfootExample('25 N·m', ' length="280 mm"'),
};

/** A torque wrench that tightens with a crowfoot states its length. */
export const wrenchLengthMissing: Rule = {
  card,
  run: (subject, report) => reportUses(card, subject, (use) => judge(use, subject), report),
};

function judge(use: ToolUse, { guide }: Subject): UseFault | null {
  const found = torquesAsked(use).length > 0 ? crowfootUse(use.action, guide) : null;
  if (!found || found.wrench.length || found.wrench.unknown.has('length')) return null;
  const { wrench, crowfoot } = found;
  const named = use.offers.find(({ tool }) => tool.id === wrench.id);
  return {
    at: named?.ref.at ?? use.action.at,
    message: `the ${wrench.noun.singular} states no length, so nobody can tell what to set it to with the ${crowfoot.noun.singular}`,
    notes: [{ message: 'state it here or in the tool crib, as in length="280 mm"', at: wrench.idAt }],
    better: null,
  };
}
