import { finding, type RuleCard } from '../../diagnostics/rule-card.ts';
import { actionsOf, stepsOf, totalCount } from '../../job/index.ts';
import { referencesOf } from '../references.ts';
import type { Rule } from '../rule.ts';

const plug = (action: string) =>
  `::part[Headlining]{#lining}\n::connector[Lamp plug]{#plug on=lining}\n\n::step[Open]{#open}\n\n${action}:move-aside[lining], clear of the :connector[plug].\n\n::step[Close]{#close}\n\n:move-back[lining]${action === '' ? '' : ' and :connect[plug]'}.`;

const card: RuleCard = {
  code: 'item-unhandled',
  severity: 'warning',
  title: 'A plug or fastener is named and no step handles it',
  why: 'A plug or a fastener is declared because somebody has to undo it. Where it is only named, the line that undoes it has been forgotten, or it need not be declared.',
  bad: plug(''),
  good: plug(':disconnect[plug] and '),
};

/** A connector or fastener of the vehicle that the text names is handled by at least one action. */
export const itemUnhandled: Rule = {
  card,
  run: ({ guide, lost }, report) => {
    const handled = new Set(
      stepsOf(guide)
        .flatMap(actionsOf)
        .map(({ node }) => node.target.value),
    );
    // What nothing names at all is told by another rule.
    const named = new Set(referencesOf(guide).map(({ ref }) => ref.value));
    for (const item of guide.items.values()) {
      if (item.kind !== 'connector' && item.kind !== 'fastener') continue;
      if (handled.has(item.id) || lost.ids.has(item.id) || !named.has(item.id)) continue;
      const message =
        totalCount(item) > 1
          ? `the ${item.noun.plural} are declared and named, and no step handles them`
          : `the ${item.noun.singular} is declared and named, and no step handles it`;
      report(finding(card, item.idAt, message));
    }
  },
};
