import { type Lost, type Page, pageRules, platformAnchors } from '../../checks/index.ts';
import type { Report } from '../../diagnostics/report.ts';
import type { PictureFact } from '../../model/guide.ts';
import type { Platform } from '../../model/shop.ts';
import type { WatchedWorkspace } from '../asks.ts';
import type { LookAtPictures } from './pictures.ts';

/** What a page is held against. */
type PageGround = Pick<WatchedWorkspace, 'shop' | 'files'> & { readonly look: LookAtPictures };

/** Holds a page, of a guide or of a platform, against the rules for pages. */
export async function checkPage(
  page: Page,
  { shop, files, look }: PageGround,
  report: Report,
  lost: Lost,
): Promise<void> {
  for (const rule of pageRules) rule.runOnPage(page, shop, report, lost);
  await look(page, files, report);
}

/** A platform as a page. */
export function asPage(platform: Platform): Page {
  return { ...platform, anchors: platformAnchors(platform) };
}

/** A picture of a tool or a kind of fastener, which is all that its page shows. */
export function pictureAlone(picture: PictureFact): Page {
  return { file: picture.at.file, pictures: [picture], links: [], anchors: new Set() };
}
