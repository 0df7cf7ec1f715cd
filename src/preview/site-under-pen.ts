import { renderText } from '../diagnostics/render-text.ts';
import { countFindings } from '../diagnostics/summary.ts';
import type { Shop } from '../model/shop.ts';
import { guideFolder } from '../pages/frame/context.ts';
import { fileId } from '../shop/discover.ts';
import { sourcesOf } from '../shop/files/sources-of.ts';
import { ChangedMeanwhile } from '../shop/files/steady-files.ts';
import { readText } from '../shop/files/text-files.ts';
import { conclude } from '../shop/inspect/verdict.ts';
import { assembleSite, assetFiles } from '../site/assemble.ts';
import { KEPT_UNASKED } from '../site/device/parcels.ts';
import { readKept } from '../site/guides/kept.ts';
import type { LinkedFile, MadeFile } from '../site/guides/made.ts';
import { linkedPath } from '../site/guides/make-guide.ts';
import { runGuides } from '../site/guides/run-guides.ts';
import { type GuideResult, takeTurn, turnGround } from '../site/guides/turn.ts';
import { type OpenWork, openWork } from '../site/open-work.ts';
import { publicationOf } from '../site/publication.ts';
import { guideId, sitePages } from '../site/site-pages.ts';
import type { Work } from '../site/work.ts';
import { sha256 } from '../store/content-hash.ts';
import { readContent } from '../store/store.ts';
import { editedPlace } from './edited-place.ts';

/** What a page that is open is told: what it shows by now, and what is wrong with its guide. */
export interface News {
  /** Differs where any file of the page does; `null` where there has never been a good page. */
  readonly edition: string | null;
  /** The place of the last edit, as an id on the page. */
  readonly place: string | null;
  readonly errors: number;
  readonly warnings: number;
  /** The findings as `check` prints them; empty without any. */
  readonly told: string;
}

/** A guide, or a visit, that is looked at. */
interface Standing {
  readonly news: News;
  /** The files of the guides that a visit is made of; `null` where any can be, since it could not be planned. */
  readonly madeOf: readonly string[] | null;
  /** `null` where it has never had a good page. */
  readonly good: GoodPage | null;
}

/** What belongs to the last good page of a guide, by its path in the site. */
interface GoodPage {
  /** The guide's text; edits since then are told by it, whatever half-written states lie between. */
  readonly text: string;
  readonly files: ReadonlyMap<string, MadeFile>;
  /** Files of the workspace that it links to. */
  readonly linked: ReadonlyMap<string, LinkedFile>;
  /** Everything that the page leads to (sheets at full scale, data, rehearsal, the guide as one file): made when it is first asked for. */
  readonly whole: () => Promise<ReadonlyMap<string, MadeFile>>;
}

/** A workspace as a site that follows the pen: what is asked for is made, and made again when it changes. */
export interface SiteUnderPen {
  /** The pages of all guides, then those of all visits, each sorted. */
  readonly pages: () => readonly string[];
  /** The bytes at a path from the site's root; `null` where the site has nothing there. */
  readonly file: (path: string) => Promise<Uint8Array | null>;
  /** What there is to tell about a page, by its path; a page that is about no single guide changes with all. */
  readonly news: (path: string) => Promise<News>;
  /** What the shop and the platforms call what a guide takes from them, by id. */
  readonly known: () => ReadonlyMap<string, string>;
  /** Takes in that files have changed; `whole` where more than the text of guides has. */
  readonly changed: (paths: readonly string[], whole: boolean) => Promise<void>;
}

/** Opens a workspace to be looked at while it is written; nothing is made before it is asked for. */
export async function siteUnderPen(work: Work, identity: string): Promise<SiteUnderPen> {
  let open = await openWork(work, identity, true);
  let edition = 0;
  let shared: Promise<ReadonlyMap<string, MadeFile>> | null = null;
  let rest: Promise<ReadonlyMap<string, MadeFile>> | null = null;
  const standing = new Map<string, Standing>();

  const stand = async (path: string): Promise<Standing> => {
    const there = standing.get(path);
    if (there) return there;
    const ground = open;
    const made = await standingOf(path, ground, null);
    // What changed while it was made is not in it, and it was not there yet to be made anew.
    if (open !== ground) return stand(path);
    standing.set(path, made);
    return made;
  };
  const guideAt = (path: string): string | null =>
    known().find((one) => path.startsWith(pageUnderPen(one).replace(/index\.html$/, ''))) ?? null;
  // A guide whose file has gone still shows its last good page.
  const known = () => {
    const { guides, visits } = open.workspace.found;
    return [...new Set([...guides, ...visits, ...standing.keys()])];
  };
  return {
    pages: () => known().map(pageUnderPen).sort(),
    file: async (path) => {
      const guide = guideAt(path);
      if (guide !== null) await stand(guide);
      for (const one of standing.values()) {
        const bytes = fileOf(one, path, open);
        if (bytes) return bytes;
      }
      if (guide !== null) return wholeFileOf(await stand(guide), path, open);
      shared ??= sharedFiles(open);
      const asset = (await shared).get(path);
      if (asset) return bytesOf(asset, open);
      rest ??= restOfSite(open, work);
      const file = (await rest).get(path);
      return file ? bytesOf(file, open) : null;
    },
    news: async (path) => {
      const guide = guideAt(path);
      if (guide !== null) return (await stand(guide)).news;
      return { edition: String(edition), place: null, errors: 0, warnings: 0, told: '' };
    },
    known: () => namesOf(open.workspace.shop),
    changed: async (paths, whole) => {
      rest = null;
      if (whole) {
        open = await openWork(work, identity, true);
        shared = null;
        edition += 1;
      } else {
        open = { ...open, ground: turnGround(open.ground) };
      }
      for (const [path, before] of standing) {
        const isChanged = paths.includes(path) || (before.madeOf ?? paths).some((one) => paths.includes(one));
        if (whole || isChanged) standing.set(path, await standingOf(path, open, before));
      }
    },
  };
}

/** Takes the turn of a guide, and keeps its last good page where it has none now. */
async function standingOf(path: string, open: OpenWork, before: Standing | null): Promise<Standing> {
  const { workspace, ground } = open;
  const text = readText(workspace.files, path)?.text;
  if (text === undefined) return gone(path, before);
  const result = await settled(path, open);
  const isVisit = workspace.found.visits.includes(path);
  const { findings } = isVisit ? conclude(workspace, [], [result]) : conclude(workspace, [result]);
  const context = { sources: sourcesOf(findings, workspace.files), prefix: '' };
  const printed = renderText(findings, context, { colour: false, width: 100 });
  const made = result.problems.length === 0 ? result.made : null;
  const good = made
    ? {
        text,
        files: new Map(made.files.map((file) => [file.path, file])),
        linked: new Map(made.linked.map((file) => [linkedPath(file), file])),
        whole: wholeOf(path, open),
      }
    : (before?.good ?? null);
  const { errors, warnings } = countFindings(findings);
  return {
    good,
    madeOf: isVisit ? (result.summary?.visit?.map((id) => `${id}/guide.md`) ?? null) : [],
    news: {
      edition: good && editionOf(good, ground.basis),
      place: before?.good ? editedPlace(before.good.text, text) : null,
      errors: errors + result.problems.length,
      warnings,
      told: [...result.problems, printed].filter((part) => part !== '').join('\n\n'),
    },
  };
}

function gone(path: string, before: Standing | null): Standing {
  const told = `${path} is not there; it was renamed or taken away`;
  const news = { edition: before?.news.edition ?? null, place: null, errors: 1, warnings: 0, told };
  return { news, good: before?.good ?? null, madeOf: [] };
}

/** What a guide gives once nobody writes its files while they are read. */
async function settled(path: string, { workspace, ground }: OpenWork): Promise<GuideResult> {
  const kept = readKept(path, ground);
  if (kept) return kept;
  const first = await takeTurn(path, ground, true);
  const torn = first.facts === null && first.problems.length > 0;
  return torn ? takeTurn(path, turnGround({ ...ground, workspace }), true) : first;
}

/** Makes a guide whole, once. */
function wholeOf(path: string, { ground }: OpenWork): GoodPage['whole'] {
  let made: Promise<ReadonlyMap<string, MadeFile>> | null = null;
  const make = async () => {
    const result = readKept(path, ground) ?? (await takeTurn(path, ground));
    return new Map((result.made?.files ?? []).map((file) => [file.path, file]));
  };
  return () => {
    made ??= make();
    return made;
  };
}

async function wholeFileOf({ good }: Standing, path: string, open: OpenWork): Promise<Uint8Array | null> {
  const file = (await good?.whole())?.get(path);
  return file ? bytesOf(file, open) : null;
}

function editionOf({ files }: GoodPage, basis: string): string {
  return sha256([basis, ...[...files.values()].map(({ path, hash }) => `${path} ${hash}`)].join('\n'));
}

function fileOf({ good }: Standing, path: string, open: OpenWork): Uint8Array | null {
  const made = good?.files.get(path);
  if (made) return bytesOf(made, open);
  const link = good?.linked.get(path);
  return link ? open.workspace.files.read(link.path) : null;
}

function bytesOf({ bytes, hash }: MadeFile, { ground }: OpenWork): Uint8Array | null {
  return bytes ?? readContent(ground.store, hash);
}

/** What every page stands on, made without any guide. */
async function sharedFiles({
  workspace,
  ground: { kit, store },
}: OpenWork): Promise<ReadonlyMap<string, MadeFile>> {
  if (!kit) throw new Error('a preview is made with a kit');
  const files = await assetFiles(workspace.shop.settings, { kit, store });
  return new Map(files.map((file) => [file.path, file]));
}

/** The pages about all guides, for which each guide has to have had its turn. */
async function restOfSite(open: OpenWork, work: Work): Promise<ReadonlyMap<string, MadeFile>> {
  const { workspace, ground } = open;
  const { kit, store, basis } = ground;
  if (!kit) throw new Error('a preview is made with a kit');
  const { guides, visits } = workspace.found;
  const { results } = await runGuides([...guides, ...visits], ground, work);
  const verdict = conclude(workspace, results.slice(0, guides.length), results.slice(guides.length));
  const publication = publicationOf(workspace, results, verdict);
  const { files, shown } = workspace;
  const sitePlan = {
    files,
    shown,
    store,
    kit,
    basis,
    pageOf: sitePages(workspace),
    keptUnasked: KEPT_UNASKED,
  };
  const site = await assembleSite(publication, sitePlan).catch((error: unknown) => {
    // A file has changed under it; the next change of the workspace makes it anew.
    if (error instanceof ChangedMeanwhile) return { files: [] };
    throw error;
  });
  return new Map(site.files.map((file) => [file.path, file]));
}

function namesOf({ crib, supplies, fastenerTypes, platforms }: Shop): ReadonlyMap<string, string> {
  const shared = [crib, supplies, fastenerTypes].flatMap((list) => [...list]);
  const parts = [...platforms.values()].flatMap((platform) => [...platform.parts]);
  return new Map([...shared, ...parts].map(([id, { noun }]) => [id, noun.label]));
}

/** The page of a guide, or of a visit, from the site's root. */
export function pageUnderPen(path: string): string {
  const isVisit = path.startsWith('visits/');
  return `${guideFolder({ id: isVisit ? fileId(path) : guideId(path), visit: isVisit || null })}index.html`;
}
