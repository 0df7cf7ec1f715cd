import { finding, type RuleCard } from '../diagnostics/rule-card.ts';
import type { TargetKind } from '../job/actions/actions.ts';
import { actionRule, findTarget, listed, type Target, targetKinds } from '../job/index.ts';
import { actionsWritten } from './actions-written.ts';
import { articled, declaredAt, kindOf } from './kinds.ts';
import type { Rule } from './rule.ts';

const card: RuleCard = {
  code: 'action-wrong-kind',
  severity: 'error',
  title: 'An action on something that it cannot be done to',
  why: 'Every action has a meaning that is counted: a connector is disconnected, a part is removed. On anything else it would be printed and not counted.',
  bad: '::connector[Lamp plug]{#lamp-plug}\n\n::step[Free the lamp]{#free}\n\n:loosen[lamp-plug], look behind it, and :connect[lamp-plug].',
  good: '::connector[Lamp plug]{#lamp-plug}\n\n::step[Free the lamp]{#free}\n\n:disconnect[lamp-plug], look behind it, and :connect[lamp-plug].',
};

/** Each action is one that the action table knows for what it names. */
export const actionWrongKind: Rule = {
  card,
  run: ({ guide }, report) => {
    for (const { action } of actionsWritten(guide)) {
      const target = findTarget(guide, action.target.value);
      const { on } = actionRule(action.verb);
      if (target === null || kindsOf(target).some((kind) => on.includes(kind))) continue;
      const can = listed(on.map(articled), 'or');
      const message = `:${action.verb} is done to ${can}; "${action.target.value}" is ${articled(kindOf(target))}`;
      report(
        finding(card, action.target.at, message, {
          notes: [{ message: 'declared here', at: declaredAt(target) }],
        }),
      );
    }
  },
};

function kindsOf(target: Target): readonly TargetKind[] {
  if (target.kind === 'item') return targetKinds(target.item);
  // A hole or a slot is cut or drilled like the template that it belongs to.
  return target.kind === 'hole' ? ['hole', 'template'] : ['template'];
}
