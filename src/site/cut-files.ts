import type { Shop } from '../model/shop.ts';
import type { Shelf } from '../pages/context.ts';
import type { PublishedGuide } from '../pages/index-page.ts';

/** What a template comes to: its files, by path from the guide's folder, and how the page shows it. */
export interface CutOutput {
  readonly files: readonly { readonly path: string; readonly bytes: string | Uint8Array }[];
  readonly view: ReturnType<Shelf['template']>;
}

/** Draws every template of a guide. */
export async function drawTemplates(
  _published: PublishedGuide,
  _shop: Shop,
): Promise<ReadonlyMap<string, CutOutput>> {
  return new Map();
}
