import type { PictureFact } from '../model/guide.ts';
import type { PictureWish } from './pictures.ts';
import type { Publication } from './publication.ts';

/** Every picture that the site shows: the shop's logo, and those of the platforms and guides. */
export function pictureWishes({ shop, platforms, guides }: Publication): readonly PictureWish[] {
  const { logo } = shop.settings;
  return [
    ...(logo ? [{ path: logo.value, figure: null }] : []),
    ...platforms.flatMap(({ pictures }) => pictures.flatMap(wishOf)),
    ...guides.flatMap(({ guide }) => guide.pictures.flatMap(wishOf)),
  ];
}

function wishOf({ path, figure }: PictureFact): readonly PictureWish[] {
  return path === null ? [] : [{ path, figure }];
}
