import type { Item, ItemKind, Noun } from '../../model/item.ts';
import { lowered } from './noun.ts';

/**
 * Gives look-alikes their whole labels: where the nouns of two items would print alike, "spacer" for "Spacer,
 * 12 mm" and for "Spacer, 18 mm", each prints all that its label says, wherever it is named.
 */
export function tellApart(items: ReadonlyMap<string, Item>): ReadonlyMap<string, Item> {
  const sharing = new Map<string, number>();
  for (const item of items.values()) sharing.set(spoken(item), (sharing.get(spoken(item)) ?? 0) + 1);
  return new Map(
    [...items].map(([id, item]) => {
      const alone = sharing.get(spoken(item)) === 1;
      return [id, alone ? item : { ...item, noun: wholeNoun(item.noun) }];
    }),
  );
}

/** The kinds of item that nobody takes in hand: the rating of a bracket bears the bracket's name. */
const untouched: ReadonlySet<ItemKind> = new Set([
  'condition',
  'measure',
  'setting',
  'inspection',
  'rating',
  'circuit',
]);

/** Among what two items can be taken for each other: things of all kinds, or readings, ratings and so on. */
export function company({ kind }: Item): ItemKind | 'thing' {
  return untouched.has(kind) ? kind : 'thing';
}

/** Capitals do not tell two things apart for the ear, nor for a hurried eye. */
function spoken(item: Item): string {
  return `${company(item)}\n${item.noun.singular.toLowerCase()}`;
}

/** "spacer, 12 mm" and "spacers, 12 mm": what stands after the comma does not change with the number. */
function wholeNoun({ label, plural }: Noun): Noun {
  const comma = label.indexOf(',');
  const rest = comma < 0 ? '' : label.slice(comma).trimEnd();
  return { label, singular: lowered(label), plural: `${plural}${rest}` };
}
