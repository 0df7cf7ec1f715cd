import type { Guide } from '../../model/guide.ts';
import type { Fastener, Item, KitItem } from '../../model/item.ts';
import { isFixing } from './actions.ts';

/** How long what a bolt clamps is, and what is left of the bolt beyond it. */
export interface Grip {
  /** The sum of what it clamps; millimetres. */
  readonly grip: number;
  /** Of the bolt; millimetres. */
  readonly length: number;
  /** The nut at the end; `null` where the bolt goes into a thread. */
  readonly nut: Fastener | KitItem | null;
}

/** Whether a piece of a stack is the nut: what has a thread or a torque of its own. */
export function isNut(item: Item): item is Fastener | KitItem {
  return isFixing(item) && (item.thread !== null || item.torque !== null);
}

/** What lies on a bolt, in order; what is not declared is left out, which another rule tells. */
export function piecesOn(bolt: Fastener | KitItem, guide: Pick<Guide, 'items'>): readonly Item[] {
  return bolt.stack.flatMap(({ value }) => guide.items.get(value) ?? []);
}

/** What a bolt clamps: all that lies on it, without the nut, or without what it is screwed into. */
function clampedBy(bolt: Fastener | KitItem, guide: Pick<Guide, 'items'>): readonly Item[] {
  const pieces = piecesOn(bolt, guide);
  return pieces.some(isNut) ? pieces.filter((piece) => !isNut(piece)) : pieces.slice(0, -1);
}

/** The pieces on a bolt, and the bolt itself, that state no length: as long as there are any, nothing is checked. */
export function lengthless(bolt: Fastener | KitItem, guide: Pick<Guide, 'items'>): readonly Item[] {
  return [bolt, ...clampedBy(bolt, guide)].filter((item) => !('length' in item) || item.length === null);
}

/** The grip of a bolt; `null` where a length is missing, or nothing lies on it. */
export function gripOf(bolt: Fastener | KitItem, guide: Pick<Guide, 'items'>): Grip | null {
  const pieces = piecesOn(bolt, guide);
  if (pieces.length !== bolt.stack.length || pieces.length === 0) return null;
  if (lengthless(bolt, guide).length > 0 || bolt.length === null) return null;
  const grip = clampedBy(bolt, guide).reduce((sum, piece) => sum + lengthOf(piece), 0);
  return { grip, length: bolt.length.value.base, nut: pieces.find(isNut) ?? null };
}

function lengthOf(item: Item): number {
  return 'length' in item ? (item.length?.value.base ?? 0) : 0;
}
