import type { PictureFact } from '../../model/guide.ts';
import type { Item } from '../../model/item.ts';
import type { Shop } from '../../model/shop.ts';
import type { PictureView } from '../steps/block-views.ts';
import type { PageContext } from './context.ts';
import { typeOfItem } from './type-of-item.ts';

/** The own picture of a thing as pages show it. */
export interface OwnPictureView {
  readonly shown: PictureView;
  /** Empty where it says no more than the name beside it. */
  readonly alt: string;
}

/**
 * What an item looks like: the picture that its declaration names, else that of the tool in the crib or of its kind of
 * fastener; `null` where there is none.
 */
export function pictureOfItem(
  item: Item,
  shop: Pick<Shop, 'crib' | 'fastenerTypes' | 'ownPictures'>,
): PictureFact | null {
  if (item.picture) return item.picture;
  if (shop.crib.has(item.id)) return shop.ownPictures.get(`tool ${item.id}`) ?? null;
  const type = typeOfItem(item, shop);
  return type && (shop.ownPictures.get(`fastener ${type.id}`) ?? null);
}

/** The same as it stands beside the item's name. */
export function ownPictureOf(item: Item, { shop, shelf }: PageContext): OwnPictureView | null {
  const fact = pictureOfItem(item, shop);
  const shown = fact?.path ? shelf.picture(fact.path, null) : null;
  if (!shown) return null;
  const alt = fact?.alt?.value ?? '';
  return { shown, alt: alt === item.noun.label ? '' : alt };
}
