import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { formatEstimate, formatMinutes, formatRun, parseEstimate } from '../../src/units/estimate.ts';
import { base } from '../../src/units/quantity.ts';

function read(text: string): readonly number[] | string {
  const parsed = parseEstimate(text);
  if (!parsed.ok) return parsed.problem;
  const { least, likely, most } = parsed.estimate;
  return [least, likely, most];
}

const plain = (text: string): string => text.replace(/\u00a0/g, ' ');

describe('how long work takes', () => {
  test.each([
    ['5 min', [5, 5, 5]],
    ['3..6 min', [3, 4.5, 6]],
    ['3–6 min', [3, 4.5, 6]],
    ['4/6/15 min', [4, 6, 15]],
    ['30 min/1 h/2 h', [30, 60, 120]],
    ['1 h 30 min', [90, 90, 90]],
    ['1h30', [90, 90, 90]],
    ['45 min..1 h 30 min', [45, 67.5, 90]],
    ['1/2 h', [30, 30, 30]],
    ['24 h', [1440, 1440, 1440]],
  ])('%s', (typed, minutes) => expect(read(typed)).toEqual(minutes));

  test.each([
    ['5', 'no-unit'],
    ['5 m', 'wrong-kind'],
    ['-5 min', 'out-of-range'],
    ['6..3 min', 'wrong-way-round'],
    ['6/4/15 min', 'wrong-way-round'],
    ['3/6 min', 'not-a-number'],
    ['1,5 h', 'decimal-comma'],
    ['', 'empty'],
    ['a/b/c', 'not-a-number'],
    ['999999 h', 'out-of-range'],
  ])('%s is refused', (typed, fault) => expect(read(typed)).toBe(fault));

  test('two of three times are not taken for a fraction of a minute', () => {
    expect(parseEstimate('3/6 min')).toMatchObject({
      message:
        '"3/6 min" gives two of three times; write "3..6 min" for a range, or least/likely/most as in "4/6/15 min"',
    });
  });
});

describe('printing', () => {
  test.each([
    [0, '0 min'],
    [0.5, '30 s'],
    [0.999, '1 min'],
    [35, '35 min'],
    [60, '1 h'],
    [95, '1 h 35 min'],
    [119.6, '2 h'],
    [1500, '25 h'],
  ])('%d minutes', (minutes, printed) => expect(plain(formatMinutes(base(minutes)))).toBe(printed));

  test.each([
    ['5 min', '5 min'],
    ['3..6 min', '3–6 min'],
    ['4/6/15 min', '4–15 min, likely 6 min'],
    ['45 min..1 h 30 min', '45 min to 1 h 30 min'],
  ])('%s', (typed, printed) => {
    const parsed = parseEstimate(typed);
    expect(parsed.ok && plain(formatEstimate(parsed.estimate))).toBe(printed);
  });

  test.each([
    [1440, '24 h'],
    [1782, '1 d 5 h 42 min'],
    [2880, '2 d'],
    [95, '1 h 35 min'],
  ])('a job of %d minutes', (minutes, printed) => {
    expect(plain(formatRun(base(minutes)))).toBe(printed);
  });

  test('whole minutes are read back as printed', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 10_000 }), (minutes) => {
        expect(read(formatMinutes(base(minutes)))).toEqual([minutes, minutes, minutes]);
      }),
    );
  });
});
