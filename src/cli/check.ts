import { checkGuides } from '../site/check-guides.ts';
import type { ExitCode, Io } from './io.ts';
import { type CheckOptions, exitCodeOf, printVerdict } from './output.ts';
import { workOn } from './work.ts';
import { workspaceFolder } from './workspace.ts';

/** `baybook check`: checks the whole workspace and prints what it finds, with `--read` the steps too. */
export async function check(options: CheckOptions & { readonly read?: boolean }, io: Io): Promise<ExitCode> {
  const { root, prefix } = await workspaceFolder(options.guides, io);
  const { work, done } = workOn(root, io, options.threads);
  const { notices, ...verdict } = await checkGuides(work);
  done();
  for (const notice of notices) io.err(`${notice}\n`);
  await printVerdict(verdict, work.files, options, prefix, '', io);
  if (options.read) await (await import('./read-guides.ts')).readGuides(root, io);
  return exitCodeOf(verdict, options.strict === true);
}
