import { type ConditionPlace, conditionsOf, holds, optionsIn } from '../../job/index.ts';
import type { Guide } from '../../model/guide.ts';
import type { Option } from '../../model/when.ts';
import type { Span } from '../../source/span.ts';

/** One branch of a split: the choices for which it stands. */
interface Branch {
  readonly at: Span;
  readonly choices: readonly string[];
}

/** Conditions side by side that ask about one choice and nothing else. */
interface Split {
  readonly option: Option;
  readonly branches: readonly Branch[];
  /** The choices that some build has where the split stands. */
  readonly open: readonly string[];
}

/**
 * The places where a guide splits a choice: at least two wordings of a condition on the same one-of option,
 * among the steps of a section, or among the blocks or the phrases of a step.
 */
export function splitsOf(
  guide: Guide,
  choicesOpen: (place: ConditionPlace, option: Option) => readonly string[],
): readonly Split[] {
  const groups = new Map<string, { readonly option: Option; readonly places: ConditionPlace[] }>();
  for (const place of conditionsOf(guide)) {
    const ids = [...new Set(optionsIn(place.when.value))];
    const option = guide.builds.options.find((one) => one.id === ids[0]);
    if (ids.length !== 1 || !option?.choices || isDerived(place)) continue;
    const key = `${option.id}\n${siblingsOf(place)}`;
    const group = groups.get(key) ?? { option, places: [] };
    group.places.push(place);
    groups.set(key, group);
  }
  return [...groups.values()].flatMap(({ option, places }) => {
    const branches = places.map((place) => ({ at: place.when.at, choices: choicesOf(place, option) }));
    const wordings = new Set(branches.map((branch) => branch.choices.join(' ')));
    const [first] = places;
    return first && wordings.size > 1 ? [{ option, branches, open: choicesOpen(first, option) }] : [];
  });
}

function choicesOf({ when }: ConditionPlace, option: Option): readonly string[] {
  const ids = (option.choices ?? []).map((choice) => choice.id);
  return ids.filter((id) => holds(when.value, { [option.id]: id }));
}

/** A text that two conditions share when a reader meets them side by side. */
function siblingsOf({ on, outer }: ConditionPlace): string {
  const depth = String(outer.length);
  switch (on.kind) {
    case 'item':
    case 'feature':
      return on.kind;
    case 'step':
      return `step ${on.section.id}`;
    case 'block':
      return `block ${on.step?.id ?? ''} ${on.block.type} ${depth}`;
    case 'words':
      return `words ${on.step?.id ?? ''} ${on.step ? '' : String(on.block.at.start)} ${depth}`;
  }
}

/** Things may differ between choices without end; and a derived step repeats its source. */
function isDerived({ on }: ConditionPlace): boolean {
  if (on.kind === 'item' || on.kind === 'feature') return true;
  return on.step?.origins.some(({ kind }) => kind === 'reverse') ?? false;
}
