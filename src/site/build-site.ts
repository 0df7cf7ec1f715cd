import { conclude, type Verdict } from '../shop/verdict.ts';
import type { FileHashes } from '../store/file-hashes.ts';
import { noStore, readContent } from '../store/store.ts';
import { type AssembledSite, assembleSite } from './assemble.ts';
import { type OpenWork, openWork } from './check-guides.ts';
import type { OutputFolder, Published, SiteFile } from './folder/output-folder.ts';
import type { MadeFile } from './guides/made.ts';
import { runGuides } from './guides/run-guides.ts';
import { type GuideResult, type TurnGround, takeTurn, turnGround } from './guides/turn.ts';
import { ownIdentity } from './identity.ts';
import { publicationOf, unpublishedFiles } from './publication.ts';
import { sitePages } from './site-pages.ts';
import { type KeptRun, readRun, type Work, workspaceHash, writeRun } from './work.ts';

/** Where a site goes, and when. */
export interface SiteOptions {
  /** Publishes the sound guides even where others have errors. */
  readonly keepGoing: boolean;
  /** Says in a sentence why what was found keeps the site from being published; `null` where it does not. */
  readonly refuse: (verdict: Verdict) => string | null;
  /** What is known of the files of the output folder. */
  readonly hashes: FileHashes;
}

/** A site that was published, or why nothing was touched, one sentence each. */
export type SiteOutcome =
  | (Published & { readonly ok: true })
  | { readonly ok: false; readonly problems: readonly string[] };

/** What a build has found and done. */
export interface SiteBuild {
  readonly verdict: Verdict;
  readonly outcome: SiteOutcome;
  /** What whoever builds the site should know of it, one line each. */
  readonly notices: readonly string[];
}

/**
 * Checks a workspace and publishes it as a site. What is not new is neither worked out nor written again, and a
 * build that fails leaves the last site as it was. Throws what the file system refuses.
 */
export async function buildSite(work: Work, folder: OutputFolder, options: SiteOptions): Promise<SiteBuild> {
  const identity = ownIdentity();
  const state = await workspaceHash(work, identity);
  const kind = options.keepGoing ? 'site of the sound' : 'site';
  const kept = readRun(work.store, state, kind);
  const again = kept && (await publishKept(kept, work, folder, options));
  if (again) return again;

  const open = await openWork(work, identity, true);
  const { workspace, ground } = open;
  const run = await runGuides(workspace.found.guides, ground, work);
  const verdict = conclude(workspace, run.results);
  const refused = run.results.flatMap(({ problems, made }) => (made ? [] : problems));
  const why = options.refuse(verdict);
  if (why !== null || refused.length > 0) {
    const problems = [...(why === null ? [] : [why]), ...refused];
    return { verdict, outcome: { ok: false, problems }, notices: run.notices };
  }
  const unpublished = unpublishedFiles(workspace, run.results, verdict);
  const pageOf = sitePages(workspace, unpublished);
  const results = await withoutLinksTo(unpublished, run.results, turnGround({ ...ground, pageOf }));
  const site = await assembleGround(open, results, verdict, pageOf);
  const notices = [...run.notices, ...site.notices];
  if (site.problems.length > 0) return { verdict, outcome: { ok: false, problems: site.problems }, notices };

  const makers = new Map(
    results.flatMap(({ path, made }) => made?.files.map((file) => [file.path, path]) ?? []),
  );
  const files = site.files.map((file) => [file.path, siteFile(file, makers.get(file.path), ground)] as const);
  const outcome = outcomeOf(await folder.publish(new Map(files), options.hashes));
  if (outcome.ok && (await workspaceHash(work, identity)) === state) {
    writeRun(work.store, state, kind, {
      ...verdict,
      soundGuides: [...verdict.soundGuides],
      site: site.files.map(({ path, hash }) => [path, hash]),
      notices: site.notices,
    });
  }
  return { verdict, outcome, notices };
}

/** Publishes what a run gave that had the same to work on; `null` where the store has lost some of it. */
async function publishKept(
  kept: KeptRun,
  { store }: Work,
  folder: OutputFolder,
  { hashes, refuse }: SiteOptions,
): Promise<SiteBuild | null> {
  const verdict = { ...kept, soundGuides: new Set(kept.soundGuides) };
  if (!kept.site || refuse(verdict) !== null) return null;
  const missing = kept.site.some(([path, hash]) => hashes.of(path) !== hash && !readContent(store, hash));
  if (missing) return null;
  const files = kept.site.map(
    ([path, hash]) => [path, { hash, bytes: () => keptBytes(store, hash) }] as const,
  );
  const outcome = outcomeOf(await folder.publish(new Map(files), hashes));
  return { verdict, outcome, notices: kept.notices };
}

function keptBytes(store: Work['store'], hash: string): Uint8Array {
  const bytes = readContent(store, hash);
  if (!bytes) throw new Error('the store was changed while the site was being written; build again');
  return bytes;
}

/** Guides that link to what stays out of the site are made once more, without those links. */
async function withoutLinksTo(
  unpublished: ReadonlySet<string>,
  results: readonly GuideResult[],
  ground: TurnGround,
): Promise<readonly GuideResult[]> {
  const all: GuideResult[] = [];
  for (const result of results) {
    const again = result.made?.asksFor.some((path) => unpublished.has(path));
    all.push(again ? await takeTurn(result.path, ground) : result);
  }
  return all;
}

function assembleGround(
  { workspace, ground }: OpenWork,
  results: readonly GuideResult[],
  verdict: Verdict,
  pageOf: (path: string) => string | null,
): Promise<AssembledSite> {
  const { kit, store, basis } = ground;
  if (!kit) throw new Error('a site is made with a kit');
  const publication = publicationOf(workspace, results, verdict);
  return assembleSite(publication, { files: workspace.files, store, kit, basis, pageOf });
}

/** A file for the output folder. What the store has lost since is made once more. */
function siteFile({ path, hash, bytes }: MadeFile, maker: string | undefined, ground: TurnGround): SiteFile {
  return {
    hash,
    bytes: async () => {
      const known = bytes ?? readContent(ground.store, hash);
      if (known) return known;
      const again = maker === undefined ? null : await takeTurn(maker, { ...ground, store: noStore });
      const file = again?.made?.files.find((one) => one.path === path);
      if (file?.hash === hash && file.bytes) return file.bytes;
      throw new Error(`${path} is neither in the store nor made again to the same bytes; build again`);
    },
  };
}

function outcomeOf(published: Published | { readonly inTheWay: readonly string[] }): SiteOutcome {
  if (!('inTheWay' in published)) return { ok: true, ...published };
  return { ok: false, problems: published.inTheWay.map(inTheWayWords) };
}

function inTheWayWords(path: string): string {
  return `${path} in the output folder was not written by Baybook; move it away, or choose another folder`;
}
