import { readdir, readFile, stat } from 'node:fs/promises';
import { join, relative, resolve } from 'node:path';
import { printable } from '../../diagnostics/excerpt.ts';
import { shortFingerprint } from '../../pages/frame/identity.ts';
import {
  type FiledRecord,
  isPrintOf,
  type RecallChanges,
  type RecalledVehicle,
  type RecallQuery,
  recallChanges,
  recalledVehicles,
  releaseFor,
} from '../../release/recall.ts';
import { type Recall, recallJson } from '../../release/recall-json.ts';
import { recordOf } from '../../release/record-of.ts';
import { diskFiles } from '../../shop/files/disk-files.ts';
import { inspectGuide } from '../../shop/inspect/inspect-guide.ts';
import { openWorkspace } from '../../shop/open-workspace.ts';
import { readVehicleRecord } from '../../vehicle/read.ts';
import { vehicleRecordLimits } from '../../vehicle/record.ts';
import { guidePath } from '../guide-path.ts';
import { type ExitCode, type Io, UsageError } from '../io.ts';
import { workspaceFolder } from '../workspace.ts';

interface RecallOptions {
  readonly guides: string;
  readonly revision?: string;
  readonly fingerprint?: string;
  readonly format: 'text' | 'json';
}

/**
 * `baybook recall`: which vehicles were worked on under a revision or a fingerprint of a guide, by their saved records,
 * and what has changed since that bears on safety, torque or geometry. A file that is no sound record is told, and the
 * others are listed all the same.
 */
export async function recall(
  id: string,
  places: readonly string[],
  options: RecallOptions,
  io: Io,
): Promise<ExitCode> {
  const query = queryOf(id, options);
  const workspace = await workspaceFolder(options.guides, io);
  const opened = await openWorkspace(diskFiles(workspace.root), io.store);
  const path = guidePath(id, opened);
  const { value, findings } = await inspectGuide(path, opened);
  if (!value) throw new UsageError(`${path} cannot be read; baybook check ${id} says why`);
  if (findings.some(({ severity }) => severity === 'error'))
    io.err(`${path} has errors; what cannot be read of it seems to be taken out\n`);
  const now = recordOf(value.guide, value.job);
  const released = releaseFor(value.releases, query);
  const { records, unread } = await readRecords(places, io);
  const found: Recall = {
    query,
    released,
    now,
    records: records.length,
    vehicles: recalledVehicles(records, query),
    changes: released && recallChanges(released, now),
    unread,
  };
  if (options.format === 'json') io.out(`${JSON.stringify(recallJson(found), null, 1)}\n`);
  else io.out(recallText(found));
  for (const { file, problem } of unread) io.err(`${plain(file)}: ${plain(problem)}\n`);
  return unread.length > 0 ? 1 : 0;
}

function queryOf(guide: string, { revision, fingerprint }: RecallOptions): RecallQuery {
  if (revision === undefined && fingerprint === undefined)
    throw new UsageError('say under which --revision or which --fingerprint the vehicles were worked on');
  const print = fingerprint?.replace(/\s/g, '').toLowerCase() ?? null;
  if (print !== null && !/^[0-9a-f]{8,64}$/.test(print))
    throw new UsageError(
      `--fingerprint: "${fingerprint}" is none; give its first eight figures at least, as in "3f2a 9c04 b7d1"`,
    );
  return { guide, revision: revision ?? null, fingerprint: print };
}

interface ReadRecords {
  readonly records: readonly FiledRecord[];
  readonly unread: Recall['unread'];
}

/** Reads one after the other: with photographs a record may be large. */
async function readRecords(places: readonly string[], io: Io): Promise<ReadRecords> {
  const records: FiledRecord[] = [];
  const unread: { file: string; problem: string }[] = [];
  for (const file of new Set((await Promise.all(places.map((place) => filesIn(place, io)))).flat())) {
    const read = await readFiled(resolve(io.cwd, file));
    if (read.ok) records.push({ file, record: { ...read.record, photographs: [] } });
    else unread.push({ file, problem: read.problem });
  }
  return { records, unread };
}

/** A file as it is named, or every JSON file of a folder. */
async function filesIn(place: string, io: Io): Promise<readonly string[]> {
  const path = resolve(io.cwd, place);
  const found = await stat(path).catch(() => null);
  if (!found?.isDirectory()) return [place];
  const names = await readdir(path, { recursive: true });
  return names
    .filter((name) => name.endsWith('.json'))
    .sort()
    .map((name) => relative(io.cwd, join(path, name)));
}

async function readFiled(path: string): Promise<ReturnType<typeof readVehicleRecord>> {
  const found = await stat(path).catch(() => null);
  if (!found?.isFile()) return { ok: false, problem: 'there is no such file' };
  if (found.size > 2 * vehicleRecordLimits.file)
    return { ok: false, problem: 'this file is larger than any vehicle record' };
  const text = await readFile(path, 'utf8').catch(() => null);
  return text === null ? { ok: false, problem: 'this file cannot be read' } : readVehicleRecord(text);
}

function recallText({ query, released, now, records, vehicles, changes }: Recall): string {
  const edition = [
    query.revision === null ? '' : `revision ${query.revision}`,
    query.fingerprint === null ? '' : `fingerprint ${shortFingerprint(query.fingerprint)}`,
  ].filter((part) => part !== '');
  const read = records === 1 ? 'one record' : `${records} records`;
  const head = `${query.guide}, ${edition.join(', ')}: ${vehicles.length} found in ${read}\n`;
  const lines = vehicles.map((one) => `  ${vehicleLine(one, released?.fingerprint ?? null)}\n`);
  const list = lines.length > 0 ? `\n${lines.join('')}` : '';
  return head + list + (changes ? changesText(changes, now) : unreleasedText(query));
}

/** "RB 12, from 2026-10-02, signed by M. Hart (The whole job, 2026-10-02): records/rb-12.json". */
function vehicleLine(
  { name, since, visit, revision, fingerprint, signatures, file }: RecalledVehicle,
  released: string | null,
): string {
  const signed = signatures.map(
    ({ name: who, what, on }) => `${who} (${[what, on].filter(Boolean).join(', ')})`,
  );
  const isOther = released !== null && !isPrintOf(fingerprint, released);
  const parts = [
    name ?? 'not named',
    `from ${since}`,
    ...(visit === null ? [] : [`in the visit “${visit}”`]),
    ...(isOther || released === null
      ? [
          `under ${revision === null ? 'the text' : `the text of revision ${revision}`} ${shortFingerprint(fingerprint)}${isOther ? ', which is not what was released' : ''}`,
        ]
      : []),
    signed.length === 0 ? 'not signed' : `signed by ${signed.join(', ')}`,
  ];
  return plain(`${parts.join(', ')}: ${file}`);
}

function changesText({ comparison, grave, others }: RecallChanges, now: Recall['now']): string {
  const { from } = comparison;
  const span = `revision ${from.revision} (${shortFingerprint(from.fingerprint)}) and the text as it stands (${shortFingerprint(now.fingerprint)})`;
  const rest =
    others === 0
      ? ''
      : `\nOther changes of the work: ${others}; baybook compare ${comparison.guide} --from ${from.revision} tells them\n`;
  if (grave.length === 0)
    return `\nBetween ${span} nothing has changed that bears on safety, torque or geometry.\n${rest}`;
  const groups = grave.map(({ touches, changes }) => {
    const things = changes.map(
      ({ heading, lines }) => `    ${heading}\n${lines.map(({ text }) => `      - ${text}\n`).join('')}`,
    );
    return `  ${touches}\n${things.join('')}`;
  });
  return `\nWhat has changed between ${span}\n${groups.join('')}${rest}`;
}

function unreleasedText({ guide, fingerprint }: RecallQuery): string {
  const what = fingerprint === null ? 'this revision' : 'this fingerprint';
  return `\nWhat has changed since cannot be told: ${guide} was not released under ${what}.\n`;
}

/** What a file from elsewhere says stays on its line, and must not steer the terminal. */
function plain(text: string): string {
  return printable(text.replaceAll('\n', ' '));
}
