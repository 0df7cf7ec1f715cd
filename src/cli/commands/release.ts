import { appendFile, mkdir, readFile, stat, writeFile } from 'node:fs/promises';
import { dirname, join, posix } from 'node:path';
import { traitsInWords } from '../../job/builds/build-words.ts';
import type { Build, Option } from '../../model/when.ts';
import { appendix, isDate, recordsFolder, releasesFile } from '../../release/entries.ts';
import { type GuideRecord, type ReleaseFacts, recordHash, recordText } from '../../release/record.ts';
import { recordOf } from '../../release/record-of.ts';
import { isNameable, isRaised } from '../../release/revision.ts';
import { diskFiles } from '../../shop/files/disk-files.ts';
import { checked } from '../../shop/inspect/inspect.ts';
import { type InspectedGuide, inspectGuide } from '../../shop/inspect/inspect-guide.ts';
import { conclude } from '../../shop/inspect/verdict.ts';
import { openWorkspace } from '../../shop/open-workspace.ts';
import { readFonts } from '../../site/fonts.ts';
import { guidePath } from '../guide-path.ts';
import { type ExitCode, type Io, UsageError } from '../io.ts';
import { printVerdict } from '../output.ts';
import { type WorkspaceFolder, workspaceFolder } from '../workspace.ts';

/** What a script says of a release; what it leaves out is asked of a person, where there is one. */
interface ReleaseOptions {
  readonly guides: string;
  readonly date?: string;
  readonly verified?: string;
  readonly build?: string;
  readonly note?: string;
  readonly measured: readonly string[];
}

type Sound = NonNullable<InspectedGuide['value']> & { readonly path: string };

/**
 * `baybook release`: writes what each guide is now as a record beside it, and in its `releases.yaml` who stands for it.
 * All guides or none, and nothing that stands is written over.
 */
export async function release(ids: readonly string[], options: ReleaseOptions, io: Io): Promise<ExitCode> {
  if (options.date !== undefined) dateOf(options.date);
  const workspace = await workspaceFolder(options.guides, io);
  const guides = await soundGuides([...new Set(ids)], workspace, options, io);
  if (!guides) return 1;
  const reasons = guides.flatMap((one) => unready(one) ?? []);
  if (reasons.length > 0) {
    io.err(reasons.map((reason) => `baybook: ${reason}\n`).join(''));
    io.err('nothing was released\n');
    return 1;
  }
  const named = measuredBy(options.measured, guides);
  const date = dateOf(await given(options.date, '--date', 'The date of the release, as in 2026-10-02:', io));
  const who = 'Who has done the job by this guide, on a vehicle?';
  const verified = await given(options.verified, '--verified', who, io);
  const records: { readonly path: string; readonly record: GuideRecord }[] = [];
  for (const one of guides) {
    const facts = await releaseFacts(one, { ...options, date, verified, named }, io);
    records.push({ path: one.path, record: { ...recordOf(one.guide, one.job), release: facts } });
  }
  for (const { path, record } of records) await write(path, record, workspace, io);
  return 0;
}

/** The guides that are named, all of them sound; else what is wrong is printed, and there are none. */
async function soundGuides(
  ids: readonly string[],
  { root, prefix }: WorkspaceFolder,
  { guides: folder }: ReleaseOptions,
  io: Io,
): Promise<readonly Sound[] | null> {
  const files = diskFiles(root);
  const opened = await openWorkspace(files, io.store, await readFonts());
  const paths = ids.map((id) => guidePath(id, opened));
  const inspected: InspectedGuide[] = [];
  for (const path of paths) inspected.push(await inspectGuide(path, opened));
  const verdict = conclude(opened, inspected.map(checked));
  const sound = inspected.flatMap(({ path, value }) =>
    value && verdict.soundGuides.has(value.guide.id) ? [{ ...value, path }] : [],
  );
  if (sound.length === paths.length) return sound;
  const asText = { guides: folder, format: 'text' } as const;
  await printVerdict(
    verdict,
    files,
    asText,
    prefix,
    'nothing was released: a guide with errors is not\n',
    io,
  );
  return null;
}

/** Why a guide cannot be released as it is written; `null` where it can. */
function unready({ guide, releases, path }: Sound): string | null {
  const latest = releases.at(-1)?.entry;
  const revision = guide.revision?.value;
  if (revision === undefined)
    return `${path} has no revision; write "revision: ${latest ? `above ${latest.revision}` : '1'}" in its front matter`;
  if (!isNameable(revision))
    return `"${revision}" in ${path} is no revision for a release, which is the name of a file; small letters, digits, dots and hyphens are`;
  if (latest && !isRaised(latest.revision, revision))
    return `${guide.id} was released as revision ${latest.revision} on ${latest.date}; raise "revision: ${revision}" in ${path} above it`;
  return null;
}

/** Who measured which template, from `--measured notch="J. Ode"`; one that no guide has is wrong usage. */
function measuredBy(written: readonly string[], guides: readonly Sound[]): ReadonlyMap<string, string> {
  const known = guides.flatMap(({ guide }) => [...guide.templates.keys()]);
  return new Map(
    written.map((one) => {
      const [, id, by] = /^\s*([^=\s]+)\s*=\s*(.*?)\s*$/.exec(one) ?? [];
      if (id === undefined || !by)
        throw new UsageError(`--measured takes a template and who measured it, as in notch="J. Ode"`);
      if (known.includes(id)) return [id, by];
      const help = known.length > 0 ? `there are ${known.join(', ')}` : 'there is none';
      throw new UsageError(`--measured: no cut template "${id}"; ${help}`);
    }),
  );
}

/** How one guide is released. */
async function releaseFacts(
  { guide, job }: Sound,
  said: Pick<ReleaseOptions, 'build' | 'note'> & {
    readonly date: string;
    readonly verified: string;
    readonly named: ReadonlyMap<string, string>;
  },
  io: Io,
): Promise<ReleaseFacts> {
  // What an inspection finds is told on the job, and belongs to no build.
  const deciding = guide.builds.options.filter(
    ({ id }) => job.decidingOptions.includes(id) && guide.items.get(id)?.kind !== 'inspection',
  );
  const build = await buildOf(deciding, said.build, guide.id, io);
  const plan = job.plans.find(({ builds }) => builds.some((one) => sameBuild(one, build, deciding)));
  if (!plan) throw new UsageError(`there is no vehicle ${inWords(build, deciding)} that ${guide.id} is for`);
  const measured: Record<string, string> = {};
  for (const { id, title } of guide.templates.values()) {
    const question = `Who has measured the template “${title}” (${id}) on paper?`;
    const flag = `--measured ${id}="…", for ${guide.id},`;
    measured[id] = await given(said.named.get(id), flag, question, io);
  }
  const note = said.note ?? (io.ask ? await io.ask(`A note on ${guide.id}, or nothing: `) : '');
  return {
    date: said.date,
    verified: said.verified,
    build,
    on: inWords(build, deciding),
    note: note.trim() === '' ? null : note.trim(),
    measured,
  };
}

function inWords(build: Build, deciding: readonly Option[]): string {
  return traitsInWords(deciding.map((option) => ({ option, value: build[option.id] ?? false })));
}

function sameBuild(one: Build, other: Build, deciding: readonly Option[]): boolean {
  return deciding.every(({ id }) => (one[id] ?? false) === (other[id] ?? false));
}

/** The build of the vehicle on which a guide was proved: each option that decides anything has its value. */
async function buildOf(
  deciding: readonly Option[],
  written: string | undefined,
  guide: string,
  io: Io,
): Promise<Record<string, boolean | string>> {
  const pairs = (written ?? '').split(',').flatMap((part) => {
    const [id = '', value = 'yes'] = part.split('=').map((word) => word.trim());
    return id === '' ? [] : [[id, value] as const];
  });
  const typed = new Map(pairs);
  const stray = [...typed.keys()].find((id) => !deciding.some((option) => option.id === id));
  if (stray !== undefined) {
    const help =
      deciding.length > 0 ? `there are ${deciding.map(({ id }) => id).join(', ')}` : 'there is none';
    throw new UsageError(`--build: "${stray}" is no option by which ${guide} differs; ${help}`);
  }
  const build: Record<string, boolean | string> = {};
  for (const option of deciding) {
    const answers = option.choices?.map((choice) => choice.id) ?? ['yes', 'no'];
    const question = `The vehicle on which ${guide} was proved, ${option.name}: ${answers.join(', ')}?`;
    const flag = `--build ${option.id}=${answers.join('|')}, for ${guide},`;
    const value = (await given(typed.get(option.id), flag, question, io)).toLowerCase();
    if (!answers.includes(value))
      throw new UsageError(`"${value}" is none of ${answers.join(', ')}, which ${option.id} can be`);
    build[option.id] = option.choices ? value : value === 'yes';
  }
  return build;
}

function dateOf(written: string): string {
  const date = written.trim();
  if (isDate(date)) return date;
  throw new UsageError(`--date: "${date}" is no date of the calendar; write it as in 2026-10-02`);
}

/** What a flag says, or else a person. */
async function given(said: string | undefined, flag: string, question: string, { ask }: Io): Promise<string> {
  const answer = (said ?? (ask ? await ask(`${question} `) : '')).trim();
  if (answer === '') throw new UsageError(`${flag} is missing, and there is nobody to ask`);
  return answer;
}

/** The record first: an entry never names what is not there. */
async function write(
  path: string,
  record: GuideRecord,
  { root, prefix }: WorkspaceFolder,
  io: Io,
): Promise<void> {
  const folder = posix.dirname(path);
  const recordPath = `${folder}/${recordsFolder}${record.revision}.json`;
  const listPath = `${folder}/${releasesFile}`;
  if (await stat(join(root, recordPath)).catch(() => null))
    throw new UsageError(`${prefix}${recordPath} is there already, and is left as it is`);
  const text = recordText(record);
  const before = await readFile(join(root, listPath), 'utf8').catch(() => '');
  await mkdir(dirname(join(root, recordPath)), { recursive: true });
  await writeFile(join(root, recordPath), text, { flag: 'wx' });
  await appendFile(join(root, listPath), appendix(record, recordHash(text), before));
  io.out(
    `released ${record.guide}, revision ${record.revision}: ${prefix}${listPath}, ${prefix}${recordPath}\n`,
  );
}
