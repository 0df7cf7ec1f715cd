import type { Verdict } from '../shop/inspect/verdict.ts';
import type { FileHashes } from '../store/file-hashes.ts';
import { readContent } from '../store/store.ts';
import type { Blocked, OutputFolder, Published, SiteFile } from './folder/output-folder.ts';
import { ownIdentity } from './identity.ts';
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
interface SiteBuild {
  readonly verdict: Verdict;
  readonly outcome: SiteOutcome;
  /** What whoever builds the site should know of it, one line each. */
  readonly notices: readonly string[];
}

/** A site that has been made and waits to be published, or why it cannot be, one sentence each. */
export interface MadeSite {
  readonly verdict: Verdict;
  readonly notices: readonly string[];
  readonly problems: readonly string[];
  readonly files: ReadonlyMap<string, SiteFile>;
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

  // Loaded only where there is something new: it brings nearly all of the program.
  const { makeSite } = await import('./make-site.ts');
  const { verdict, notices, problems, files } = await makeSite(work, identity, options.refuse);
  if (problems.length > 0) return { verdict, outcome: { ok: false, problems }, notices };
  const published = await folder.publish(files, options.hashes);
  const outcome = outcomeOf(published);
  if (outcome.ok && (await workspaceHash(work, identity)) === state) {
    writeRun(work.store, state, kind, {
      ...verdict,
      soundGuides: [...verdict.soundGuides],
      site: [...files].map(([path, { hash }]) => [path, hash]),
      notices,
    });
  }
  return { verdict, outcome, notices: [...notices, ...published.notices] };
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
  const published = await folder.publish(new Map(files), hashes);
  return { verdict, outcome: outcomeOf(published), notices: [...kept.notices, ...published.notices] };
}

function keptBytes(store: Work['store'], hash: string): Uint8Array {
  const bytes = readContent(store, hash);
  if (!bytes) throw new Error('the store was changed while the site was being written; build again');
  return bytes;
}

function outcomeOf(published: Published | Blocked): SiteOutcome {
  if (!('inTheWay' in published)) return { ok: true, ...published };
  return { ok: false, problems: published.inTheWay.map(inTheWayWords) };
}

function inTheWayWords(path: string): string {
  return `${path} in the output folder was not written by Baybook; move it away, or choose another folder`;
}
