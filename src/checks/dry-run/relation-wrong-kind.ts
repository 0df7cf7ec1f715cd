import { finding, type RuleCard } from '../../diagnostics/rule-card.ts';
import { related, relationsOf } from '../../job/actions/relations.ts';
import { articled } from '../kinds.ts';
import type { Rule } from '../rule.ts';
import { circled } from './circles.ts';

const card: RuleCard = {
  code: 'relation-wrong-kind',
  severity: 'error',
  title: 'An item is related to something that it cannot be related to',
  why: 'A screw holds parts, a plug sits on parts, a need is a condition, a measure, or a supply that must be dry or cured. Related to anything else, it is never looked at when the guide is played.',
  bad: '::part[Bumper cover]{#cover needs=clip}\n::fastener[Clip]{#clip holds=cover}\n\n::step[Open it]{#open}\n\n:remove[clip] and :remove[cover].\n\n::step[Shut it]{#shut}\n\n:refit[cover] and :refit[clip].',
  good: '::part[Bumper cover]{#cover}\n::fastener[Clip]{#clip holds=cover}\n\n::step[Open it]{#open}\n\n:remove[clip] and :remove[cover].\n\n::step[Shut it]{#shut}\n\n:refit[cover] and :refit[clip].',
};

/** `holds`, `on`, `covers`, `replaces` and `needs` name what they can name. */
export const relationWrongKind: Rule = {
  card,
  run: ({ guide }, report) => {
    const inCircle = circled(guide.items);
    for (const { from, name, to } of [...guide.items.values()].flatMap(relationsOf)) {
      const target = guide.items.get(to.value);
      if (!target || related[name].includes(target.kind)) continue;
      if (inCircle.has(from.id) && inCircle.has(to.value)) continue;
      const kinds = related[name].map(kindWords).join(' or ');
      const notes = [{ message: `declared here as ${kindWords(target.kind)}`, at: target.idAt }];
      const message = `\`${name}\` of the ${from.noun.singular} names "${to.value}"; it can name ${kinds}`;
      report(finding(card, to.at, message, { notes }));
    }
  },
};

function kindWords(kind: string): string {
  return kind === 'kit' ? 'something from the box' : articled(kind);
}
