import { relative } from 'node:path';
import { quotedList } from '../../diagnostics/suggest.ts';
import type { Verdict } from '../../shop/inspect/verdict.ts';
import { buildSite } from '../../site/build-site.ts';
import { openOutputFolder } from '../../site/folder/output-folder.ts';
import { fileHashes } from '../../store/file-hashes.ts';
import type { ExitCode, Io } from '../io.ts';
import { type CheckOptions, exitCodeOf, printVerdict } from '../output.ts';
import { progressBar } from '../progress.ts';
import { nowInNanoseconds, workOn } from '../work.ts';
import { outputFolder, workspaceFolder } from '../workspace.ts';

export interface BuildOptions extends CheckOptions {
  readonly out?: string;
  readonly keepGoing?: boolean;
}

/** Where the site goes. */
export function siteFolder({ out }: Pick<BuildOptions, 'out'>): string {
  return out ?? 'site';
}

/** Work that no build has asked for in so long is removed; until then a change back costs no time. */
const KEPT_DAYS = 30;

/** `baybook build`: checks the workspace and, where it is sound, publishes it as a site. */
export async function build(options: BuildOptions, io: Io): Promise<ExitCode> {
  const workspace = await workspaceFolder(options.guides, io);
  const place = outputFolder(siteFolder(options), workspace, io);
  const folder = openOutputFolder(place, Date.now());
  if ('heldBy' in folder) {
    io.err(`nothing was published: ${folder.heldBy}\n`);
    return 1;
  }
  const bar = progressBar(io);
  const { work, done } = workOn(workspace.root, io, options.threads, bar.show);
  const hashes = fileHashes(place, io.store, nowInNanoseconds);
  const keepGoing = options.keepGoing === true;
  const refuse = (verdict: Verdict) =>
    whyNotPublished(verdict, exitCodeOf(verdict, options.strict === true), keepGoing);
  const { verdict, outcome, notices } = await buildSite(work, folder, { keepGoing, refuse, hashes }).finally(
    () => {
      bar.stop();
      folder.close();
    },
  );
  done();
  hashes.save();
  for (const notice of notices) io.err(`${notice}\n`);
  if (!outcome.ok) {
    const refused = refuse(verdict);
    const closing = refused === null ? '' : `nothing was published: ${refused}\n`;
    await printVerdict(verdict, work.files, options, workspace.prefix, closing, io);
    for (const problem of outcome.problems)
      if (problem !== refused) io.err(`nothing was published: ${problem}\n`);
    return 1;
  }
  io.store.prune(KEPT_DAYS);
  const { files: all, written, removed } = outcome;
  const where = relative(io.cwd, place) || '.';
  const closing = `${where}: ${all.length} files, ${written.length} new or changed, ${removed.length} removed\n`;
  await printVerdict(verdict, work.files, options, workspace.prefix, closing, io);
  return exitCodeOf(verdict, options.strict === true);
}

function whyNotPublished(
  { soundGuides, brokenForAll }: Verdict,
  code: ExitCode,
  keepGoing: boolean,
): string | null {
  if (code === 0) return null;
  if (!keepGoing) return 'the guides have faults, and the last site stays as it is';
  if (brokenForAll.length > 0)
    return `every guide depends on ${quotedList(brokenForAll, 'and')}, which must be mended first`;
  return soundGuides.size === 0 ? 'no guide is sound' : null;
}
