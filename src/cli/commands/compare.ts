import { mkdir, writeFile } from 'node:fs/promises';
import { join, relative } from 'node:path';
import { shortFingerprint } from '../../pages/frame/identity.ts';
import { type Comparison, compare } from '../../release/compare/compare.ts';
import { comparisonJson } from '../../release/compare/comparison-json.ts';
import { type ToldChanges, tellChanges } from '../../release/compare/say.ts';
import type { Release } from '../../release/history.ts';
import { overlays } from '../../release/overlay.ts';
import type { GuideRecord } from '../../release/record.ts';
import { recordOf } from '../../release/record-of.ts';
import { diskFiles } from '../../shop/files/disk-files.ts';
import { inspectGuide } from '../../shop/inspect/inspect-guide.ts';
import { openWorkspace } from '../../shop/open-workspace.ts';
import { guidePath } from '../guide-path.ts';
import { type ExitCode, type Io, UsageError } from '../io.ts';
import { outputFolder, workspaceFolder } from '../workspace.ts';

interface CompareOptions {
  readonly guides: string;
  readonly from?: string;
  readonly to?: string;
  readonly format: 'text' | 'json';
  readonly overlay?: string;
}

/**
 * `baybook compare`: what has changed of a guide since it was released, or between two releases of it, with each
 * template's old and new line to cut over one another where they are wanted.
 */
export async function compareGuide(id: string, options: CompareOptions, io: Io): Promise<ExitCode> {
  const workspace = await workspaceFolder(options.guides, io);
  const folder = options.overlay === undefined ? null : outputFolder(options.overlay, workspace, io);
  const opened = await openWorkspace(diskFiles(workspace.root), io.store);
  const path = guidePath(id, opened);
  const { value, findings } = await inspectGuide(path, opened);
  if (!value) throw new UsageError(`${path} cannot be read; baybook check ${id} says why`);
  const { releases } = value;
  const latest = releases.at(-1);
  if (!latest)
    throw new UsageError(
      `${id} was never released, or its records cannot be read; baybook check ${id} says which`,
    );
  const from = options.from === undefined ? latest.record : recordAt(options.from, '--from', releases, id);
  const to =
    options.to === undefined ? recordOf(value.guide, value.job) : recordAt(options.to, '--to', releases, id);
  if (options.to === undefined && findings.some(({ severity }) => severity === 'error'))
    io.err(`${path} has errors; what cannot be read of it seems to be taken out\n`);
  const comparison = compare(from, to);
  if (options.format === 'json') io.out(`${JSON.stringify(comparisonJson(comparison), null, 1)}\n`);
  else io.out(comparisonText(comparison, to.release !== null));
  if (folder !== null) await writeOverlays(from, to, folder, io);
  return 0;
}

function recordAt(revision: string, flag: string, releases: readonly Release[], id: string): GuideRecord {
  const found = releases.find(({ entry }) => entry.revision === revision);
  if (found) return found.record;
  const known = releases.map(({ entry }) => entry.revision).join(', ');
  throw new UsageError(`${flag}: ${id} was not released as revision ${revision}; there are ${known}`);
}

/** A comparison as a person reads it in a terminal. */
function comparisonText(comparison: Comparison, isRelease: boolean): string {
  const { work, words, renamed } = tellChanges(comparison);
  const { from, to, guide } = comparison;
  const now = isRelease ? `revision ${to.revision}` : 'the text as it stands';
  const head = `${guide}: revision ${from.revision} (${shortFingerprint(from.fingerprint)}) and ${now} (${shortFingerprint(to.fingerprint)})\n`;
  if (work.length + words.length + renamed.length === 0) return `${head}\nNothing has changed.\n`;
  const parts = [
    group('What changes the work', work),
    group('Only worded or shown otherwise', words),
    renamed.length > 0
      ? `\nOther ids of the same things\n${renamed.map((one) => `  ${one}\n`).join('')}`
      : '',
  ];
  const same = work.length === 0 ? '\nThe work is the same.\n' : '';
  return head + same + parts.join('');
}

function group(title: string, changes: readonly ToldChanges[]): string {
  if (changes.length === 0) return '';
  const things = changes.map(
    ({ heading, lines }) => `  ${heading}\n${lines.map(({ text }) => `    - ${text}\n`).join('')}`,
  );
  return `\n${title}\n${things.join('')}`;
}

async function writeOverlays(from: GuideRecord, to: GuideRecord, folder: string, io: Io): Promise<void> {
  const drawn = overlays(from, to);
  if (drawn.length === 0) return io.err('no line to cut has changed; no drawing was written\n');
  await mkdir(folder, { recursive: true });
  for (const { name, svg } of drawn) {
    await writeFile(join(folder, name), svg);
    io.err(`wrote ${relative(io.cwd, join(folder, name))}\n`);
  }
}
