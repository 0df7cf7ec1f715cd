import { profileFor } from '../../drawings/fastener-profile.ts';
import type { Fastener, FastenerType, KitItem } from '../../model/item.ts';
import type { Shop } from '../../model/shop.ts';
import type { Drive } from '../../trade/drives.ts';
import type { FastenerShape } from '../../trade/glossary/glossary.ts';
import { typeOfItem } from '../frame/type-of-item.ts';

/** Drives that tell the shape by themselves; a recess may sit in a pan head, a countersunk one or a flange. */
const telling: ReadonlySet<Drive['kind']> = new Set(['hexagon', 'push-in', 'pull-out']);

/** The shape of a kind of fastener as far as its name or its drive tells for sure, else `null`. */
export function shapeOfType({ noun, drive }: FastenerType): FastenerShape | null {
  return shapeOf(noun.label, drive?.value ?? null);
}

/** The shape of a fastener of a guide: that of its type, else by its own name and drive. */
export function shapeOfItem(
  item: Fastener | KitItem,
  shop: Pick<Shop, 'fastenerTypes'>,
): FastenerShape | null {
  const type = typeOfItem(item, shop);
  return (type && shapeOfType(type)) ?? shapeOf(item.noun.label, item.drive?.value ?? null);
}

function shapeOf(name: string, drive: Drive | null): FastenerShape | null {
  return profileFor(name, drive && telling.has(drive.kind) ? drive : null);
}
