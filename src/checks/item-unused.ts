import { finding, type RuleCard } from '../diagnostics/rule-card.ts';
import type { Item, ItemKind } from '../model/item.ts';
import { referencesOf } from './names/references.ts';
import type { Rule } from './rule.ts';

const card: RuleCard = {
  code: 'item-unused',
  severity: 'warning',
  title: 'Something is declared and no step uses it',
  why: 'The technician fetches what the gather list names. What no step uses is carried for nothing, or a step has been forgotten; protection that no step names is not on when it is wanted. It is told once the guide has no error, since the error may be why it seems unused.',
  bad: '::tool[Trim lever]{#trim-lever}\n::tool[Heat gun]{#heat-gun}\n\n::step[Free the arch edge]{#arch}\n\nWork the :tool[trim-lever] behind the edge.',
  good: '::tool[Trim lever]{#trim-lever}\n::tool[Heat gun]{#heat-gun}\n\n::step[Free the arch edge]{#arch}\n\nWarm it with the :tool[heat-gun], then work the :tool[trim-lever] behind the edge.',
};

/** The box is counted by the dry run, the others speak for themselves. */
const accountedElsewhere: ReadonlySet<ItemKind> = new Set(['kit', 'rating', 'circuit']);

/** Every declared thing is named somewhere besides its declaration. */
export const itemUnused: Rule = {
  card,
  run: ({ guide, lost }, report) => {
    const used = new Set([...lost.ids, ...referencesOf(guide).map(({ ref }) => ref.value)]);
    for (const item of guide.items.values()) {
      if (used.has(item.id) || accountedElsewhere.has(item.kind) || isPlatforms(item) || isKept(item))
        continue;
      // What a procedure has worn may be for a step that is left out here.
      if (item.kind === 'wear' && item.origins.length > 0) continue;
      report(finding(card, item.idAt, unusedWords(item)));
    }
  },
};

/** Protection is taken off between steps: nobody wears all day what only a list names. */
function unusedWords({ kind, id, noun }: Item): string {
  if (kind !== 'wear') return `the ${noun.singular} is declared and never used`;
  return `nothing says when to wear ${noun.singular}; name it where it is needed, as in "Wear :wear[${id}]"`;
}

/** What a procedure brings because it holds, covers or plugs something else may be handled by a step left out. */
function isKept(item: Item): boolean {
  const related = ['holds' in item && item.holds, 'on' in item && item.on, 'covers' in item && item.covers];
  return item.origins.length > 0 && related.some((refs) => refs && refs.length > 0);
}

/** What the platform declares is there for every guide; using it is no duty. */
function isPlatforms(item: Item): boolean {
  return 'fromPlatform' in item && item.fromPlatform;
}
