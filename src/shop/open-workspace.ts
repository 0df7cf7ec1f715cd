import { nothingLost } from '../checks/index.ts';
import type { Fonts } from '../cut/drawing/metrics.ts';
import type { Finding } from '../diagnostics/finding.ts';
import { collector } from '../diagnostics/report.ts';
import { finding } from '../diagnostics/rule-card.ts';
import { readPlatform } from '../guide/index.ts';
import type { Platform, Shop } from '../model/shop.ts';
import type { SourceFile } from '../source/source-file.ts';
import { wholeFile } from '../source/span.ts';
import { noStore, type Store } from '../store/store.ts';
import { type Discovered, discover, fileId } from './discover.ts';
import { steadyFiles } from './files/steady-files.ts';
import type { Listing, WorkspaceFiles } from './files/workspace-files.ts';
import { guideContext } from './guide-context.ts';
import { asPage, checkPage } from './inspect/inspect-page.ts';
import { checkOwnPictures } from './inspect/own-pictures.ts';
import { type LookAtPictures, pictureJudge } from './inspect/pictures.ts';
import { type JudgeTemplates, templateJudge } from './inspect/templates.ts';
import type { Inspected } from './inspect/verdict.ts';
import { type ListFaults, readLists } from './lists/read-lists.ts';
import { isOwnText, readSource } from './read-sources.ts';
import { reportStrayReleases } from './releases.ts';
import { fileUnreadable, linkRefused } from './rules.ts';

/** A workspace with all that its guides share, read once; the guides themselves are only named. */
export interface Workspace {
  readonly files: WorkspaceFiles;
  readonly listing: Listing;
  readonly shop: Shop;
  readonly faults: ListFaults;
  readonly found: Discovered;
  /** The texts of the shared procedures, by id. */
  readonly procedures: ReadonlyMap<string, SourceFile>;
  readonly platforms: readonly Inspected<Platform>[];
  /** What is wrong with the workspace and the lists of the shop. */
  readonly general: readonly Finding[];
  /** What its platforms and its own pages show and link, as it was when it was checked. */
  readonly shown: Pick<WorkspaceFiles, 'read'>;
  readonly look: LookAtPictures;
  readonly judgeTemplates: JudgeTemplates;
}

/**
 * Reads and checks all that guides share: the shop's lists, its platforms and the texts of its procedures.
 * Throws only where the workspace itself cannot be listed.
 *
 * @param store where derived pictures are kept for the build that follows
 * @param fonts of the sheets of cut templates; without them it is not judged whether a template can be printed
 */
export async function openWorkspace(
  files: WorkspaceFiles,
  store: Store = noStore,
  fonts: Fonts | null = null,
): Promise<Workspace> {
  const { findings: general, report } = collector();
  const listing = await files.list();
  for (const path of listing.links)
    report(finding(linkRefused, wholeFile(path), 'this is a symbolic link, which is not followed'));
  for (const path of listing.closed)
    report(finding(fileUnreadable, wholeFile(path), 'this folder cannot be opened'));
  const found = discover(listing.files.keys(), report);
  const guides = new Set([...found.guides, ...found.visits]);
  const sources = new Map<string, SourceFile>();
  for (const [path, size] of listing.files) {
    // A guide, or a visit, is read in its own turn.
    if (!isOwnText(path) || guides.has(path)) continue;
    const source = readSource(files, path, size, report);
    if (source) sources.set(path, source);
  }
  reportStrayReleases(listing.files.keys(), found.guides, sources, report);
  const { faults, ...lists } = readLists(sources, listing.files, report);
  const procedures = new Map(
    found.procedures.flatMap((path): [string, SourceFile][] => {
      const source = sources.get(path);
      return source ? [[fileId(path), source]] : [];
    }),
  );
  const look = pictureJudge(store);
  const shown = steadyFiles(files);
  const bare: Shop = { ...lists, platforms: new Map() };
  const platforms = found.platforms.flatMap((path) => {
    const source = sources.get(path);
    if (!source) return [];
    const { findings, report: tell } = collector();
    const value = readPlatform(source, guideContext(bare, procedures, files), tell);
    return [{ value, findings, report: tell }];
  });
  const byId = new Map(platforms.flatMap(({ value }) => (value ? [[value.id, value] as const] : [])));
  const shop: Shop = { ...lists, platforms: byId };
  await checkOwnPictures(shop, files, shown, look, store, report);
  for (const { value, report: tell } of platforms) {
    if (value) await checkPage(asPage(value), { shop, files: shown, look }, tell, nothingLost);
  }
  return {
    files,
    listing,
    shop,
    faults,
    found,
    procedures,
    platforms,
    general,
    shown,
    look,
    judgeTemplates: templateJudge(lists.settings, fonts),
  };
}
