import type { Guide, NoneKind } from '../model/guide.ts';
import type { Item, ItemKind } from '../model/item.ts';

const kindOf: Readonly<Record<NoneKind, ItemKind>> = {
  wear: 'wear',
  tools: 'tool',
  supplies: 'supply',
  kit: 'kit',
  conditions: 'condition',
};

/** The lists that a guide must not leave silent, in the order of the gather list. */
export const noneKinds = Object.keys(kindOf) as readonly NoneKind[];

/** The directive that declares what a list holds. */
export function leafOf(kind: NoneKind): ItemKind {
  return kindOf[kind];
}

/** What a guide declares of a list. */
export function declaredOf(guide: Guide, kind: NoneKind): readonly Item[] {
  return [...guide.items.values()].filter((item) => item.kind === kindOf[kind]);
}
