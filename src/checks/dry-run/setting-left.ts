import type { RuleCard } from '../../diagnostics/rule-card.ts';
import { violationRule } from './violation-rule.ts';
import { spoken } from './words.ts';

const card: RuleCard = {
  code: 'setting-left',
  severity: 'error',
  title: 'A setting is never set',
  why: 'A trailer module that nobody has coded leaves the lamps dark, and the fault is looked for in the wiring.',
  bad: '::setting[Trailer coding]{#coding from="not fitted" to="13-pin socket"}\n\n::step[Code the module]{#code}\n\n:set[coding] and read it back. :clear[coding].',
  good: '::setting[Trailer coding]{#coding from="not fitted" to="13-pin socket"}\n\n::step[Code the module]{#code}\n\n:set[coding] and read it back.',
};

/** Every setting stands at the end as it is meant to be. */
export const settingLeft = violationRule(card, ['left'], (violation, guide) => {
  const setting = guide.items.get(violation.item);
  if (setting?.kind !== 'setting') return null;
  const { the } = spoken(violation.item, violation.sides, guide);
  const how = violation.action ? `is back at "${setting.from.value}" at the end` : 'is never set';
  return { message: `${the} ${how}; it is meant to be "${setting.to.value}"` };
});
