import type { Adaptation } from '../guide/procedures/adapt.ts';
import type { Guide, Step } from '../model/guide.ts';
import type { Item } from '../model/item.ts';
import type { Shop } from '../model/shop.ts';
import type { When } from '../model/when.ts';
import type { Span } from '../source/span.ts';

/** What a guide's ids are called in a visit. */
export interface VisitNames extends Adaptation {
  readonly option: (id: string) => string;
  /** A heading of the guide. */
  readonly section: (id: string) => string;
  /** What a step is one by with those of other guides; `null` for one of the guide's own. */
  readonly shared: (step: Step) => string | null;
}

/** What tells a thing from all others of a visit: what it is of, and its name or its place there. */
type Identity = string;

/**
 * The names of every guide of a visit. A thing is one with that of another guide where both have it from the
 * platform, from the shop's lists, or from one line of a procedure; never because they are alike. Such a thing keeps
 * its id, and what a guide declares itself is `guide_id`: no id of an author holds an underscore, and each stands in HTML.
 *
 * @param guides sorted by id, so that the names do not depend on the order in which they were named
 * @param repeated steps that are done for each guide by itself, by what they would be one by
 */
export function visitNames(
  guides: readonly Guide[],
  shop: Shop,
  repeated: ReadonlySet<string>,
): ReadonlyMap<string, VisitNames> {
  // Items, templates and their holes share one name space, steps have another.
  const claims = { thing: claimer(), step: claimer() };
  return new Map(guides.map((guide) => [guide.id, namesOf(guide, shop, repeated, claims)]));
}

/** Gives each identity an id: the one that it wants, unless that is taken. */
type Claim = (identity: Identity, wanted: string, guide: Guide) => string;

function claimer(): Claim {
  const taken = new Map<string, Identity>();
  return (identity, wanted, guide) => {
    const first = identity.startsWith('own ') ? `${guide.id}_${wanted}` : wanted;
    const isFree = (id: string) => (taken.get(id) ?? identity) === identity;
    let id = first;
    // Where two procedures give one id to two things, the later says where it is from.
    if (!isFree(id)) id = `${sourceOf(identity)}_${wanted}`;
    for (let number = 2; !isFree(id); number += 1) id = `${sourceOf(identity)}_${wanted}-${number}`;
    taken.set(id, identity);
    return id;
  };
}

function sourceOf(identity: Identity): string {
  return /([^/ ]+)\.md#/.exec(identity)?.[1] ?? 'shared';
}

function namesOf(
  guide: Guide,
  shop: Shop,
  repeated: ReadonlySet<string>,
  { thing: claim, step: claimStep }: { readonly thing: Claim; readonly step: Claim },
): VisitNames {
  const things = new Map<string, string>();
  const twice = numbered();
  for (const item of guide.items.values()) {
    things.set(item.id, claim(itemIdentity(item, guide, shop, twice), item.id, guide));
  }
  for (const template of guide.templates.values()) {
    const identity = placeIdentity(template.at, template.id, guide, twice);
    things.set(template.id, claim(identity, template.id, guide));
    for (const { id, at } of [...template.holes, ...template.slots, ...template.patterns]) {
      if (id !== null) things.set(id, claim(placeIdentity(at, id, guide, twice), id, guide));
    }
  }
  for (const sequence of guide.sequences.values()) {
    things.set(sequence.id, claim(placeIdentity(sequence.at, sequence.id, guide, twice), sequence.id, guide));
  }
  const ofPlatform = new Set(shop.platforms.get(guide.platform.value)?.builds.options.map(({ id }) => id));
  const option = (id: string) => {
    if (ofPlatform.has(id)) return id;
    // What an inspection finds goes by the inspection's name.
    return guide.items.get(id)?.kind === 'inspection' ? (things.get(id) ?? id) : `${guide.id}_${id}`;
  };
  const identities = stepIdentities(guide);
  const shared = ({ id }: Step) => {
    const identity = identities.get(id);
    return identity === undefined || repeated.has(identity) ? null : identity;
  };
  const steps = new Map(
    guide.sections.flatMap((section) =>
      section.steps.map((step): [string, string] => {
        const identity = shared(step);
        return [
          step.id,
          claimStep(
            identity === null ? `own ${guide.id} step ${step.id}` : `step ${identity}`,
            step.id,
            guide,
          ),
        ];
      }),
    ),
  );
  return {
    item: (id) => things.get(id) ?? `${guide.id}_${id}`,
    step: (id) => steps.get(id) ?? `${guide.id}_${id}`,
    section: (id) => `${guide.id}_${id}`,
    option,
    when: (when) => renamed(when, option),
    shared,
  };
}

function renamed(when: When, option: (id: string) => string): When {
  switch (when.kind) {
    case 'has':
    case 'is':
      return { ...when, option: option(when.option) };
    case 'not':
      return { ...when, of: renamed(when.of, option) };
    case 'and':
    case 'or':
      return { ...when, of: when.of.map((part) => renamed(part, option)) };
  }
}

function itemIdentity(item: Item, guide: Guide, shop: Shop, twice: (text: string) => string): Identity {
  if ('fromPlatform' in item && item.fromPlatform) return `platform ${item.id}`;
  const listed = shop.crib.get(item.id) ?? shop.supplies.get(item.id);
  if (listed && listed.kind === item.kind && listed.noun.label === item.noun.label) return `shop ${item.id}`;
  return placeIdentity(item.at, item.id, guide, twice);
}

/** What a procedure declares is told by its place there; where a guide places that twice, by the number too. */
function placeIdentity(at: Span, id: string, guide: Guide, twice: (text: string) => string): Identity {
  if (at.file === guide.file) return `own ${guide.id} ${id}`;
  return twice(`placed ${at.file}#${at.start}`);
}

/** The steps of procedures, and those that undo them, by what they are one by with those of other guides. */
function stepIdentities(guide: Guide): ReadonlyMap<string, string> {
  const found = new Map<string, string>();
  const twice = numbered();
  const steps = guide.sections.flatMap((section) => section.steps);
  const derives = (step: Step) => step.origins.findLast(({ kind }) => kind === 'reverse');
  for (const step of steps) {
    if (!derives(step) && step.at.file !== guide.file)
      found.set(step.id, twice(`${step.at.file}#${step.at.start}`));
  }
  for (const step of steps) {
    const origin = derives(step);
    const source = origin?.kind === 'reverse' ? found.get(origin.step) : undefined;
    if (source !== undefined) found.set(step.id, twice(`undo ${source}`));
  }
  return found;
}

/** Tells the second and later of equal texts apart by their number. */
function numbered(): (text: string) => string {
  const seen = new Map<string, number>();
  return (text) => {
    const count = (seen.get(text) ?? 0) + 1;
    seen.set(text, count);
    return count === 1 ? text : `${text} ${count}`;
  };
}

/** The undoing of a shared step is one by this with that of other guides. */
export function undoOf(identity: string): string {
  return `undo ${identity}`;
}
