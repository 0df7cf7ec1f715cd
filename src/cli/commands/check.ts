import { didYouMean, nearest } from '../../diagnostics/suggest.ts';
import { type Checked, checkGuides } from '../../site/check-guides.ts';
import type { Work } from '../../site/work.ts';
import { type ExitCode, type Io, UsageError } from '../io.ts';
import { type CheckOptions, exitCodeOf, printVerdict, templatesInWords } from '../output.ts';
import { workOn } from '../work.ts';
import { workspaceFolder } from '../workspace.ts';

/**
 * `baybook check`: checks the guides that are named, or the whole workspace, and prints what it finds, with `--read`
 * the steps too.
 */
export async function check(
  guides: readonly string[],
  options: CheckOptions & { readonly read?: boolean; readonly fix?: boolean; readonly yes?: boolean },
  io: Io,
): Promise<ExitCode> {
  const { root, prefix } = await workspaceFolder(options.guides, io);
  const { work, done } = workOn(root, io, options.threads);
  const checkThem = (some: Work) => (guides.length === 0 ? checkGuides(some) : checkNamed(guides, some));
  if (options.fix) {
    if (options.format !== 'text')
      throw new UsageError('--fix shows what it changes as text; leave out --format');
    const { fixGuides } = await import('./fix.ts');
    await fixGuides(work, { root, prefix, write: options.yes === true }, checkThem, io);
  }
  const { notices, ...verdict } = await checkThem(work);
  done();
  for (const notice of notices) io.err(`${notice}\n`);
  if (options.format === 'text') io.out(templatesInWords(verdict.templates, prefix));
  await printVerdict(verdict, work.files, options, prefix, '', io);
  if (options.read) await (await import('../read-guides.ts')).readGuides(root, guides, io);
  return exitCodeOf(verdict, options.strict === true);
}

async function checkNamed(guides: readonly string[], work: Work): Promise<Checked> {
  const { checkSome } = await import('../../site/check-some.ts');
  const checked = await checkSome(work, guides);
  if (!('unknown' in checked)) return checked;
  const help = didYouMean(nearest(checked.unknown, checked.known)) || `there are ${checked.known.join(', ')}`;
  throw new UsageError(`there is no guide "${checked.unknown}"; ${help}`);
}
