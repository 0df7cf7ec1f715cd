import { nothingLost } from '../../checks/index.ts';
import { collector, type Report } from '../../diagnostics/report.ts';
import type { Shop } from '../../model/shop.ts';
import { contentHash } from '../../store/content-hash.ts';
import { readJson, type Store, writeJson } from '../../store/store.ts';
import type { WorkspaceFiles } from '../files/workspace-files.ts';
import { checkPage, pictureAlone } from './inspect-page.ts';
import type { LookAtPictures } from './pictures.ts';

/**
 * Judges the pictures of tools and of kinds of fastener, each by itself: no page shows them all, so their weights are
 * no sum. A crib has many and they seldom change: once all were found sound, they are not looked at again until one
 * is another. Every build cleans them anew, so that what an older release let through is not published for that.
 *
 * @param files what hashes their bytes as they are
 * @param shown what reads them, and remembers what was read
 */
export async function checkOwnPictures(
  shop: Shop,
  files: Pick<WorkspaceFiles, 'hash'>,
  shown: Pick<WorkspaceFiles, 'read'>,
  look: LookAtPictures,
  store: Store,
  report: Report,
): Promise<void> {
  const pictures = [...shop.ownPictures.values()];
  if (pictures.length === 0) return;
  const asTheyAre = pictures.map(({ path, alt }) => [
    path,
    alt?.value,
    path === null ? null : files.hash(path),
  ]);
  const sound = `own-pictures-${contentHash(JSON.stringify(asTheyAre))}.json`;
  if (readJson<boolean>(store, sound)) return;
  const { findings, report: tell } = collector();
  for (const picture of pictures)
    await checkPage(pictureAlone(picture), { shop, files: shown, look }, tell, nothingLost);
  for (const one of findings) report(one);
  if (findings.length === 0) writeJson(store, sound, true);
}
