import type { Item, ItemKind } from '../../model/item.ts';
import type { Span } from '../../source/span.ts';
import type { Dimension } from '../../units/quantity.ts';
import { isFixing } from '../actions/actions.ts';

/** What the judge knows of an item: plain facts, which a guide publishes for its rehearsal. */
export interface Thing {
  readonly kind: ItemKind;
  readonly at: Span;
  /** It is a fastener, of the vehicle or from the box. */
  readonly fixing: boolean;
  /** False for a fastener that serves once. */
  readonly reuse: boolean;
  readonly torqued: boolean;
  readonly threaded: boolean;
  readonly freeWhenLoosened: boolean;
  readonly oneByOne: boolean;
  /** What lies on it, by id. */
  readonly stack: readonly string[];
  /** The supply that goes on its thread. */
  readonly coat: string | null;
  /** While it is off, apart, loose, aside or holds, the vehicle must not be moved. */
  readonly immobile: boolean;
  /** A supply that must come off again. */
  readonly temporary: boolean;
  /** A condition that need not be cleared. */
  readonly stays: boolean;
  /** How much of a supply is declared, in the base unit of its dimension; `null` where that is not known. */
  readonly quantity: { readonly dimension: Dimension; readonly base: number } | null;
  /** How many may remain in the box; `null` where what is written cannot be read. */
  readonly spare: number | null;
  /** So many are taken as a reading asks for; the rest stays in the box by right. */
  readonly chosen: boolean;
  /** Whether the side that is written can be read. */
  readonly sideKnown: boolean;
}

/** The facts of an item that the judge asks for. */
export function thingOf(item: Item): Thing {
  const fixing = isFixing(item) ? item : null;
  const supply = item.kind === 'supply' ? item : null;
  const quantity = supply?.quantity?.value ?? null;
  return {
    kind: item.kind,
    at: item.idAt,
    fixing: fixing !== null,
    reuse: fixing?.reuse ?? true,
    torqued: Boolean(fixing?.torque),
    threaded: Boolean(fixing?.thread),
    freeWhenLoosened: fixing?.freeWhenLoosened ?? false,
    oneByOne: fixing?.oneByOne ?? false,
    stack: fixing?.stack.map(({ value }) => value) ?? [],
    coat: fixing?.coat?.value ?? null,
    immobile: item.immobile,
    temporary: supply?.temporary ?? false,
    stays: item.kind === 'condition' && item.stays,
    quantity:
      quantity && !item.unknown.has('quantity')
        ? { dimension: quantity.dimension, base: Number(quantity.base) }
        : null,
    spare: spareOf(item),
    chosen: item.kind === 'kit' && item.chosenBy !== null,
    sideKnown: !item.unknown.has('side'),
  };
}

function spareOf(item: Item): number | null {
  if (item.kind !== 'kit') return 0;
  return item.unknown.has('spare') || item.unknown.has('chosen-by') ? null : (item.spare?.value ?? 0);
}
