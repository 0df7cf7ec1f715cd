import type { Report } from '../diagnostics/report.ts';
import { finding } from '../diagnostics/rule-card.ts';
import type { SourceFile } from '../source/source-file.ts';
import { wholeFile } from '../source/span.ts';
import {
  conflictIn,
  conflictWords,
  type ReleaseEntry,
  readReleaseEntries,
  recordsFolder,
  shortOf,
} from './entries.ts';
import { type GuideRecord, readRecord, recordHash } from './record.ts';
import { isRaised } from './revision.ts';
import {
  releaseConflict,
  releaseFormatNewer,
  releaseNotRaised,
  releaseRecordEdited,
  releaseRecordMissing,
} from './rules.ts';

/** What was released of a guide, oldest first; only what is sound. */
export interface Release {
  readonly entry: ReleaseEntry;
  readonly record: GuideRecord;
}

/**
 * Reads what was released of a guide and holds each entry against its record. A fault is a finding at its entry, or in
 * the record's own file where that is where it stands.
 *
 * @param source the guide's `releases.yaml`
 * @param folder of the guide, with a slash at its end
 * @param textOf a file of the workspace, `null` where there is none that is text
 */
export function readHistory(
  source: SourceFile,
  folder: string,
  textOf: (path: string) => SourceFile | null,
  report: Report,
): readonly Release[] {
  const entries = readReleaseEntries(source, report) ?? [];
  reportOrder(entries, report);
  return entries.flatMap((entry) => {
    const path = `${folder}${recordsFolder}${entry.revision}.json`;
    const text = textOf(path);
    if (!text) {
      const message = `there is no ${path}, which holds what was released as revision ${entry.revision}`;
      report(finding(releaseRecordMissing, entry.at, message));
      return [];
    }
    const record = soundRecord(entry, text, report);
    return record ? [{ entry, record }] : [];
  });
}

function reportOrder(entries: readonly ReleaseEntry[], report: Report): void {
  entries.forEach((entry, index) => {
    const before = entries[index - 1];
    if (!before || isRaised(before.revision, entry.revision)) return;
    const message = `revision ${entry.revision} stands after revision ${before.revision}; each entry has a higher revision than the one before it`;
    report(
      finding(releaseNotRaised, entry.at, message, {
        notes: [{ message: `revision ${before.revision} stands here`, at: before.at }],
      }),
    );
  });
}

function soundRecord(entry: ReleaseEntry, file: SourceFile, report: Report): GuideRecord | null {
  const read = readRecord(file.text);
  if (read.ok && isAsWritten(entry, file, read.record)) return read.record;
  const conflict = conflictIn(file);
  if (conflict) {
    report(finding(releaseConflict, conflict, conflictWords));
  } else if (!read.ok && read.why === 'newer') {
    const message = `this record has the form ${read.detail}; this Baybook reads form 1`;
    report(finding(releaseFormatNewer, wholeFile(file.path), message));
  } else {
    const edited = recordHash(file.text) !== entry.record;
    const message = edited
      ? `${file.path} is not what was released as revision ${entry.revision}: one of the two was edited`
      : `this entry does not say what ${file.path} says of revision ${entry.revision}; it was edited`;
    const notes = read.ok || !edited ? [] : [{ message: `${file.path} cannot be read as a record` }];
    report(finding(releaseRecordEdited, entry.at, message, { notes }));
  }
  return null;
}

/** Whether an entry and a record are those that one release wrote. */
function isAsWritten(entry: ReleaseEntry, file: SourceFile, record: GuideRecord): boolean {
  const { release, templates } = record;
  if (!release || recordHash(file.text) !== entry.record) return false;
  const said = (one: Pick<ReleaseEntry, 'date' | 'verified' | 'note' | 'build'>) =>
    JSON.stringify([one.date, one.verified, one.note, sorted(one.build)]);
  const steps = record.steps.map(({ id, fingerprint }) => [id, shortOf(fingerprint)] as const);
  const measured = templates.map(({ id, fingerprint }) => [
    id,
    `${release.measured[id] ?? ''} ${shortOf(fingerprint)}`,
  ]);
  return (
    record.revision === entry.revision &&
    record.fingerprint === entry.fingerprint &&
    said(release) === said(entry) &&
    JSON.stringify(sorted(Object.fromEntries(steps))) === JSON.stringify(sorted(entry.steps)) &&
    JSON.stringify(sorted(Object.fromEntries(measured))) ===
      JSON.stringify(
        sorted(
          Object.fromEntries(
            Object.entries(entry.measured).map(([id, one]) => [id, `${one.by} ${one.fingerprint}`]),
          ),
        ),
      )
  );
}

function sorted<T>(map: { readonly [key: string]: T }): readonly (readonly [string, T])[] {
  return Object.entries(map).sort(([a], [b]) => (a < b ? -1 : 1));
}
