import { adaptItem } from '../guide/procedures/adapt.ts';
import { whenKey } from '../job/builds/when.ts';
import { company, listed, lowered, nounOf, tellApart } from '../job/index.ts';
import type { Guide } from '../model/guide.ts';
import type { Ref } from '../model/inline.ts';
import type { Item, Supply } from '../model/item.ts';
import type { When } from '../model/when.ts';
import type { Written } from '../source/span.ts';
import { convert, quantityOf } from '../units/format.ts';
import type { VisitNames } from './names.ts';

/** An item of a visit, and the guides that have it. */
interface Merged {
  readonly item: Item;
  readonly guides: readonly string[];
}

/**
 * The items of all guides of a visit, what is one thing once: it holds, covers and needs whatever any guide says, is
 * there where any guide has it, and of a supply there is as much as all ask for. What several guides declare alike,
 * each for itself, says in its label whose it is.
 *
 * @param nameOf what tells the work of a guide from that of the others
 */
export function mergeItems(
  guides: readonly Guide[],
  names: ReadonlyMap<string, VisitNames>,
  nameOf: (guide: string) => string,
): ReadonlyMap<string, Item> {
  const merged = new Map<string, Merged>();
  for (const guide of guides) {
    const by = names.get(guide.id);
    if (!by) continue;
    for (const item of guide.items.values()) {
      const own = adaptItem(item, by);
      const known = merged.get(own.id);
      const of = [...(known?.guides ?? []), guide.id];
      merged.set(own.id, { item: known ? oneThing(known.item, own) : own, guides: of });
    }
  }
  return tellApart(withOwners(merged, nameOf));
}

function withOwners(
  merged: ReadonlyMap<string, Merged>,
  nameOf: (guide: string) => string,
): ReadonlyMap<string, Item> {
  const spoken = ({ item }: Merged) => `${company(item)}\n${item.noun.label.toLowerCase()}`;
  const alike = new Map<string, number>();
  for (const one of merged.values()) alike.set(spoken(one), (alike.get(spoken(one)) ?? 0) + 1);
  return new Map(
    [...merged].map(([id, one]) => {
      if (alike.get(spoken(one)) === 1) return [id, one.item];
      const { label, plural } = one.item.noun;
      const noun = nounOf(`${label}, for ${listed(one.guides.map((guide) => lowered(nameOf(guide))))}`);
      return [id, { ...one.item, noun: { ...noun, plural: plural.split(',', 1)[0] ?? plural } }];
    }),
  );
}

/** One thing with all that is said of it in two guides. */
function oneThing(a: Item, b: Item): Item {
  return {
    ...a,
    when: either(a.when, b.when),
    with: also(a.with, b.with),
    needs: also(a.needs, b.needs),
    work: a.work ?? b.work,
    immobile: a.immobile || b.immobile,
    zones: also(a.zones, b.zones),
    picture: a.picture ?? b.picture,
    unknown: new Set([...a.unknown, ...b.unknown]),
    ...('covers' in a && 'covers' in b ? { covers: also(a.covers, b.covers) } : {}),
    ...('holds' in a && 'holds' in b ? { holds: also(a.holds, b.holds) } : {}),
    ...('takes' in a && 'takes' in b ? { takes: also(a.takes, b.takes) } : {}),
    ...('on' in a && 'on' in b ? { on: also(a.on, b.on) } : {}),
    ...('stays' in a && 'stays' in b ? { stays: a.stays || b.stays } : {}),
    ...(a.kind === 'supply' && b.kind === 'supply' ? inAll(a, b) : {}),
  };
}

/** How much of a supply two guides need together; unknown where one of them does not say. */
function inAll(a: Supply, b: Supply): Pick<Supply, 'quantity' | 'temporary'> {
  const temporary = a.temporary || b.temporary;
  // One line of a procedure is one need, however many guides place it: its steps are done once.
  if (a.at.file === b.at.file && a.at.start === b.at.start) return { quantity: a.quantity, temporary };
  if (!a.quantity || !b.quantity || a.quantity.value.dimension !== b.quantity.value.dimension)
    return { quantity: null, temporary };
  const { dimension, unit } = a.quantity.value;
  const sum = convert(a.quantity.value, unit) + convert(b.quantity.value, unit);
  const value = quantityOf(dimension, sum, unit);
  return { quantity: { value, at: a.quantity.at }, temporary };
}

/** The things that either list names, each once. */
export function also(some: readonly Ref[], more: readonly Ref[]): readonly Ref[] {
  return [...some, ...more.filter(({ value }) => !some.some((one) => one.value === value))];
}

/** Where either of two conditions holds; no condition holds everywhere. */
export function either(a: Written<When> | null, b: Written<When> | null): Written<When> | null {
  if (!a || !b || whenKey(a.value) === whenKey(b.value)) return a && b;
  return { value: { kind: 'or', of: [a.value, b.value], at: a.at }, at: a.at };
}
