import type { Report } from '../../diagnostics/report.ts';
import { finding, type RuleCard } from '../../diagnostics/rule-card.ts';
import { type Relation, relationsOf } from '../../job/actions/relations.ts';
import type { CutTemplate } from '../../model/cut-template.ts';
import type { Guide } from '../../model/guide.ts';
import type { Item } from '../../model/item.ts';
import type { Rule } from '../rule.ts';

const lamps = (side: string) => `::part[Tail lamp]{#lamp side=${side}}
::connector[Tail lamp plug]{#plug side=each on=lamp}

::step[Take the lamps out]{#out}

:disconnect[plug] and :remove[lamp].

::step[Put them back]{#back}

:refit[lamp] and :connect[plug].`;

const card: RuleCard = {
  code: 'relation-side-missing',
  severity: 'error',
  title: 'Something is on a side on which what it belongs to is not',
  why: 'A plug on the right sits on something on the right, and a template for the left is laid on a panel of the left. Where the lamp is declared for the left alone, one of the two is wrong, and the ledger would never look at the right plug when the lamp is lifted.',
  bad: lamps('left'),
  good: lamps('each'),
};

/** What orders nothing, or has no place of its own. */
const placeless: ReadonlySet<Relation['name']> = new Set<Relation['name']>(['needs', 'takes', 'coat']);

/** Whatever holds, covers, sits on or lies under another does so on each of its own sides. */
export const relationSideMissing: Rule = {
  card,
  run: ({ guide: { items, templates }, lost }, report) => {
    for (const template of templates.values()) tellPanel(template, items, report);
    for (const from of items.values()) {
      const own = sidesOf(from);
      if (own === null || lost.ids.has(from.id)) continue;
      for (const related of claimsOf(from)) {
        const targets = related.flatMap(({ to }) => items.get(to.value) ?? []);
        const sides = targets.map(sidesOf);
        const [first] = related;
        const [target] = targets;
        if (!first || !target || targets.length < related.length || sides.includes(null)) continue;
        const missing = own.filter((side) => sides.every((there) => !there?.includes(side)));
        if (missing.length === 0) continue;
        const message = `\`${first.name}\` of the ${from.noun.singular} names the ${target.noun.singular}, which is only on the ${sides.flatMap((there) => there ?? [])[0]}; the ${from.noun.singular} is on the ${missing.join(' and on the ')} too`;
        const notes = [{ message: `the ${target.noun.singular} is declared here`, at: target.idAt }];
        report(finding(card, first.to.at, message, { notes }));
      }
    }
  },
};

/** A template is laid on a panel of its own side. */
function tellPanel({ panel, side, title }: CutTemplate, items: Guide['items'], report: Report): void {
  const item = panel && items.get(panel.value);
  const there = item && sidesOf(item);
  if (!panel || !item || !there || side === null) return;
  const own = side === 'each' ? (['left', 'right'] as const) : [side];
  const missing = own.filter((one) => !there.includes(one));
  if (missing.length === 0) return;
  const message = `the template “${title}” is for the ${missing.join(' and the ')}, and its panel, the ${item.noun.singular}, is only on the ${there[0]}`;
  const notes = [{ message: `the ${item.noun.singular} is declared here`, at: item.idAt }];
  report(finding(card, panel.at, message, { notes }));
}

/** What is judged together: one of several seats is enough, but a bolt goes through each piece of its stack. */
function claimsOf(from: Item): readonly (readonly Relation[])[] {
  const named = new Map<string, readonly Relation[]>();
  for (const [index, one] of relationsOf(from).entries()) {
    if (placeless.has(one.name)) continue;
    const key = one.name === 'stack' ? `stack ${index}` : one.name;
    named.set(key, [...(named.get(key) ?? []), one]);
  }
  return [...named.values()];
}

/** The sides that a thing is on; `null` where it has none, or nobody knows. */
function sidesOf(item: Item): readonly ('left' | 'right')[] | null {
  if (!('count' in item) || !item.side || item.unknown.has('side')) return null;
  return item.side.value === 'each' ? ['left', 'right'] : [item.side.value];
}
