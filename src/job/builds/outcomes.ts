import type { Guide } from '../../model/guide.ts';
import type { BuildProblem } from '../../model/job.ts';
import type { Build, Option, When } from '../../model/when.ts';
import { buildKey, buildOfOptions, enumerateBuilds, valuesOf } from './builds.ts';
import { conditionsOf } from './conditions.ts';
import { holds, optionsIn, whenKey } from './when.ts';

/** The most outcomes that a guide may have. */
const MOST_OUTCOMES = 64;

/** What a guide's builds come down to. */
export interface Outcomes {
  /** The options that any `when` of the guide asks about, in the order of declaration. */
  readonly deciding: readonly Option[];
  /** Builds that read alike, together, each reduced to the deciding options; never empty. */
  readonly groups: readonly (readonly Build[])[];
  readonly problem: BuildProblem | null;
}

/** Gathers the builds of a guide for which everything that stands under a condition reads alike. */
export function distinctOutcomes(guide: Guide): Outcomes {
  const whens = whensOf(guide);
  const asked = new Set(whens.flatMap(optionsIn));
  const deciding = guide.builds.options.filter((option) => asked.has(option.id));
  const { builds, tooMany } = enumerateBuilds(guide.builds);
  const distinct = new Map(
    builds.map((build) => [buildKey(build, deciding), buildOfOptions(build, deciding)]),
  );
  const groups = new Map<string, Build[]>();
  for (const build of distinct.values()) {
    const key = outcomeKey(whens, build);
    const group = groups.get(key);
    if (group) group.push(build);
    else groups.set(key, [build]);
  }
  const problem: BuildProblem | null = tooMany
    ? { kind: 'too-many-builds', options: guide.builds.options.map((option) => option.id) }
    : builds.length === 0
      ? { kind: 'no-build' }
      : groups.size > MOST_OUTCOMES
        ? {
            kind: 'too-many-outcomes',
            outcomes: groups.size,
            split: optionsToSplit([...distinct.values()], whens, deciding, guide),
          }
        : null;
  const kept = [...groups.values()].slice(0, MOST_OUTCOMES);
  return { deciding, groups: kept.length > 0 ? kept : [[buildOfOptions({}, deciding)]], problem };
}

/** Every condition that a guide is written under, each wording once. */
function whensOf(guide: Guide): readonly When[] {
  const found = conditionsOf(guide).map(({ when }) => [whenKey(when.value), when.value] as const);
  return [...new Map(found).values()];
}

function outcomeKey(whens: readonly When[], build: Build): string {
  return whens.map((when) => (holds(when, build) ? '1' : '0')).join('');
}

/**
 * The fewest options, picked one after another, whose settling brings the outcomes under the limit: a guide
 * for each of their values is the way out. Inspections come last, since nobody can write a guide for what is not yet
 * found.
 */
function optionsToSplit(
  builds: readonly Build[],
  whens: readonly When[],
  deciding: readonly Option[],
  { items }: Pick<Guide, 'items'>,
): readonly string[] {
  const isFound = ({ id }: Option) => items.get(id)?.kind === 'inspection';
  const keyed = builds.map((build) => ({ build, outcome: outcomeKey(whens, build) }));
  const split: string[] = [];
  let left = keyed;
  while (new Set(left.map((one) => one.outcome)).size > MOST_OUTCOMES) {
    const rest = deciding.filter((option) => !split.includes(option.id));
    const known = rest.filter((option) => !isFound(option));
    const trials = (known.length > 0 ? known : rest).map((option) => ({
      option,
      left: largestShare(left, option),
    }));
    const best = trials.reduce((a, b) => (b.left.length < a.left.length ? b : a));
    split.push(best.option.id);
    left = best.left;
  }
  return split;
}

type Keyed = { readonly build: Build; readonly outcome: string };

/** The builds that stay together when an option is settled to its most fertile value. */
function largestShare(keyed: readonly Keyed[], option: Option): Keyed[] {
  const shares = valuesOf(option).map((value) => keyed.filter((one) => one.build[option.id] === value));
  return shares.reduce((a, b) => (b.length > a.length ? b : a), []);
}
