import type { Guide, Step } from '../model/guide.ts';
import type { Ref } from '../model/inline.ts';
import type { Item } from '../model/item.ts';
import { featuresOf, findTarget } from './actions/target.ts';
import { actionsOf, placedInStep } from './actions/walk.ts';
import { oncePer } from './once.ts';

/** Ids of zones; of a step, none for the whole vehicle, and `off` for work that is done off it. */
type ZoneIds = readonly string[];

type InZones = Pick<Guide, 'items' | 'templates' | 'zones'>;

/**
 * The zones in which an item or a template lies, in the order of the platform: those that its author names, else
 * those of what it holds, sits on, takes the place of, covers or is cut from, else of what covers or holds it. Empty
 * where nothing tells.
 */
export function zonesOfThing(guide: InZones, id: string): ZoneIds {
  return inOrder(guide, found(guide, id, new Set()));
}

/**
 * Where a step is done: as its author says, else where what it does something to lies, else what it speaks of, else
 * what must hold meanwhile.
 */
export function zonesOfStep(guide: InZones, step: Step): ZoneIds | 'off' {
  if (step.zones === 'off') return 'off';
  const acted = actionsOf(step).flatMap(({ node }) => [node.target, ...node.on]);
  const named = placedInStep(step).flatMap(({ node }) => [node.target]);
  const needed = [...step.needs, ...acted.flatMap(({ value }) => guide.items.get(value)?.needs ?? [])];
  const ways = [known(guide, step.zones), ...[acted, named, needed].map((refs) => ofAll(guide, refs))];
  return inOrder(guide, ways.find((zones) => zones.length > 0) ?? []);
}

function ofAll(guide: InZones, refs: readonly Ref[]): ZoneIds {
  return refs.flatMap(({ value }) => found(guide, value, new Set()));
}

function found(guide: InZones, id: string, seen: Set<string>): ZoneIds {
  if (seen.has(id) || guide.zones.size === 0) return [];
  seen.add(id);
  const target = findTarget(guide, id);
  if (!target) return [];
  if (target.kind !== 'item') {
    const { panel } = target.template;
    const through = featuresOf(target.template).flatMap((feature) => feature.for ?? []);
    return ofFirst(guide, [panel ? [panel.value] : [], through.map(({ value }) => value)], seen);
  }
  const { item } = target;
  const own = known(guide, item.zones);
  if (own.length > 0) return own;
  return ofFirst(guide, [reached(item), relatives(guide).get(id) ?? []], seen);
}

/** The zones of the first of several lists of things that has any. */
function ofFirst(guide: InZones, lists: readonly (readonly string[])[], seen: Set<string>): ZoneIds {
  for (const ids of lists) {
    const zones = ids.flatMap((one) => found(guide, one, seen));
    if (zones.length > 0) return zones;
  }
  return [];
}

/** What an item says itself that it is at. */
function reached(item: Item): readonly string[] {
  const refs = [
    ...('holds' in item ? item.holds : []),
    ...('on' in item ? item.on : []),
    ...('replaces' in item && item.replaces ? [item.replaces] : []),
    ...('covers' in item ? item.covers : []),
    ...('stack' in item ? item.stack : []),
    ...('takes' in item ? item.takes : []),
  ];
  return refs.map(({ value }) => value);
}

/** By what each item is covered or held, or what sits on it. */
const relatives: (guide: InZones) => ReadonlyMap<string, readonly string[]> = oncePer((guide) => {
  const by = new Map<string, string[]>();
  for (const item of guide.items.values())
    for (const id of reached(item)) by.set(id, [...(by.get(id) ?? []), item.id]);
  return by;
});

function known({ zones }: InZones, refs: readonly Ref[]): ZoneIds {
  return refs.flatMap(({ value }) => (zones.has(value) ? [value] : []));
}

function inOrder({ zones }: InZones, ids: ZoneIds): ZoneIds {
  return [...zones.keys()].filter((id) => ids.includes(id));
}
