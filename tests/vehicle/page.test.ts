import { describe, expect, it } from 'vitest';
import { dueWords } from '../../templates/scripts/vehicle/page-facts.ts';
import { progressOf, withWork } from '../../templates/scripts/vehicle/work.ts';
import { vehicleRecord } from './records.ts';

// Days by the Gregorian calendar, counted by hand.
const from = new Date(2026, 10, 30);

describe('when something is looked at again on one vehicle', () => {
  it.each([
    ['500 km or 3 month', '84 000 km', 'at 84500 km or by 2027-02-28'],
    ['500 km or 3 month', '84,000 km', 'at 84500 km or by 2027-02-28'],
    ['500 km', '84.000 km', 'at 84500 km'],
    ['500 km', '52000 miles', ''],
    ['300 mi', '52000 miles', 'at 52300 mi'],
    ['20 h', '310 h', 'at 330 h'],
    ['500 km', '84000', ''],
    ['500 km', 'about 84 000 km', ''],
    ['1 year', '', 'by 2027-11-30'],
    ['2 week', '', 'by 2026-12-14'],
    ['10 day', '', 'by 2026-12-10'],
    ['soon', '84000 km', ''],
  ])('%s, with %s on the odometer: %s', (terms, odometer, expected) => {
    expect(dueWords(terms, odometer, from)).toBe(expected);
  });

  it('is the last day of a month that is shorter', () => {
    expect(dueWords('1 month', '', new Date(2028, 0, 31))).toBe('by 2028-02-29');
  });
});

describe('the work of a record', () => {
  const record = vehicleRecord();
  const [first] = record.work;
  if (!first) throw new Error('the record has work');
  const other = { ...first, fingerprint: 'cd'.repeat(32), revision: '3', since: '2026-10-05T08:00:00.000Z' };

  it('follows the page under the edition by which it was begun', () => {
    const now = { ...first, values: [], since: '2026-10-03T08:00:00.000Z' };
    expect(withWork(record.work, now, first)).toEqual([{ ...now, since: first.since }]);
  });

  it('stays as it was under an edition that has gone; the next begins with the first thing that is done', () => {
    expect(withWork(record.work, other, other)).toEqual([first]);
    const done = { ...other, values: [] };
    expect(withWork(record.work, done, other)).toEqual([first, done]);
  });

  it('is what the page shows when it is taken up again', () => {
    const { photographs: _, ...kept } = record;
    const progress = progressOf(kept);
    expect(progress?.fingerprint).toBe(first.fingerprint);
    expect(progress?.ticks.get('open')).toEqual(new Set(['whole']));
    expect(progress?.values.get('battery reading charge')?.text).toBe('92 %');
  });
});
