import type { Item } from '../../model/item.ts';
import { isFixing } from './actions.ts';

/** Gives each fastener the friction of what goes on its thread, where it states none of its own. */
export function coated(items: ReadonlyMap<string, Item>): ReadonlyMap<string, Item> {
  return new Map(
    [...items].map(([id, item]) => {
      if (!isFixing(item) || item.friction || !item.coat) return [id, item];
      const supply = items.get(item.coat.value);
      return [id, supply?.kind === 'supply' ? { ...item, friction: supply.friction } : item];
    }),
  );
}
