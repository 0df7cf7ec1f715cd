import { prosesOf } from '../job/walk.ts';
import type { Block } from '../model/block.ts';
import type { Guide } from '../model/guide.ts';
import type { Prose } from '../model/prose.ts';
import type { Platform, ShopSettings } from '../model/shop.ts';
import { pathFrom } from '../pages/references.ts';
import type { PictureWish } from './pictures.ts';

/** The pictures that a guide shows. */
export function wishesOfGuide(guide: Guide): readonly PictureWish[] {
  return guide.pictures.flatMap(({ path, figure }) => (path === null ? [] : [{ path, figure }]));
}

/** The pictures that a platform's page shows. */
export function wishesOfPlatform({ sections }: Platform): readonly PictureWish[] {
  return sections.flatMap((section) => section.blocks).flatMap(wishesOfBlock);
}

/** The shop's logo. */
export function wishesOfShop({ logo }: ShopSettings): readonly PictureWish[] {
  return logo ? [{ path: logo.value, figure: null }] : [];
}

function wishesOfBlock(block: Block): readonly PictureWish[] {
  const figures = block.type === 'figure' && block.path !== null ? [{ path: block.path, figure: block }] : [];
  return [...figures, ...prosesOf(block).flatMap(wishesOfProse)];
}

function wishesOfProse(prose: Prose): readonly PictureWish[] {
  return prose.flatMap((node) => {
    if (node.type === 'where') return wishesOfProse(node.children);
    if (node.type !== 'element') return [];
    if (node.tagName !== 'img') return wishesOfProse(node.children);
    const path = pathFrom(node.at?.file ?? '', String(node.properties.src ?? ''));
    return path === null ? [] : [{ path, figure: null }];
  });
}
