import { relative } from 'node:path';
import { listed } from '../diagnostics/suggest.ts';
import { diskFiles, type Inspection, inspect } from '../shop/index.ts';
import { buildSite } from '../site/build-site.ts';
import { readFonts } from '../site/fonts.ts';
import type { ExitCode, Io } from './io.ts';
import { type CheckOptions, exitCodeOf, printInspection } from './output.ts';
import { progressBar } from './progress.ts';
import { outputFolder, workspaceFolder } from './workspace.ts';

interface BuildOptions extends CheckOptions {
  readonly out: string;
  readonly keepGoing?: boolean;
}

/** Derived pictures that no build has asked for in so long are removed; until then a change back costs no time. */
const KEPT_DAYS = 30;

/** `baybook build`: checks the workspace and, where it is sound, publishes it as a site. */
export async function build(options: BuildOptions, io: Io): Promise<ExitCode> {
  const workspace = await workspaceFolder(options.guides, io);
  const folder = outputFolder(options.out, workspace, io);
  const files = diskFiles(workspace.root);
  const inspection = await inspect(files, io.store, await readFonts());
  const code = exitCodeOf(inspection, options.strict === true);
  const keepGoing = options.keepGoing === true;
  const blocked = whyNotPublished(inspection, code, keepGoing);
  if (blocked !== null) {
    printInspection(inspection, options, workspace.prefix, `nothing was published: ${blocked}\n`, io);
    return 1;
  }
  const bar = progressBar(io);
  const outcome = await buildSite(inspection, files, folder, {
    keepGoing,
    pictures: io.store,
    progress: bar.show,
  }).finally(bar.stop);
  if (!outcome.ok) {
    printInspection(inspection, options, workspace.prefix, '', io);
    for (const problem of outcome.problems) io.err(`nothing was published: ${problem}\n`);
    return 1;
  }
  io.store.prune(KEPT_DAYS);
  const { files: all, written, removed, notices } = outcome;
  for (const notice of notices) io.err(`${notice}\n`);
  const place = relative(io.cwd, folder) || '.';
  const closing = `${place}: ${all.length} files, ${written.length} new or changed, ${removed.length} removed\n`;
  printInspection(inspection, options, workspace.prefix, closing, io);
  return code;
}

function whyNotPublished(
  { soundGuides, brokenForAll }: Inspection,
  code: ExitCode,
  keepGoing: boolean,
): string | null {
  if (code === 0) return null;
  if (!keepGoing) return 'the guides have faults, and the last site stays as it is';
  if (brokenForAll.length > 0)
    return `every guide depends on ${listed(brokenForAll, 'and')}, which must be mended first`;
  return soundGuides.size === 0 ? 'no guide is sound' : null;
}
