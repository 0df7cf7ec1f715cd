import { readFile, writeFile } from 'node:fs/promises';
import { resolve } from 'node:path';
import { renderText } from '../../diagnostics/render-text.ts';
import { collector, type Report } from '../../diagnostics/report.ts';
import type { Guide } from '../../model/guide.ts';
import { dayInCsv } from '../../pages/day/day-csv.ts';
import { dayPage } from '../../pages/day/day-page.ts';
import { dayInText } from '../../pages/day/day-text.ts';
import { fileId } from '../../shop/discover.ts';
import { diskFiles } from '../../shop/files/disk-files.ts';
import { sourcesOf } from '../../shop/files/sources-of.ts';
import { decodeText } from '../../shop/files/text-files.ts';
import { planned, visitAt } from '../../shop/inspect/inspect-visit.ts';
import { openWorkspace, type Workspace } from '../../shop/open-workspace.ts';
import { type SourceFile, sourceFile } from '../../source/source-file.ts';
import {
  type DayList,
  type DayRequest,
  dayList,
  type PlannedJob,
  type RequestedDay,
  readDay,
  type VisitRequest,
} from '../../visit/index.ts';
import { type ExitCode, type Io, UsageError } from '../io.ts';
import { workspaceFolder } from '../workspace.ts';

interface DayOptions {
  readonly guides: string;
  readonly format: keyof typeof printed;
  readonly out?: string;
}

/** How the list can be printed. */
const printed: { readonly [format in 'text' | 'csv' | 'html']: (title: string, day: DayList) => string } = {
  text: (title, day) => `${dayInText(title, day)}\n`,
  csv: (_, day) => dayInCsv(day),
  html: dayPage,
};

/**
 * `baybook day`: sums up what the jobs of a day need from counter and cart: those of a file, or visits and guides by
 * their names. Nothing is summed where one of them has errors.
 */
export async function day(words: readonly string[], options: DayOptions, io: Io): Promise<ExitCode> {
  const { root, prefix } = await workspaceFolder(options.guides, io);
  const files = diskFiles(root);
  const workspace = await openWorkspace(files, io.store);
  const { findings, report } = collector();
  const source = await sourceOf(words, io);
  const asked = source.path === TYPED ? typedDay(source, words) : readDay(source, report);
  const jobs: PlannedJob[] = [];
  for (const job of asked?.jobs ?? []) {
    const request = requestOf(job, source, workspace, report);
    const value = request && (await planned(request, workspace, workspace, report));
    if (value) jobs.push({ ...value, title: titleOf(job, value.guide), build: wordsOf(request.build) });
  }
  const sources = new Map([...sourcesOf(findings, files), [source.path, source]]);
  const told = renderText(findings, { sources, prefix }, { colour: io.colour, width: io.width });
  if (told !== '') io.err(`${told}\n`);
  if (!asked || findings.some(({ severity }) => severity === 'error')) {
    io.err('nothing was summed\n');
    return 1;
  }
  const text = printed[options.format](asked.title, dayList(jobs, workspace.shop));
  if (options.out === undefined) io.out(text);
  else await writeFile(resolve(io.cwd, options.out), text);
  return 0;
}

/** What the counter calls a job: as it is named there, by the title of its visit, or by its guides. */
function titleOf({ title, names }: DayRequest, { title: own, visit }: Guide): string {
  const isOfGuides = names.some(({ value }) => visit?.guides.some(({ id }) => id === value));
  return title ?? (isOfGuides ? (visit?.guides ?? []).map(({ name }) => name).join(', ') : own.value);
}

function wordsOf(build: VisitRequest['build']): string {
  return build.map(({ value }) => value).join(', ');
}

/** Stands for what was typed, so that findings can point into it. */
const TYPED = '(command line)';

/** The file of a day, or the line that names its jobs. */
async function sourceOf(words: readonly string[], io: Io): Promise<SourceFile> {
  const [only = ''] = words;
  if (words.length > 1 || !/\.ya?ml$/i.test(only)) return sourceFile(TYPED, `baybook day ${words.join(' ')}`);
  const bytes = await readFile(resolve(io.cwd, only)).catch(() => null);
  const source = bytes && decodeText(only, bytes);
  if (!source) throw new UsageError(`there is no readable file "${only}"`);
  return source;
}

/** A day from its line: each word is a job, several guides of one job in quotes. */
function typedDay({ path }: SourceFile, words: readonly string[]): RequestedDay {
  let from = 'baybook day '.length;
  const jobs = words.map((word): DayRequest => {
    const at = { file: path, start: from, end: from + word.length };
    from = at.end + 1;
    const names = word
      .trim()
      .split(/\s+/)
      .map((value) => ({ value, at }));
    return { title: null, names, build: [], at };
  });
  return { title: jobs.length === 1 ? 'One job' : `A day of ${jobs.length} jobs`, jobs };
}

/** What a job of the day asks for: a visit by its name, else guides. */
function requestOf(
  { names, build, at }: DayRequest,
  source: SourceFile,
  workspace: Workspace,
  report: Report,
): VisitRequest | null {
  const [only] = names;
  const path =
    names.length === 1 ? workspace.found.visits.find((one) => fileId(one) === only?.value) : undefined;
  const visit = path === undefined ? null : visitAt(path, workspace, workspace, report);
  if (path !== undefined)
    return (
      visit && {
        ...visit,
        build: [...visit.build, ...build],
      }
    );
  return {
    id: names.map(({ value }) => value).join('-and-'),
    file: source.path,
    title: { value: names.map(({ value }) => value).join(', '), at },
    platform: null,
    build,
    guides: names,
    note: [],
    at,
  };
}
