import type { RuleCard } from '../../diagnostics/rule-card.ts';
import { violationRule } from './violation-rule.ts';
import { spoken } from './words.ts';

const card: RuleCard = {
  code: 'connector-left-apart',
  severity: 'error',
  title: 'A connector is left apart',
  why: 'A plug that is forgotten behind the panel is found by the customer, in the dark.',
  bad: '::connector[Fog lamp plug]{#plug}\n\n::step[Unplug it]{#unplug}\n\n:disconnect[plug].',
  good: '::connector[Fog lamp plug]{#plug}\n\n::step[Unplug it]{#unplug}\n\n:disconnect[plug]. Wipe it and :connect[plug].',
};

/** Every connector is mated at the end. */
export const connectorLeftApart = violationRule(card, ['left'], (violation, guide) => {
  if (!(violation.state === 'apart')) return null;
  const item = spoken(violation.item, violation.sides, guide);
  return { message: `${item.the} ${item.is} still apart at the end` };
});
