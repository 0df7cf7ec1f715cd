import { finding, type RuleCard } from '../../diagnostics/rule-card.ts';
import { actionsOf, stepsOf, totalCount } from '../../job/index.ts';
import type { Verb } from '../../model/inline.ts';
import { referencesOf } from '../names/references.ts';
import type { Rule } from '../rule.ts';

const plug = (action: string) =>
  `::part[Headlining]{#lining}\n::connector[Lamp plug]{#plug on=lining}\n\n::step[Open]{#open}\n\n${action}:move-aside[lining], clear of the :connector[plug].\n\n::step[Close]{#close}\n\n:move-back[lining]${action === '' ? '' : ' and :connect[plug]'}.`;

const card: RuleCard = {
  code: 'plug-unhandled',
  severity: 'warning',
  title: 'A plug is named, its part is moved aside, and no step handles it',
  why: 'A part may be moved aside with its plugs mated, so nothing else would notice that the line which unplugs it is missing. A plug is declared because somebody has to undo it.',
  bad: plug(''),
  good: plug(':disconnect[plug] and '),
};

/** A plug that the text names, on a part that is only moved aside, is handled by at least one action. */
export const plugUnhandled: Rule = {
  card,
  run: ({ guide, lost }, report) => {
    const actions = stepsOf(guide)
      .flatMap(actionsOf)
      .map(({ node }) => node);
    const handled = new Set(actions.map(({ target }) => target.value));
    const targetsOf = (verb: Verb) =>
      new Set(actions.flatMap((action) => (action.verb === verb ? [action.target.value] : [])));
    const aside = targetsOf('move-aside');
    const lifted = targetsOf('remove');
    // What nothing names at all is told by another rule.
    const named = new Set(referencesOf(guide).map(({ ref }) => ref.value));
    for (const item of guide.items.values()) {
      if (item.kind !== 'connector' || handled.has(item.id) || lost.ids.has(item.id)) continue;
      const seats = item.on.map(({ value }) => value);
      if (!named.has(item.id) || seats.some((id) => lifted.has(id)) || !seats.some((id) => aside.has(id)))
        continue;
      const message =
        totalCount(item) > 1
          ? `the ${item.noun.plural} are declared and named, and no step handles them`
          : `the ${item.noun.singular} is declared and named, and no step handles it`;
      report(finding(card, item.idAt, message));
    }
  },
};
