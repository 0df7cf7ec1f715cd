import type { Build, BuildSpace, Option } from '../../model/when.ts';
import { evaluate } from './when.ts';

/** The most builds that are told apart; beyond it a platform has to list those that it supports. */
export const MOST_BUILDS = 4096;

/** How many half-made builds are looked at before a space counts as too large to search. */
const MOST_TRIES = 16 * MOST_BUILDS;

/** The builds of a space, and whether they are all. */
export interface Builds {
  readonly builds: readonly Build[];
  /** True where there are more than {@link MOST_BUILDS}; `builds` then holds the first of them. */
  readonly tooMany: boolean;
}

type Draft = { [option: string]: boolean | string | null };

/**
 * Every build of a space, each once: the listed ones with their open options filled in, else all
 * combinations less the impossible ones. The first values come first: fitted before not fitted, choices as
 * written.
 */
export function enumerateBuilds(space: BuildSpace): Builds {
  const drafts: Draft[] = space.listed
    ? space.listed.map((listed) => draft(space.options, listed.value))
    : [draft(space.options, {})];
  const found = new Map<string, Build>();
  let tries = 0;
  const fill = (build: Draft, from: number): boolean => {
    tries += 1;
    if (tries > MOST_TRIES || found.size > MOST_BUILDS) return false;
    if (space.impossible.some((one) => evaluate(one.value, build) === true)) return true;
    const index = space.options.findIndex((option, place) => place >= from && build[option.id] === null);
    const option = space.options[index];
    if (!option) {
      found.set(buildKey(build as Build, space.options), { ...(build as Build) });
      return found.size <= MOST_BUILDS;
    }
    // One draft is filled in and emptied again: a copy for each try was most of the work.
    const goesOn = valuesOf(option).every((value) => {
      build[option.id] = value;
      return fill(build, index + 1);
    });
    build[option.id] = null;
    return goesOn;
  };
  const tooMany = !drafts.every((one) => fill(one, 0));
  return { builds: [...found.values()].slice(0, MOST_BUILDS), tooMany };
}

/** The values that an option can take. */
export function valuesOf(option: Option): readonly (boolean | string)[] {
  return option.choices ? option.choices.map((choice) => choice.id) : [true, false];
}

/** A text that two builds share when they agree on these options. */
export function buildKey(build: Build, options: readonly Option[]): string {
  return options.map((option) => String(build[option.id])).join(' ');
}

/** A build with these options alone. */
export function buildOfOptions(build: Build, options: readonly Option[]): Build {
  return Object.fromEntries(options.map((option) => [option.id, build[option.id] ?? false]));
}

function draft(options: readonly Option[], settled: Partial<Build>): Draft {
  return Object.fromEntries(options.map((option) => [option.id, settled[option.id] ?? null]));
}
