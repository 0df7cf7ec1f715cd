import { vehicleName } from '../vehicle/name.ts';
import type { RecordedWork, VehicleRecord } from '../vehicle/record.ts';
import { type Comparison, compare } from './compare/compare.ts';
import { type ToldChanges, tellChanges } from './compare/say.ts';
import type { Release } from './history.ts';
import type { GuideRecord } from './record.ts';

/** Under what work is looked for; one of the two at least. */
export interface RecallQuery {
  readonly guide: string;
  readonly revision: string | null;
  /** The beginning of a fingerprint, in hexadecimal. */
  readonly fingerprint: string | null;
}

/** A record as it was read, and where. */
export interface FiledRecord {
  readonly file: string;
  readonly record: VehicleRecord;
}

/** A vehicle that was worked on under what is looked for. */
export interface RecalledVehicle {
  readonly file: string;
  /** What it is known by; `null` where nobody wrote it down. */
  readonly name: string | null;
  /** The title of the visit in which the guide was worked by; `null` for the guide alone. */
  readonly visit: string | null;
  readonly revision: string | null;
  readonly fingerprint: string;
  /** Day of the work, ISO 8601. */
  readonly since: string;
  readonly signatures: readonly { readonly what: string; readonly name: string; readonly on: string }[];
}

/** What a change must bear on for a vehicle that has left to be called back. */
export const recallTouches = ['safety', 'torque', 'geometry'] as const;

/** What has changed since that bears on one of these, in a technician's words, and how much else of the work has. */
export interface RecallChanges {
  readonly comparison: Comparison;
  readonly grave: readonly {
    readonly touches: (typeof recallTouches)[number];
    readonly changes: readonly ToldChanges[];
  }[];
  /** Changes of the work that bear on neither. */
  readonly others: number;
}

/**
 * The vehicles that were worked on under a revision or a fingerprint of a guide, by itself or within a visit, the
 * earliest first. Of a record that was saved several times the latest is told.
 */
export function recalledVehicles(
  records: readonly FiledRecord[],
  query: RecallQuery,
): readonly RecalledVehicle[] {
  return latestOf(records)
    .flatMap(({ file, record }) =>
      record.work.flatMap((work) => {
        const edition = editionIn(work, record, query);
        if (!edition) return [];
        const visit = record.guide.id === query.guide ? null : record.guide.title;
        const signatures = record.signatures
          .filter(({ name }) => name.trim() !== '')
          .map(({ what, name, on }) => ({ what, name, on }));
        const since = work.since.slice(0, 10);
        return { file, name: vehicleName(record), visit, ...edition, since, signatures };
      }),
    )
    .sort((a, b) => order(a.since, b.since) || order(a.file, b.file));
}

function order(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}

function latestOf(records: readonly FiledRecord[]): readonly FiledRecord[] {
  const byId = new Map<string, FiledRecord>();
  for (const one of records) {
    const known = byId.get(one.record.id);
    if (!known || known.record.saved < one.record.saved) byId.set(one.record.id, one);
  }
  return [...byId.values()];
}

/** The edition of the guide by which work was done, where it is the one that is looked for. */
function editionIn(work: RecordedWork, { guide }: VehicleRecord, query: RecallQuery) {
  const own = guide.id === query.guide ? [work] : work.guides.filter(({ id }) => id === query.guide);
  const found = own.find(
    ({ revision, fingerprint }) =>
      (query.revision === null || revision === query.revision) &&
      (query.fingerprint === null || isPrintOf(query.fingerprint, fingerprint)),
  );
  return found && { revision: found.revision, fingerprint: found.fingerprint };
}

/** Records, and those who ask, may have a fingerprint cut short: the shorter is the beginning of the longer. */
export function isPrintOf(one: string, other: string): boolean {
  return one.startsWith(other) || other.startsWith(one);
}

/** The release that is looked for; `null` where there is none, so that nothing can be compared with it. */
export function releaseFor(releases: readonly Release[], query: RecallQuery): GuideRecord | null {
  const found = releases.findLast(
    ({ record }) =>
      (query.revision === null || record.revision === query.revision) &&
      (query.fingerprint === null || isPrintOf(query.fingerprint, record.fingerprint)),
  );
  return found?.record ?? null;
}

/** What has changed from a release to what the guide is now, by what it bears on. */
export function recallChanges(from: GuideRecord, now: GuideRecord): RecallChanges {
  const comparison = compare(from, now);
  const { work } = tellChanges(comparison);
  const linesOf = (isWanted: (touches: string) => boolean): readonly ToldChanges[] =>
    work.flatMap((thing) => {
      const lines = thing.lines.filter(({ touches }) => isWanted(touches));
      return lines.length > 0 ? [{ ...thing, lines }] : [];
    });
  const isGrave = (touches: string) => recallTouches.some((one) => one === touches);
  return {
    comparison,
    grave: recallTouches
      .map((touches) => ({ touches, changes: linesOf((one) => one === touches) }))
      .filter(({ changes }) => changes.length > 0),
    others: linesOf((one) => !isGrave(one)).flatMap(({ lines }) => lines).length,
  };
}
