import type { Build, Option, When } from '../../model/when.ts';
import { listed, lowered } from '../words/noun.ts';

/** One thing that is said of a build: an option and its value. */
export interface Trait {
  readonly option: Option;
  readonly value: boolean | string;
}

/**
 * What some builds have in common that the others have not: sets of traits such that every build inside has
 * all traits of one set, and no build outside has. An empty set says that there is nothing to tell apart.
 */
export function traitsOf(
  inside: readonly Build[],
  outside: readonly Build[],
  options: readonly Option[],
): readonly (readonly Trait[])[] {
  const sets: Trait[][] = [];
  for (const build of inside) {
    if (sets.some((traits) => hasAll(build, traits))) continue;
    sets.push(fewestTraits(build, outside, options));
  }
  return sets;
}

/** The traits of one build that no build outside shares; what is not fitted is left out first. */
export function fewestTraits(build: Build, outside: readonly Build[], options: readonly Option[]): Trait[] {
  let traits: Trait[] = options.map((option) => ({ option, value: build[option.id] ?? false }));
  const byMeaning = [...traits].sort((a, b) => Number(a.value !== false) - Number(b.value !== false));
  for (const trait of byMeaning) {
    const fewer = traits.filter((one) => one !== trait);
    if (!outside.some((other) => hasAll(other, fewer))) traits = fewer;
  }
  return traits;
}

/** "with front fog lamps and LED headlamps, without parking sensors"; empty for no traits. */
export function traitsInWords(traits: readonly Trait[]): string {
  const fitted = traits.filter((trait) => trait.value !== false).map(traitName);
  const missing = traits.filter((trait) => trait.value === false).map(traitName);
  const parts = [
    ...(fitted.length > 0 ? [`with ${listed(fitted)}`] : []),
    ...(missing.length > 0 ? [`without ${listed(missing, 'or')}`] : []),
  ];
  return parts.join(', ');
}

/** Several sets of traits, any of which will do. */
export function anyTraitsInWords(sets: readonly (readonly Trait[])[]): string {
  return foundInWords(sets.flat()) ?? sets.map(traitsInWords).join('; or ');
}

/** "with thread of the bolt: clean or rusty": several findings of one inspection; `null` for anything else. */
function foundInWords(traits: readonly Trait[]): string | null {
  const names = traits.map(traitName);
  const stem = /^.*?: /.exec(names[0] ?? '')?.[0];
  const isOne = traits.every(
    ({ option, value }) => option === traits[0]?.option && typeof value === 'string',
  );
  if (stem === undefined || traits.length < 2 || !isOne) return null;
  if (!names.every((name) => name.startsWith(stem))) return null;
  return `with ${stem}${listed(
    names.map((name) => name.slice(stem.length)),
    'or',
  )}`;
}

/** "This happens when *fog* is fitted": what an author reads, in the ids that they wrote; empty for no traits. */
export function traitsForAuthor(traits: readonly Trait[]): string {
  return listed(
    traits.map(({ option, value }) => {
      if (typeof value === 'string') return `*${option.id}* is ${value}`;
      return value ? `*${option.id}* is fitted` : `*${option.id}* is not fitted`;
    }),
  );
}

/** A condition in a technician's words: "with front fog lamps and without LED headlamps". */
export function whenInWords(when: When, options: readonly Option[]): string {
  return words(when, false, options);
}

function words(when: When, negated: boolean, options: readonly Option[]): string {
  const lead = negated ? 'without' : 'with';
  switch (when.kind) {
    case 'has':
      return `${lead} ${optionName(when.option, options)}`;
    case 'is':
      return `${lead} ${choiceName(when.option, when.value, options)}`;
    case 'not':
      return words(when.of, !negated, options);
    case 'and':
    case 'or': {
      const joined = (when.kind === 'and') !== negated ? ' and ' : ' or ';
      return when.of
        .map((part) =>
          compound(part) ? `(${words(part, negated, options)})` : words(part, negated, options),
        )
        .join(joined);
    }
  }
}

function compound(when: When): boolean {
  return when.kind === 'not' ? compound(when.of) : when.kind === 'and' || when.kind === 'or';
}

function traitName({ option, value }: Trait): string {
  return typeof value === 'string' ? choiceName(option.id, value, [option]) : lowered(option.name);
}

function optionName(id: string, options: readonly Option[]): string {
  return lowered(options.find((option) => option.id === id)?.name ?? id);
}

function choiceName(id: string, value: string, options: readonly Option[]): string {
  const choices = options.find((option) => option.id === id)?.choices ?? [];
  return lowered(choices.find((choice) => choice.id === value)?.name ?? value);
}

function hasAll(build: Build, traits: readonly Trait[]): boolean {
  return traits.every(({ option, value }) => build[option.id] === value);
}
