import { didYouMean, nearest } from '../diagnostics/suggest.ts';
import { type Checked, checkGuides } from '../site/check-guides.ts';
import type { Work } from '../site/work.ts';
import { type ExitCode, type Io, UsageError } from './io.ts';
import { type CheckOptions, exitCodeOf, printVerdict, templatesInWords } from './output.ts';
import { workOn } from './work.ts';
import { workspaceFolder } from './workspace.ts';

/**
 * `baybook check`: checks the guides that are named, or the whole workspace, and prints what it finds, with `--read`
 * the steps too.
 */
export async function check(
  guides: readonly string[],
  options: CheckOptions & { readonly read?: boolean },
  io: Io,
): Promise<ExitCode> {
  const { root, prefix } = await workspaceFolder(options.guides, io);
  const { work, done } = workOn(root, io, options.threads);
  const { notices, ...verdict } =
    guides.length === 0 ? await checkGuides(work) : await checkNamed(guides, work);
  done();
  for (const notice of notices) io.err(`${notice}\n`);
  if (options.format === 'text') io.out(templatesInWords(verdict.templates, prefix));
  await printVerdict(verdict, work.files, options, prefix, '', io);
  if (options.read) await (await import('./read-guides.ts')).readGuides(root, guides, io);
  return exitCodeOf(verdict, options.strict === true);
}

async function checkNamed(guides: readonly string[], work: Work): Promise<Checked> {
  const { checkSome } = await import('../site/check-some.ts');
  const checked = await checkSome(work, guides);
  if (!('unknown' in checked)) return checked;
  const help =
    didYouMean(nearest(checked.unknown, checked.guides)) || `there are ${checked.guides.join(', ')}`;
  throw new UsageError(`there is no guide "${checked.unknown}"; ${help}`);
}
