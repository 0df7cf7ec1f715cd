import type { RuleCard } from '../../diagnostics/rule-card.ts';
import { crowfootUse, settingInLine } from '../../job/index.ts';
import { wrenchFits } from '../../trade/torque.ts';
import type { Rule, Subject } from '../rule.ts';
import { crowfootExample } from './crowfoot-example.ts';
import type { ToolUse } from './tool-use.ts';
import { reportUses, type UseFault } from './use-fault.ts';
import { torquesAsked } from './wrenches.ts';

const card: RuleCard = {
  code: 'setting-outside-wrench',
  severity: 'error',
  title: 'With the crowfoot, the torque wrench is set to what it cannot be trusted with',
  why: 'A wrench with a crowfoot in line is set lower than the torque. What it is set to has to lie on its scale, not the torque that reaches the bolt.',
  bad: crowfootExample('11 N·m', ' length="280 mm"'),
  good: crowfootExample('25 N·m', ' length="280 mm"'),
};

/** What a wrench is set to with a crowfoot in line lies within its range, where the torque itself does. */
export const settingOutsideWrench: Rule = {
  card,
  run: (subject, report) => reportUses(card, subject, (use) => judge(use, subject), report),
};

function judge(use: ToolUse, { guide }: Subject): UseFault | null {
  const found = crowfootUse(use.action, guide);
  const range = found?.wrench.range;
  if (!found || !range) return null;
  for (const torque of torquesAsked(use)) {
    const setting = settingInLine(torque, found);
    if (!setting || wrenchFits(torque, range.value).verdict !== 'within') continue;
    const fit = wrenchFits(setting, range.value);
    if (fit.verdict === 'within') continue;
    const named = use.offers.find(({ tool }) => tool.id === found.wrench.id);
    return {
      at: named?.ref.at ?? use.action.at,
      message: `set for the ${found.crowfoot.noun.singular} in line, ${fit.message}`,
      notes: [{ message: 'its range is stated here', at: range.at }],
      better: null,
    };
  }
  return null;
}
