import fc from 'fast-check';
import { expect, it } from 'vitest';
import { type RecallQuery, recalledVehicles } from '../../src/release/recall.ts';
import type { VehicleRecord } from '../../src/vehicle/record.ts';
import { runs } from '../samples.ts';
import { vehicleRecord } from '../vehicle/records.ts';

const [usual] = vehicleRecord().work;
if (!usual) throw new Error('a record has work');

const revision = fc.constantFrom(null, '2', '3');
const fingerprint = fc.constantFrom('ab'.repeat(32), 'cd'.repeat(32), 'ab'.repeat(6));
const guide = fc.constantFrom('module', 'lamp', 'visits/both', 'visits/module');
const work = fc
  .record({
    revision,
    fingerprint,
    since: fc.constantFrom('2026-10-02T08:00:00.000Z', '2026-11-02T08:00:00.000Z'),
    guides: fc.array(
      fc.record({
        id: fc.constantFrom('module', 'lamp'),
        title: fc.constant('A guide'),
        revision,
        fingerprint,
      }),
      { maxLength: 2 },
    ),
  })
  .map((more) => ({ ...usual, ...more }));
const record = fc
  .record({
    id: fc.constantFrom('0', '1', '2').map((digit) => digit.repeat(32)),
    saved: fc.constantFrom('2026-12-01T08:00:00.000Z', '2026-12-02T08:00:00.000Z'),
    guide: guide.map((id) => ({ id, title: id })),
    work: fc.array(work, { minLength: 1, maxLength: 3 }),
  })
  .map((more) => vehicleRecord(more));
const query: fc.Arbitrary<RecallQuery> = fc.record({
  guide: fc.constantFrom('module', 'lamp'),
  revision,
  fingerprint: fc.constantFrom(null, 'abababab', 'cd'.repeat(32)),
});

/** The same question asked of the whole file at once: every edition that stands anywhere in a record. */
function isConcerned({ guide: { id }, work: done }: VehicleRecord, asked: RecallQuery): boolean {
  const editions = done.flatMap((one) => [{ ...one, id }, ...(id.startsWith('visits/') ? one.guides : [])]);
  return editions.some(
    (one) =>
      one.id === asked.guide &&
      (asked.revision === null || one.revision === asked.revision) &&
      (asked.fingerprint === null ||
        asked.fingerprint.startsWith(one.fingerprint) ||
        one.fingerprint.startsWith(asked.fingerprint)),
  );
}

it('lists a vehicle exactly when some work on it was done under what is looked for, each record once', () => {
  fc.assert(
    fc.property(fc.array(record, { maxLength: 6 }), query, (records, asked) => {
      // A guide's own record names no other guides.
      const sound = records.map((one) =>
        one.guide.id.startsWith('visits/')
          ? one
          : { ...one, work: one.work.map((done) => ({ ...done, guides: [] })) },
      );
      const filed = sound.map((one, index) => ({ file: `${index}.json`, record: one }));
      const latest = filed.filter(
        ({ record: one }, index) =>
          !filed.some(
            ({ record: other }, place) =>
              other.id === one.id &&
              (other.saved > one.saved || (other.saved === one.saved && place < index)),
          ),
      );
      const expected = latest.filter((one) => isConcerned(one.record, asked)).map(({ file }) => file);
      const found = recalledVehicles(filed, asked);
      expect([...new Set(found.map(({ file }) => file))].sort()).toEqual(expected.sort());
      expect(found.map(({ since }) => since)).toEqual(found.map(({ since }) => since).toSorted());
    }),
    runs(200, 20_000),
  );
});
