import type { RuleCard } from '../../diagnostics/rule-card.ts';
import { nearest, quotedList } from '../../diagnostics/suggest.ts';
import type { Rule, Subject } from '../rule.ts';
import { type Reference, referencesOf } from './references.ts';
import { reportUndeclared, type Undeclared, whoNames } from './undeclared.ts';

const card: RuleCard = {
  code: 'tool-undeclared',
  severity: 'error',
  title: 'A tool that the guide does not declare',
  why: 'The gather list is made of what the guide declares. A tool that only turns up in a step is missing when the technician lies under the vehicle.',
  bad: '::tool[Trim lever]{#trim-lever}\n\n::step[Free the arch edge]{#arch}\n\nWork the :tool[trim-lever] behind the edge, then the :tool[heat-gun].',
  good: '::tool[Trim lever]{#trim-lever}\n::tool[Heat gun]{#heat-gun}\n\n::step[Free the arch edge]{#arch}\n\nWork the :tool[trim-lever] behind the edge, then the :tool[heat-gun].',
};

/** Every tool that a step, an action or an item names is declared in the guide. */
export const toolUndeclared: Rule = {
  card,
  run: (subject, report) => {
    const { guide, shop, lost } = subject;
    if (lost.nameless.has('thing')) return;
    const missing = referencesOf(guide).filter(
      ({ ref, wanted }) =>
        !guide.items.has(ref.value) &&
        !lost.ids.has(ref.value) &&
        // What serves as well need not be on the gather list, as long as somebody knows what it is.
        (wanted === 'tool' || (wanted === 'alternative' && !shop.crib.has(ref.value))),
    );
    reportUndeclared(card, missing, (first) => describe(first, subject), report);
  },
};

function describe(first: Reference, { guide, shop }: Subject): Undeclared {
  const id = first.ref.value;
  const message = `${whoNames(first)} the tool "${id}", which this guide does not declare`;
  const declared = [...guide.items.values()].filter(({ kind }) => kind === 'tool').map((tool) => tool.id);
  const owned = shop.crib.get(id);
  if (owned?.kind !== 'tool') {
    const likely = nearest(id, [...declared, ...shop.crib.keys()])[0];
    const notes = likely === undefined ? [{ message: `declare it with ::tool[Name]{#${id}}` }] : [];
    return { message, likely, notes };
  }
  const near = nearest(id, declared);
  return {
    message,
    notes: [
      { message: `the tool crib has it: declare it with ::tool{#${id}}`, at: owned.idAt },
      ...(near.length > 0
        ? [{ message: `nearest among the declared tools: ${quotedList(near, 'or')}` }]
        : []),
    ],
  };
}
