import { checkGuides } from '../site/check-guides.ts';
import type { ExitCode, Io } from './io.ts';
import { type CheckOptions, exitCodeOf, printVerdict } from './output.ts';
import { workOn } from './work.ts';
import { workspaceFolder } from './workspace.ts';

/** `baybook check`: checks the whole workspace and prints what it finds. */
export async function check(options: CheckOptions, io: Io): Promise<ExitCode> {
  const { root, prefix } = await workspaceFolder(options.guides, io);
  const { work, done } = workOn(root, io);
  const { notices, ...verdict } = await checkGuides(work);
  done();
  for (const notice of notices) io.err(`${notice}\n`);
  await printVerdict(verdict, work.files, options, prefix, '', io);
  return exitCodeOf(verdict, options.strict === true);
}
