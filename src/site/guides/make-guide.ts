import { compactPage } from '../../html/compact-page.ts';
import type { PictureFact, Step } from '../../model/guide.ts';
import { guideFolder, type PageContext } from '../../pages/frame/context.ts';
import { pictureOfItem } from '../../pages/frame/own-picture.ts';
import type { GuideView } from '../../pages/guide/guide-views.ts';
import type { Card } from '../../pages/rehearsal/cards.ts';
import { CARDS_PAGE } from '../../pages/rehearsal/cards-page.ts';
import type { CardsView, RehearsalView } from '../../pages/rehearsal/rehearsal-view.ts';
import type { PictureView } from '../../pages/steps/block-views.ts';
import { overlays } from '../../release/overlay.ts';
import type { NoteAsk, WatchedWorkspace } from '../../shop/asks.ts';
import { sha256 } from '../../store/content-hash.ts';
import type { Store } from '../../store/store.ts';
import type { SiteKit } from '../kit.ts';
import type { PublishedGuide } from '../publication.ts';
import { cutFolder, layOutTemplates } from './cut-files.ts';
import { guideFiles } from './guide-files.ts';
import { type PageLinks, pageLinks } from './link-check.ts';
import { keepFile, type LinkedFile, type MadeFile, type MadeGuide } from './made.ts';
import { type PictureWish, pictureKey, publishPicture } from './pictures.ts';
import { singleFilePath, singleFileView, weightWords } from './single-file.ts';
import { linkedFolder, type Stock, shelfOf } from './stock.ts';

/** What a guide's part of the site is made with. */
interface GuideMaking {
  /** The workspace as this guide sees it. */
  readonly seen: WatchedWorkspace;
  readonly note: NoteAsk;
  /** The page that a file of the workspace becomes, `null` for none. */
  readonly pageOf: (path: string) => string | null;
  readonly kit: SiteKit;
  readonly store: Store;
  /** The guide's card set. */
  readonly cards: readonly Card[];
  /** Leaves out what the page only leads to: files at full scale, data, the rehearsal, and the guide as one file. */
  readonly pageAlone: boolean;
}

/** Makes everything that the site holds of a guide: its page, its one file, its data, pictures and templates. */
export async function makeGuide(published: PublishedGuide, making: GuideMaking): Promise<MadeGuide> {
  const { seen, kit, store, note, pageOf, cards, pageAlone } = making;
  const { shop, files: read } = seen;
  const files = new Map<string, MadeFile>();
  const contents = new Map<string, string | Uint8Array>();
  const add = (path: string, content: string | Uint8Array) => {
    files.set(path, keepFile(store, path, content));
    contents.set(path, content);
  };
  const heavy = new Map<string, number>();
  const addHeavy = (path: string, content: string | Uint8Array) => {
    add(path, content);
    heavy.set(path, Buffer.byteLength(content));
  };
  const pages: PageLinks[] = [];
  const problems: string[] = [];
  const addPage = (
    path: string,
    view: GuideView | RehearsalView | CardsView,
    layout = 'guide.liquid',
  ): number => {
    const rendered = kit.render(layout, view);
    if (!rendered.ok) {
      problems.push(`${path} could not be made: ${rendered.problem}`);
      return 0;
    }
    pages.push(pageLinks(path, rendered.html));
    const html = view.frame.inlined ? compactPage(rendered.html) : rendered.html;
    add(path, html);
    return Buffer.byteLength(html);
  };

  const pictures = new Map<string, PictureView>();
  const shown = new Map<string, LinkedFile>();
  const publish = async (wish: PictureWish): Promise<boolean> => {
    const bytes = read.read(wish.path);
    const picture = bytes && (await publishPicture(wish, bytes, store));
    if (!picture) {
      problems.push(`${wish.path} could not be published as it was when it was checked`);
      return false;
    }
    for (const file of picture.files) addHeavy(file.path, file.bytes);
    shown.set(wish.path, { path: wish.path, hash: sha256(bytes) });
    pictures.set(pictureKey(wish), picture.view);
    return picture.turns;
  };
  const { logo } = shop.settings;
  if (logo) await publish({ path: logo.value, figure: null });
  const { drawing = null } = shop.platforms.get(published.guide.platform.value) ?? {};
  if (drawing && published.guide.zones.size > 0) for (const wish of wishOf(drawing)) await publish(wish);
  const isUndone = published.guide.sections.some(({ steps }) => steps.some(isDerived));
  for (const wish of published.guide.pictures.flatMap(wishOf)) {
    const turns = await publish(wish);
    if (turns && isUndone) await publish({ ...wish, turned: true });
  }

  const looks = [...published.guide.items.values()].flatMap((item) => pictureOfItem(item, shop) ?? []);
  for (const wish of looks.flatMap(wishOf)) if (!pictures.has(pictureKey(wish))) await publish(wish);

  const linked = new Set<string>();
  const asksFor = new Set<string>();
  const stock: Stock = {
    pictures,
    pageOf: (path) => {
      note({ of: 'page', name: path });
      asksFor.add(path);
      return pageOf(path);
    },
    files: shop.files,
    linked: (path) => linked.add(path),
  };
  const folder = guideFolder(published.guide);
  const cuts = layOutTemplates(published, shop, kit.fonts);
  for (const cut of pageAlone ? [] : [...cuts.values()].flatMap((one) => one.files))
    addHeavy(folder + cut.path, await cut.write());
  const root = '../../';
  const { standing = null } = published;
  const changed = standing && !standing.isCurrent ? overlays(...standing.records) : [];
  for (const { name, svg } of changed) add(folder + cutFolder + name, svg);
  const context: PageContext = {
    shop,
    root,
    shelf: shelfOf(stock, root, cuts),
    standing,
    overlays: changed.map(({ name, title }) => ({
      href: cutFolder + name,
      text: `${title}: the line to cut as it was and as it is, at full size`,
    })),
  };
  const { path, views, feet, data } = guideFiles(published, context);
  for (const file of [feet, ...(pageAlone ? [] : data())]) add(file.path, file.content);

  const alonePath = singleFilePath(published.guide);
  const parts = {
    kit,
    page: context,
    read: (file: string) => contents.get(file) ?? '',
  };
  const size = pageAlone ? null : addPage(alonePath, singleFileView(views, published, parts));
  const weight = size === null ? '' : `, ${weightWords(size)}`;
  const link = { href: alonePath.slice(folder.length), text: `One file for a phone${weight}` };
  addPage(path, { ...views.page, alone: link });
  if (!pageAlone) {
    addPage(`${folder}rehearsal.html`, views.rehearsal(), 'rehearsal.liquid');
    addPage(`${folder}${CARDS_PAGE}`, views.cards(cards), 'cards.liquid');
  }
  return {
    files: [...files.values()],
    linked: [...linked].flatMap((path) => linkedFile(path, making) ?? []),
    shown: [...shown.values()],
    pages,
    asksFor: [...asksFor],
    alone: { path: alonePath, size: size ?? 0 },
    heavy: [...heavy].map(([path, size]) => ({ path, size })),
    face: faceOf(published.guide, pictures),
    problems,
  };
}

const isDerived = ({ origins }: Step) => origins.some(({ kind }) => kind === 'reverse');

/**
 * The picture by which lists show a guide: the author's first photograph, else the last drawing, which shows most of
 * what is fitted. Pictures of procedures are shared, and tell no guide from another; that of a single thing tells little.
 */
function faceOf(
  { file, pictures, items }: PublishedGuide['guide'],
  published: ReadonlyMap<string, PictureView>,
): PictureView | null {
  const things = new Set([...items.values()].map(({ picture }) => picture));
  const folder = file.slice(0, file.lastIndexOf('/') + 1);
  const own = pictures.filter((one) => one.path?.startsWith(folder) && !things.has(one));
  const views = own.flatMap(wishOf).flatMap((wish) => published.get(pictureKey(wish)) ?? []);
  return views.find(({ sources }) => sources.length > 0) ?? views.at(-1) ?? null;
}

/** The picture of the workspace that a text shows. */
export function wishOf({ path, figure }: PictureFact): readonly PictureWish[] {
  return path === null ? [] : [{ path, figure }];
}

function linkedFile(path: string, { seen }: GuideMaking): LinkedFile | null {
  const bytes = seen.files.read(path);
  return bytes && { path, hash: sha256(bytes) };
}

/** The place of a linked file in the site. */
export function linkedPath({ path }: LinkedFile): string {
  return linkedFolder + path;
}
