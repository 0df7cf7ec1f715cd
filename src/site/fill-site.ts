import { guideFolder, type PageContext, platformFolder, type Shelf } from '../pages/frame/context.ts';
import { guideSchemaJson } from '../pages/guide/guide-schema.ts';
import { prepareLayouts } from '../pages/layouts/layouts.ts';
import { indexPage } from '../pages/reference/index-page.ts';
import { platformPage } from '../pages/reference/platform-page.ts';
import type { PictureView } from '../pages/steps/block-views.ts';
import type { Inspection } from '../shop/inspection.ts';
import type { WorkspaceFiles } from '../shop/workspace-files.ts';
import { noStore } from '../store/store.ts';
import { accentStyle } from './accent.ts';
import { type CutOutput, drawTemplates } from './cut-files.ts';
import { readFonts } from './fonts.ts';
import { guideFiles, schemaPath } from './guide-files.ts';
import { siteIcons } from './icons.ts';
import { manifestPath, siteManifest } from './manifest.ts';
import type { SiteOptions } from './options.ts';
import type { Staging } from './output-folder.ts';
import { type PageWriter, pageWriter } from './page-writer.ts';
import { pictureKey, publishPicture } from './pictures.ts';
import { type Publication, pagesBySource, publicationOf } from './publication.ts';
import { addReferencePages } from './reference-pages.ts';
import { browserScript } from './scripts.ts';
import { searchEntries } from './search-entries.ts';
import { searchData, searchIndexScript } from './search-index.ts';
import { overBudgetWords, singleFilePath, singleFileView, weightWords } from './single-file.ts';
import { linkedFolder, type Stock, shelfOf } from './stock.ts';
import { readTemplates, type Templates } from './templates.ts';
import { pictureWishes } from './wishes.ts';
import { workerPath, workerScript } from './worker.ts';

/** The names of all browser scripts. */
const scripts = ['guide', 'search', 'offline'];

/** What is wrong with a site, and what to know of a sound one. */
export interface Filled {
  readonly problems: readonly string[];
  readonly notices: readonly string[];
}

/** Puts every file of the site into the staging folder. */
export async function fillSite(
  inspection: Inspection,
  files: WorkspaceFiles,
  staging: Staging,
  options: SiteOptions,
): Promise<Filled> {
  const publication = publicationOf(inspection);
  const paths = new Set(publication.shop.files.keys());
  const templates = await readTemplates({ paths, read: async (path) => files.read(path) });
  await addAssets(templates, publication, staging);
  await staging.add('assets/search-index.js', searchIndexScript(searchData(searchEntries(publication))));
  const pictures = await addPictures(publication, files, staging, options);
  const linked = new Set<string>();
  const stock = {
    pictures,
    pages: pagesBySource(publication),
    files: paths,
    linked: (path: string) => linked.add(path),
  };
  const writer = pageWriter(prepareLayouts(templates.layouts), staging);
  await addOverviews(publication, stock, writer);
  const alone = await addGuides(publication, stock, { writer, staging, styles: templates.styles });
  for (const path of linked) {
    const bytes = await files.read(path);
    if (bytes) await staging.add(linkedFolder + path, bytes);
  }
  const asked = new Set(alone.keys());
  await staging.add(workerPath, workerScript(staging.hashes(), asked, await browserScript('worker')));
  const notices = [...alone].flatMap(([path, bytes]) => overBudgetWords(path, bytes) ?? []);
  return { problems: writer.problems(), notices };
}

async function addAssets({ styles }: Templates, { shop }: Publication, staging: Staging): Promise<void> {
  for (const [name, text] of styles) await staging.add(`assets/${name}`, text);
  await staging.add('assets/shop.css', accentStyle(shop.settings.accent));
  for (const name of scripts) await staging.add(`assets/${name}.js`, await browserScript(name));
  await staging.add(schemaPath, guideSchemaJson());
  await staging.add(manifestPath, siteManifest(shop.settings));
  for (const { path, bytes } of await siteIcons(shop.settings.accent)) await staging.add(path, bytes);
}

async function addPictures(
  publication: Publication,
  files: WorkspaceFiles,
  staging: Staging,
  { pictures: cache = noStore, progress }: SiteOptions,
): Promise<ReadonlyMap<string, PictureView>> {
  const views = new Map<string, PictureView>();
  const byKey = new Map(pictureWishes(publication).map((wish) => [pictureKey(wish), wish]));
  let done = 0;
  for (const [key, wish] of byKey) {
    const bytes = await files.read(wish.path);
    const picture = bytes ? await publishPicture(wish, bytes, cache) : null;
    for (const file of picture?.files ?? []) await staging.add(file.path, file.bytes);
    if (picture) views.set(key, picture.view);
    done += 1;
    progress?.(done, byKey.size);
  }
  return views;
}

async function addOverviews(publication: Publication, stock: Stock, writer: PageWriter): Promise<void> {
  const { shop, summaries, platforms } = publication;
  const page = (root: string): PageContext => ({ shop, root, shelf: shelfOf(stock, root, noCuts) });
  await writer.write('index.html', 'index.liquid', indexPage(summaries, page('')));
  for (const platform of platforms) {
    const view = platformPage(platform, summaries, page('../../'));
    await writer.write(`${platformFolder(platform.id)}index.html`, 'platform.liquid', view);
  }
  await addReferencePages(publication, page, writer);
}

/** Where guides are written, and the styles that those in one file take along. */
interface GuideWriting {
  readonly writer: PageWriter;
  readonly staging: Staging;
  readonly styles: ReadonlyMap<string, string>;
}

/** Writes every guide; returns the bytes of each as one file, by its path. */
async function addGuides(
  { shop, guides }: Publication,
  stock: Stock,
  { writer, staging, styles }: GuideWriting,
): Promise<ReadonlyMap<string, number>> {
  const fonts = await readFonts();
  const script = await browserScript('guide');
  const alone = new Map<string, number>();
  for (const published of guides) {
    const folder = guideFolder(published.guide);
    const cuts = await drawTemplates(published, shop, fonts);
    for (const file of [...cuts.values()].flatMap((cut) => cut.files)) {
      await staging.add(folder + file.path, file.bytes);
    }
    const root = '../../';
    const shelf: Shelf = shelfOf(stock, root, cuts);
    const { page, files } = guideFiles(published, { shop, root, shelf });
    for (const file of files) await staging.add(file.path, file.content);
    const parts = { styles, script, shelf: shelfOf(stock, '', cuts), read: staging.read };
    const path = singleFilePath(published.guide);
    const bytes = await writer.write(path, 'guide.liquid', await singleFileView(published, shop, parts));
    alone.set(path, bytes);
    const link = { href: path.slice(folder.length), text: `One file for a phone, ${weightWords(bytes)}` };
    await writer.write(page.path, 'guide.liquid', { ...page.view, alone: link });
  }
  return alone;
}

const noCuts: ReadonlyMap<string, CutOutput> = new Map();
