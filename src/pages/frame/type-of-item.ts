import type { FastenerType, Item } from '../../model/item.ts';

/**
 * The kind of fastener, of the shop's list, that an item is one of; `null` for none. A fastener of the vehicle names it.
 * What comes in the box is of the kind whose name ends its own: an "M8 flange nut" is a `flange-nut`. It is looked up by
 * that name alone, so that a guide asks for no more of the list than it stands on.
 */
export function typeOfItem(
  item: Item,
  { fastenerTypes }: { readonly fastenerTypes: ReadonlyMap<string, FastenerType> },
): FastenerType | null {
  if (item.kind === 'fastener') return (item.type && fastenerTypes.get(item.type.value)) ?? null;
  if (item.kind !== 'kit') return null;
  const words = item.noun.singular.split(' ');
  for (const [first] of words.entries()) {
    const name = words.slice(first);
    const type = fastenerTypes.get(name.join('-'));
    if (type?.noun.singular === name.join(' ')) return type;
  }
  return null;
}
