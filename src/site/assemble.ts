import { once } from '../job/once.ts';
import type { ShopSettings } from '../model/shop.ts';
import type { PageContext } from '../pages/frame/context.ts';
import { platformFolder } from '../pages/frame/context.ts';
import { recordsPath } from '../pages/frame/reference-paths.ts';
import { guideSchemaJson } from '../pages/guide/guide-schema.ts';
import { indexPage } from '../pages/reference/index-page.ts';
import { platformPage } from '../pages/reference/platform-page.ts';
import { recordsPage } from '../pages/reference/records-page.ts';
import { CARDS_PAGE, platformCardsPage } from '../pages/rehearsal/cards-page.ts';
import { type CribEntry, cribData } from '../pages/rehearsal/crib-data.ts';
import type { PictureView } from '../pages/steps/block-views.ts';
import { comparisonSchemaJson } from '../release/compare/comparison-json.ts';
import { recallSchemaJson } from '../release/recall-json.ts';
import { recordSchemaJson } from '../release/record.ts';
import type { WorkspaceFiles } from '../shop/files/workspace-files.ts';
import { contentHash, sha256 } from '../store/content-hash.ts';
import { readJson, type Store, writeJson } from '../store/store.ts';
import { vehicleRecordSchemaJson } from '../vehicle/json-schema.ts';
import { accentStyle } from './device/accent.ts';
import { siteIcons } from './device/icons.ts';
import { manifestPath, siteManifest } from './device/manifest.ts';
import { parcelsOf } from './device/parcels.ts';
import { workerPath, workerScript } from './device/worker.ts';
import { schemaPath } from './guides/guide-files.ts';
import { deadLinks } from './guides/link-check.ts';
import { keepFile, type LinkedFile, type MadeFile } from './guides/made.ts';
import { linkedPath, wishOf } from './guides/make-guide.ts';
import { pictureKey, publishPicture, screenSizes } from './guides/pictures.ts';
import { overBudgetWords } from './guides/single-file.ts';
import { shelfOf } from './guides/stock.ts';
import type { SiteKit } from './kit.ts';
import { type PageWriter, pageWriter } from './page-writer.ts';
import type { Publication } from './publication.ts';
import { addReferencePages } from './reference-pages.ts';
import { searchEntries } from './search/search-entries.ts';
import { searchData, searchScripts } from './search/search-index.ts';
import { readNotices } from './templates.ts';

/** What a site is put together with. */
interface SiteGround {
  readonly files: WorkspaceFiles;
  /** What the pages about all guides show and link. */
  readonly shown: Pick<WorkspaceFiles, 'read'>;
  readonly store: Store;
  readonly kit: SiteKit;
  readonly basis: string;
  readonly pageOf: (path: string) => string | null;
  /** Bytes of a guide's photographs, drawings and templates that a device keeps unasked. */
  readonly keptUnasked: number;
}

/** A whole site that is not in place yet, what is wrong with it, and what to know of a sound one. */
export interface AssembledSite {
  readonly files: readonly MadeFile[];
  readonly problems: readonly string[];
  readonly notices: readonly string[];
}

/** Puts a site together from what its guides gave, with everything that is made from all of them. */
export async function assembleSite(publication: Publication, ground: SiteGround): Promise<AssembledSite> {
  const { kit, store, basis } = ground;
  const site = new Map<string, MadeFile>();
  const add = (file: MadeFile) => {
    const there = site.get(file.path);
    if (there && there.hash !== file.hash) throw new Error(`two different files want the place ${file.path}`);
    site.set(file.path, file);
  };
  const problems: string[] = [...kit.problems];
  for (const file of await assetFiles(publication.shop.settings, ground)) add(file);
  for (const file of keptSearch(publication, ground)) add(file);
  add(keepFile(store, 'assets/crib.js', cribScript(cribData(publication.shop))));
  for (const file of publication.made.flatMap(({ files }) => files)) add(file);

  const writer = pageWriter(kit.render, store, basis);
  const overviews = await addOverviews(publication, writer, ground);
  for (const file of [...overviews.files, ...writer.files()]) add(file);
  const linked = [...overviews.linked, ...publication.made.flatMap((made) => made.linked)];
  for (const one of new Map(linked.map((file) => [file.path, file])).values()) {
    const bytes = ground.files.read(one.path);
    if (bytes && sha256(bytes) === one.hash) add({ path: linkedPath(one), hash: one.hash, bytes });
    else problems.push(changedWords(one));
  }
  problems.push(...torn([...publication.made.flatMap((made) => made.shown), ...overviews.shown]));
  const alone = publication.made.map((made) => made.alone);
  const hashes = new Map([...site.values()].map(({ path, hash }) => [path, hash]));
  const parcels = parcelsOf(publication.made, shownByLists(publication, overviews), ground.keptUnasked);
  add(keepFile(store, workerPath, workerScript(hashes, parcels, kit.scripts.get('worker') ?? '')));

  problems.push(...overviews.problems, ...writer.problems());
  problems.push(...publication.made.flatMap((made) => made.problems));
  // A page that failed is missing for good reason; its links would only repeat that.
  if (problems.length === 0) {
    const pages = [...publication.made.flatMap((made) => made.pages), ...writer.links()];
    const dead = deadLinks(pages, site);
    problems.push(...dead.map(({ page, href }) => `${page} links to ${href}, which leads nowhere`));
  }
  return {
    files: [...site.values()],
    problems: [...new Set(problems)],
    notices: alone.flatMap(({ path, size }) => overBudgetWords(path, size) ?? []),
  };
}

/** The pictures that pages about all guides show. */
function shownByLists({ summaries, visits }: Publication, { files }: Overviews): readonly string[] {
  const faces = [...summaries, ...visits].flatMap(({ picture }) =>
    picture ? [picture.src, ...screenSizes(picture).map(({ path }) => path)] : [],
  );
  return [...files.map(({ path }) => path), ...faces];
}

/** Pictures that changed between two pages of one site, one sentence each. */
function torn(shown: readonly LinkedFile[]): readonly string[] {
  const first = new Map<string, string>();
  return shown.flatMap((one) => {
    const hash = first.get(one.path) ?? one.hash;
    first.set(one.path, hash);
    return hash === one.hash ? [] : [changedWords(one)];
  });
}

const changedWords = ({ path }: LinkedFile) => `${path} is no longer as it was when it was checked`;

/** What the pages of a shop stand on: styles, scripts, icons, the schema of the data. */
export async function assetFiles(
  settings: ShopSettings,
  { kit, store }: Pick<SiteGround, 'kit' | 'store'>,
): Promise<readonly MadeFile[]> {
  const pageScripts = [...kit.scripts].filter(([name]) => name !== 'worker');
  return [
    ...[...kit.styles].map(([name, text]) => keepFile(store, `assets/${name}`, text)),
    keepFile(store, 'assets/shop.css', accentStyle(settings.accent)),
    keepFile(store, 'assets/notices.txt', await readNotices()),
    ...pageScripts.map(([name, text]) => keepFile(store, `assets/${name}.js`, text)),
    ...schemas().map(([path, text]) => keepFile(store, path, text)),
    keepFile(store, manifestPath, siteManifest(settings)),
    ...(await siteIcons(settings.accent)).map(({ path, bytes }) => keepFile(store, path, bytes)),
  ];
}

/** The schemas of all data that a site has, by path: the same for every shop, so they are written once. */
const schemas = once((): readonly (readonly [string, string])[] => [
  [schemaPath, guideSchemaJson()],
  ['schema/release.schema.json', recordSchemaJson()],
  ['schema/comparison.schema.json', comparisonSchemaJson()],
  ['schema/recall.schema.json', recallSchemaJson()],
  ['schema/vehicle-record.schema.json', vehicleRecordSchemaJson()],
]);

/** What the shop owns as a classic script that sets one global. */
function cribScript(crib: readonly CribEntry[]): string {
  return `globalThis.shopCrib=${JSON.stringify(crib)};\n`;
}

/** The scripts of the search, from the store where nothing that is found by it has changed. */
function keptSearch(publication: Publication, { store, basis }: SiteGround): readonly MadeFile[] {
  const entries = searchEntries(publication);
  const key = `search-${contentHash(basis, JSON.stringify(entries))}.json`;
  const kept = readJson<readonly MadeFile[]>(store, key);
  if (kept?.every(({ hash }) => store.read(`${hash}.bin`))) return kept;
  const scripts = searchScripts(searchData(entries));
  const files = scripts.map(({ name, text }) => keepFile(store, `assets/${name}.js`, text));
  if (files.every(({ bytes }) => !bytes)) writeJson(store, key, files);
  return files;
}

/** What the pages about all guides bring along. */
interface Overviews {
  readonly files: readonly MadeFile[];
  readonly linked: readonly LinkedFile[];
  readonly shown: readonly LinkedFile[];
  readonly problems: readonly string[];
}

/** Writes the pages that are about all guides: the first page, the platforms, tools, fasteners and terms. */
async function addOverviews(
  publication: Publication,
  writer: PageWriter,
  { shown, store, kit, pageOf }: SiteGround,
): Promise<Overviews> {
  const { shop, summaries, visits, platforms } = publication;
  const pictures = new Map<string, PictureView>();
  const files: MadeFile[] = [];
  const pictured: LinkedFile[] = [];
  const problems: string[] = [];
  const logo = shop.settings.logo ? [{ path: shop.settings.logo.value, figure: null }] : [];
  const facts = [...platforms.flatMap((platform) => platform.pictures), ...shop.ownPictures.values()];
  for (const wish of [...logo, ...facts.flatMap(wishOf)]) {
    const bytes = shown.read(wish.path);
    const picture = bytes && (await publishPicture(wish, bytes, store));
    if (!picture) problems.push(`${wish.path} could not be published as it was when it was checked`);
    else {
      files.push(...picture.files.map((file) => keepFile(store, file.path, file.bytes)));
      pictures.set(pictureKey(wish), picture.view);
      pictured.push({ path: wish.path, hash: sha256(bytes) });
    }
  }
  const linked = new Map<string, LinkedFile>();
  const stock = {
    pictures,
    pageOf,
    files: shop.files,
    linked: (path: string) => linked.set(path, { path, hash: sha256(shown.read(path) ?? '') }),
  };
  const page = (root: string): PageContext => ({ shop, root, shelf: shelfOf(stock, root, new Map()) });
  writer.write('index.html', 'index.liquid', indexPage(summaries, visits, page('')));
  for (const platform of platforms) {
    const view = platformPage(platform, summaries, page('../../'));
    writer.write(`${platformFolder(platform.id)}index.html`, 'platform.liquid', view);
    const cards = platformCardsPage(platform, summaries, page('../../'));
    if (cards) writer.write(`${platformFolder(platform.id)}${CARDS_PAGE}`, 'cards.liquid', cards);
  }
  writer.write(recordsPath, 'records.liquid', recordsPage([...summaries, ...visits], page('')));
  addReferencePages(publication, page, writer, kit.chapters);
  return { files, linked: [...linked.values()], shown: pictured, problems };
}
