import type { Note } from '../../diagnostics/finding.ts';
import { featuresOf } from '../../job/actions/target.ts';
import { type Feature, isFixing } from '../../job/index.ts';
import type { Guide } from '../../model/guide.ts';
import type { Fastener, Item, KitItem } from '../../model/item.ts';
import type { Written } from '../../source/span.ts';
import type { Thread } from '../../trade/thread.ts';
import { quantityOf } from '../../units/format.ts';
import type { Quantity } from '../../units/quantity.ts';

/** A hole, slot or row of holes with the threaded fastener that goes into it. */
export interface ThreadedHole {
  readonly feature: Feature;
  readonly item: Fastener | KitItem;
  readonly thread: Written<Thread>;
  /** The diameter; of a slot, its width. */
  readonly size: Quantity<'length'>;
  /** Whether what goes in is a rivet nut, which is wider than its thread. */
  readonly rivetNut: boolean;
}

/** Every hole whose `for=` names a fastener with a thread. */
export function threadedHoles({ templates, items }: Guide): readonly ThreadedHole[] {
  return [...templates.values()].flatMap(featuresOf).flatMap((feature) => {
    const item = feature.for === null ? undefined : items.get(feature.for.value);
    if (!item || !isFixing(item) || !item.thread) return [];
    const rivetNut = isRivetNut(item) || item.stack.some((ref) => isNamedRivetNut(items.get(ref.value)));
    return [{ feature, item, thread: item.thread, size: sizeOf(feature), rivetNut }];
  });
}

/** A bolt whose stack ends in a rivet nut goes through the hole that the rivet nut sits in. */
function isNamedRivetNut(item: Item | undefined): boolean {
  return item !== undefined && isRivetNut(item);
}

/** A rivet nut is known by its name, since a kit item has no type. */
export function isRivetNut({ noun }: Item): boolean {
  return /\b(?:rivet|insert|blind)[ -]nut/i.test(noun.label);
}

/** The diameter of a hole; the width of a slot. */
export function sizeOf(feature: Feature): Quantity<'length'> {
  return quantityOf('length', 'width' in feature ? feature.width : feature.diameter, 'mm');
}

/** Where the thread stands that a hole is for. */
export function threadNotes({ thread, item }: ThreadedHole): readonly Note[] {
  return [{ message: `the ${item.noun.singular} has its thread stated here`, at: thread.at }];
}

/** Holes of one size for one fastener have one fault: the size, or the thread. */
export function causeOfHole({ item, size }: ThreadedHole): string {
  return `${item.id} ${size.base}`;
}
