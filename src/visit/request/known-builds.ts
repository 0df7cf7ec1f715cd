import type { Report } from '../../diagnostics/report.ts';
import { finding } from '../../diagnostics/rule-card.ts';
import { didYouMean, nearest } from '../../diagnostics/suggest.ts';
import { evaluate } from '../../job/builds/when.ts';
import { enumerateBuilds } from '../../job/index.ts';
import type { Guide } from '../../model/guide.ts';
import type { Shop } from '../../model/shop.ts';
import type { Build, BuildSpace, Option, When } from '../../model/when.ts';
import type { Written } from '../../source/span.ts';
import type { VisitNames } from '../names.ts';
import { visitBuildImpossible, visitBuildUnknown } from '../rules.ts';
import type { VisitRequest } from './request.ts';
import type { Settles } from './settle.ts';

/** The builds that a visit is for, and what they settle of each guide's conditions. */
export interface KnownBuilds {
  readonly space: BuildSpace;
  readonly builds: readonly Build[];
  readonly settles: Settles;
}

/**
 * The builds of a visit: those of the platform and of all its guides, as far as the request leaves them open. `null`,
 * and a finding, where none is left.
 */
export function knownBuilds(
  request: VisitRequest,
  guides: readonly Guide[],
  names: ReadonlyMap<string, VisitNames>,
  shop: Shop,
  report: Report,
): KnownBuilds | null {
  const [first] = guides;
  const platform = first && shop.platforms.get(first.platform.value)?.builds;
  const byId = new Map((platform?.options ?? []).map((option) => [option.id, option]));
  for (const guide of guides) {
    const by = names.get(guide.id);
    for (const option of guide.builds.options) {
      const id = by?.option(option.id) ?? option.id;
      if (!byId.has(id)) byId.set(id, { ...option, id });
    }
  }
  const options = [...byId.values()];
  const limits = guides.flatMap((guide) => {
    const by = names.get(guide.id);
    return guide.builds.impossible.map(({ value, at }) => ({ value: by?.when(value) ?? value, at }));
  });
  const traits = request.build.map((written) => traitOf(written, options, report));
  if (traits.includes(null)) return null;
  const known = traits.flatMap((trait) => trait ?? []);
  const others = known.length === 0 ? [] : [othersThan(known)];
  const space = { options, listed: platform?.listed ?? null, impossible: [...others, ...limits] };
  const { builds, tooMany } = enumerateBuilds(space);
  if (builds.length === 0) {
    reportNone(request, guides, { ...space, impossible: [...limits] }, report);
    return null;
  }
  return { space, builds, settles: (when) => verdict(when, builds, tooMany) };
}

/** Every build but those that have some traits. */
function othersThan(traits: readonly Written<When>[]): Written<When> {
  const [first, ...more] = traits;
  if (!first) throw new Error('nothing is known of the build');
  const { at } = first;
  const of: When =
    more.length === 0 ? first.value : { kind: 'and', of: traits.map(({ value }) => value), at };
  return { value: { kind: 'not', of, at }, at };
}

function verdict(when: When, builds: readonly Build[], tooMany: boolean): ReturnType<Settles> {
  // Of more builds than are told apart nothing is settled.
  if (tooMany) return 'sometimes';
  const some = builds.some((build) => evaluate(when, build) === true);
  if (!some) return 'never';
  return builds.every((build) => evaluate(when, build) === true) ? 'always' : 'sometimes';
}

/** "lining", "no lining", "led", "lamps is led": what a person says of a build. */
function traitOf(
  { value, at }: Written<string>,
  options: readonly Option[],
  report: Report,
): Written<When> | null {
  const words = value.trim().toLowerCase();
  const [, no, rest = words] = /^(no |not |without )(.+)$/.exec(words) ?? [];
  const [, named, chosen = rest] = /^(.+?)(?: is |: ?|=)(.+)$/.exec(rest) ?? [];
  const own = (id: string) => id.slice(id.indexOf('_') + 1);
  const found = options.flatMap((option): When[] => {
    const isNamed = named === undefined || option.id === named || own(option.id) === named;
    if (option.choices) {
      const choice = option.choices.find(({ id }) => id === chosen);
      return isNamed && choice ? [{ kind: 'is', option: option.id, value: choice.id, at }] : [];
    }
    const isAsked = option.id === rest || own(option.id) === rest;
    return isAsked ? [{ kind: 'has', option: option.id, at }] : [];
  });
  const [first, second] = found;
  if (first && !second) return { value: no === undefined ? first : { kind: 'not', of: first, at }, at };
  const sayable = options.flatMap(({ id, choices }) => choices?.map((choice) => choice.id) ?? [id]);
  const help = second
    ? `several options can be meant; say which, as in "${options.find(({ choices }) => choices)?.id ?? 'option'} is ${chosen}"`
    : didYouMean(nearest(chosen, sayable)) ||
      (sayable.length === 0 ? 'its vehicles do not differ' : `it can be said of ${sayable.join(', ')}`);
  report(finding(visitBuildUnknown, at, `"${value}" is nothing in which these vehicles differ; ${help}`));
  return null;
}

function reportNone(
  { build, guides: named }: VisitRequest,
  guides: readonly Guide[],
  withoutBuild: BuildSpace,
  report: Report,
): void {
  const [at] = [...build.map((one) => one.at), ...named.map((one) => one.at)];
  if (!at) return;
  const limits = guides.flatMap((guide) =>
    guide.builds.impossible.flatMap((one) =>
      one.at.file === guide.file
        ? [{ message: `“${guide.title.value}” is for these alone`, at: one.at }]
        : [],
    ),
  );
  const alone = enumerateBuilds(withoutBuild).builds.length === 0;
  const message = alone
    ? 'these guides are for builds that exclude each other, so that no vehicle can have all of them fitted'
    : `no vehicle is built like this: ${build.map(({ value }) => value).join(', ')}`;
  report(finding(visitBuildImpossible, at, message, { notes: limits }));
}
