import * as z from 'zod';
import type { Report } from '../diagnostics/report.ts';
import { finding } from '../diagnostics/rule-card.ts';
import type { SourceFile } from '../source/source-file.ts';
import type { Span } from '../source/span.ts';
import { readYaml, yamlKey, yamlText } from '../syntax/read-yaml.ts';
import type { GuideRecord } from './record.ts';
import { releaseConflict } from './rules.ts';

/** The file beside a guide that says how it was released. */
export const releasesFile = 'releases.yaml';

/** The folder beside a guide that holds what was released. */
export const recordsFolder = 'releases/';

/** How a guide was released, as `releases.yaml` says it. */
export interface ReleaseEntry {
  readonly revision: string;
  readonly date: string;
  readonly verified: string;
  readonly build: { readonly [option: string]: boolean | string };
  readonly note: string | null;
  /** Who measured each cut template, and the fingerprint of its line to cut. */
  readonly measured: { readonly [template: string]: { readonly by: string; readonly fingerprint: string } };
  readonly fingerprint: string;
  /** SHA-256 of the record's bytes, in hexadecimal. */
  readonly record: string;
  /** The first twelve digits of each step's fingerprint. */
  readonly steps: { readonly [step: string]: string };
  readonly at: Span;
}

/** Digits of a fingerprint that people compare. */
const SHORT = 12;

const hash = z.string().regex(/^[0-9a-f]{64}$/, { error: 'a fingerprint of 64 digits' });
const short = z
  .string()
  .regex(/^[0-9a-f]{12}$/, { error: `the first ${SHORT} digits of a fingerprint, in quotes` });

/** An ISO 8601 date that the calendar has. */
export function isDate(text: string): boolean {
  const [, year, month, day] = /^(\d{4})-(\d{2})-(\d{2})$/.exec(text) ?? [];
  const date = new Date(Date.UTC(Number(year), Number(month) - 1, Number(day)));
  return date.getUTCMonth() === Number(month) - 1 && date.getUTCDate() === Number(day);
}

const entrySchema = z.strictObject({
  date: yamlKey(
    yamlText.refine(isDate, { error: 'a date, as in 2026-10-02' }),
    'a date, as in `2026-10-02`',
    'When it was released.',
  ),
  verified: yamlKey(yamlText, 'a name', 'Who has done the job by the guide, on a vehicle.'),
  build: yamlKey(
    z.record(z.string(), z.union([z.boolean(), yamlText])).default({}),
    'a map of options, as in `{fog: true, lamps: led}`',
    'What that vehicle had, of all by which the guide differs.',
  ),
  note: yamlKey(yamlText.optional(), 'text', 'What else is to be known of this release.'),
  measured: yamlKey(
    z
      .record(
        z.string(),
        z.strictObject({
          by: yamlKey(yamlText, 'a name', 'Who has measured the template on paper.'),
          fingerprint: yamlKey(
            short,
            'twelve digits, in quotes',
            'Of the line to cut that was measured; it stays the same as long as the line does.',
          ),
        }),
      )
      .default({}),
    'a map of cut templates, as in `{notch: {by: …, fingerprint: …}}`',
    'Who stands for which cut template.',
  ),
  fingerprint: yamlKey(
    hash,
    'a fingerprint of 64 digits',
    'Of the guide as it was released; a print shows its first twelve.',
  ),
  record: yamlKey(
    hash,
    'a fingerprint of 64 digits',
    'Of the file in `releases/` that holds all that the guide told. One that was edited afterwards is a finding.',
  ),
  steps: yamlKey(
    z.record(z.string(), short).default({}),
    'a map of steps, each with twelve digits in quotes',
    'The fingerprint of each step, so that version control shows at a glance which ones a release has changed.',
  ),
});

/** A `releases.yaml`: each key is a revision. */
export const releasesSchema = z.record(z.string(), entrySchema);

/** The entries of a `releases.yaml`, oldest first; `null` where it cannot be read. */
export function readReleaseEntries(source: SourceFile, report: Report): readonly ReleaseEntry[] | null {
  const conflict = conflictIn(source);
  if (conflict) {
    report(finding(releaseConflict, conflict, conflictWords));
    return null;
  }
  const at = { file: source.path, start: 0, end: source.text.length };
  const read = readYaml({ value: source.text, at }, releasesSchema, report);
  if (!read) return null;
  const written = Object.entries(read.value).map(([revision, { note, ...entry }]) => ({
    ...entry,
    revision,
    note: note ?? null,
    at: read.keyAt([revision]),
  }));
  // Keys that look like numbers come in an order of their own.
  return written.sort((a, b) => a.at.start - b.at.start);
}

export const conflictWords =
  'version control has left two versions of a release here, between its marks; keep both entries, or one, and take out the marks';

/** The first mark of a conflict that version control has left in a text. */
export function conflictIn({ path, text }: SourceFile): Span | null {
  const mark = /^(?:<{7}|>{7}|={7}|\|{7})(?=[ \r\n]|$)[^\r\n]*/m.exec(text);
  return mark && { file: path, start: mark.index, end: mark.index + mark[0].length };
}

/** What stands at the head of a `releases.yaml`. */
const head =
  '# What was released of this guide, the latest last. "baybook release" adds an entry; none is ever edited.\n';

/**
 * What is put at the end of a `releases.yaml` for a record.
 *
 * @param before the file as it stands; empty where there is none
 */
export function appendix(record: GuideRecord, recordHash: string, before: string): string {
  const { release } = record;
  if (!release) throw new Error('a record that was not released has no entry');
  const measured = record.templates.map(
    ({ id, fingerprint }) =>
      `    ${id}: {by: ${quoted(release.measured[id] ?? '')}, fingerprint: ${quoted(shortOf(fingerprint))}}\n`,
  );
  const build = Object.entries(release.build).map(([id, value]) => `${id}: ${buildValue(value)}`);
  const lines = [
    `${quoted(record.revision)}:\n`,
    `  date: ${release.date}\n`,
    `  verified: ${quoted(release.verified)}\n`,
    ...(build.length > 0 ? [`  build: {${build.join(', ')}}\n`] : []),
    ...(release.note === null ? [] : [`  note: ${quoted(release.note)}\n`]),
    ...(measured.length > 0 ? ['  measured:\n', ...measured] : []),
    `  fingerprint: ${quoted(record.fingerprint)}\n`,
    `  record: ${quoted(recordHash)}\n`,
    ...(record.steps.length > 0 ? ['  steps:\n'] : []),
    ...record.steps.map(({ id, fingerprint }) => `    ${id}: ${quoted(shortOf(fingerprint))}\n`),
  ];
  const ended = before === '' || /[\r\n]$/.test(before) ? '' : '\n';
  return `${ended}${before.trim() === '' ? head : '\n'}${lines.join('')}`;
}

/** A build's value, where text that YAML would read as something else stands in quotes. */
function buildValue(value: boolean | string): string {
  return typeof value === 'boolean' ? String(value) : quoted(value);
}

/** The digits of a fingerprint that an entry and people go by. */
export function shortOf(fingerprint: string): string {
  return fingerprint.slice(0, SHORT);
}

/** JSON's strings are YAML's too (YAML 1.2, 1.3). */
function quoted(text: string): string {
  return JSON.stringify(text);
}
