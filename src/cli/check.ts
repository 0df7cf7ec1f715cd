import { diskFiles, inspect } from '../shop/index.ts';
import { readFonts } from '../site/fonts.ts';
import type { ExitCode, Io } from './io.ts';
import { type CheckOptions, exitCodeOf, printInspection } from './output.ts';
import { workspaceFolder } from './workspace.ts';

/** `baybook check`: checks the whole workspace and prints what it finds. */
export async function check(options: CheckOptions, io: Io): Promise<ExitCode> {
  const { root, prefix } = await workspaceFolder(options.guides, io);
  const inspection = await inspect(diskFiles(root), io.store, await readFonts());
  printInspection(inspection, options, prefix, '', io);
  return exitCodeOf(inspection, options.strict === true);
}
