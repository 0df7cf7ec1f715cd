import type { Ref } from '../../model/inline.ts';
import type { Item, ItemKind } from '../../model/item.ts';

/** What one item says about another. */
export interface Relation {
  readonly from: Item;
  readonly name: 'holds' | 'on' | 'covers' | 'takes' | 'replaces' | 'needs' | 'stack' | 'coat';
  readonly to: Ref;
}

/** The kinds of item that each relation can name. */
export const related: { readonly [N in Relation['name']]: readonly ItemKind[] } = {
  holds: ['part', 'kit'],
  on: ['part', 'kit'],
  covers: ['part', 'kit', 'fastener', 'connector'],
  takes: ['part'],
  replaces: ['part', 'fastener'],
  needs: ['condition', 'measure', 'setting', 'inspection', 'supply'],
  stack: ['part', 'kit', 'fastener'],
  coat: ['supply'],
};

/** Everything that an item says about others. */
export function relationsOf(from: Item): readonly Relation[] {
  const all = (name: Relation['name'], refs: readonly Ref[]): readonly Relation[] =>
    refs.map((to) => ({ from, name, to }));
  return [
    ...('holds' in from ? all('holds', from.holds) : []),
    ...('on' in from ? all('on', from.on) : []),
    ...('covers' in from ? all('covers', from.covers) : []),
    ...('takes' in from ? all('takes', from.takes) : []),
    ...('replaces' in from && from.replaces ? all('replaces', [from.replaces]) : []),
    ...('stack' in from ? all('stack', from.stack) : []),
    ...('coat' in from && from.coat ? all('coat', [from.coat]) : []),
    ...all('needs', from.needs),
  ];
}
