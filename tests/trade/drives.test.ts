import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { mergeDrives } from '../../src/trade/drive-sets.ts';
import { formatDrive, parseDrive, writtenDrive } from '../../src/trade/drives.ts';
import { runs } from '../samples.ts';
import { drive, plain } from './read.ts';

describe('drives as authors write them', () => {
  test.each([
    ['hex 7', 'hex 7', '7 mm hexagon'],
    ['hex 7 mm', 'hex 7', '7 mm hexagon'],
    ['Hexagon 5.5', 'hex 5.5', '5.5 mm hexagon'],
    ['hex 1/2 in', 'hex 1/2 in', '1/2 in hexagon'],
    ['hex ½″', 'hex 1/2 in', '1/2 in hexagon'],
    ['hex 1 1/8 in', 'hex 1 1/8 in', '1 1/8 in hexagon'],
    ['hex-socket 5', 'hex-socket 5', '5 mm hexagon socket'],
    ['hex-socket 9/64 in', 'hex-socket 9/64 in', '9/64 in hexagon socket'],
    ['twelve-point 12', 'twelve-point 12', '12 mm twelve-point'],
    ['T15', 'T15', 'T15'],
    ['t 15', 'T15', 'T15'],
    ['T15 security', 'T15 security', 'T15 security'],
    ['E10', 'E10', 'E10'],
    ['PH2', 'PH2', 'PH2'],
    ['PZ 2', 'PZ2', 'PZ2'],
    ['JIS2', 'JIS2', 'JIS2'],
    ['square 2', 'square 2', 'square 2'],
    ['square 3/8 in', 'square 3/8 in', '3/8 in square'],
    ['spline 8', 'spline 8', 'spline 8'],
    ['slotted', 'slotted', 'slot'],
    ['push-in', 'push-in', 'push-in fastener'],
    ['pull-out', 'pull-out', 'pull-out fastener'],
  ])('%s', (typed, written, printed) => {
    expect(writtenDrive(drive(typed))).toBe(written);
    expect(plain(formatDrive(drive(typed)))).toBe(printed);
    expect(drive(written)).toEqual(drive(typed));
  });
});

describe('drives that are refused', () => {
  test.each([
    ['T16', 'there is no drive T16; the nearest is T15', 'T15'],
    ['PH7', 'there is no drive PH7; the nearest is PH4', 'PH4'],
    ['torx 15', '"torx 15" is written "T15" here, so that one drive has one name', 'T15'],
    ['TX15', '"TX15" is written "T15" here, so that one drive has one name', 'T15'],
    ['allen 5', '"allen 5" is written "hex-socket 5" here, so that one drive has one name', 'hex-socket 5'],
    ['phillips 2', '"phillips 2" is written "PH2" here, so that one drive has one name', 'PH2'],
    ['hex 1/2', '"hex 1/2" is a fraction without inches; a bare size is in millimetres', 'hex 1/2 in'],
    ['hex 13,5', '"hex 13,5" has a decimal comma; write a decimal point', 'hex 13.5'],
    [
      'hex 13.2',
      'no hexagon or square is made 13.2 mm across its flats; check the size, in millimetres ("hex 13") or inches ("hex 1/2 in")',
      undefined,
    ],
    ['hex 13 N·m', /"hex 13 N·m" does not end in a size; write/, undefined],
    ['hex -7', /"hex -7" is not a drive that Baybook knows; write, for example, "hex 7"/, undefined],
    ['hex 500', /no hexagon or square is made 500 mm/, undefined],
    ['', /the drive is empty/, undefined],
  ])('%s', (typed, message, suggestion) => {
    const parsed = parseDrive(typed);
    const wanted = typeof message === 'string' ? message : expect.stringMatching(message);
    expect(parsed).toMatchObject({ ok: false, message: wanted });
    expect(!parsed.ok && parsed.suggestion).toBe(suggestion);
  });

  test('no text makes the reader throw, and every suggestion is itself a drive', () => {
    const words = fc.constantFrom(
      'hex',
      'hex-socket',
      'T',
      'torx',
      'PH',
      'allen',
      'square',
      'E',
      ' ',
      '1/2',
      '15',
      'in',
      ',',
      '.',
    );
    const text = fc.oneof(
      fc.string(),
      fc.array(words, { maxLength: 6 }).map((list) => list.join('')),
    );
    fc.assert(
      fc.property(text, (typed) => {
        const parsed = parseDrive(typed);
        if (parsed.ok) expect(drive(writtenDrive(parsed.drive))).toEqual(parsed.drive);
        else if (parsed.suggestion !== undefined) expect(parseDrive(parsed.suggestion).ok).toBe(true);
      }),
      runs(200, 500),
    );
  });
});

test('the gather list merges drives into sets, smallest first and each once', () => {
  const drives = [
    'T20',
    'hex 13',
    'T15',
    'hex 7',
    'T15',
    'PH2',
    'hex 1/2 in',
    'hex-socket 5',
    'slotted',
    'pull-out',
  ];
  expect(mergeDrives(drives.map(drive)).map((set) => plain(set.text))).toEqual([
    'PH2 bit',
    '1/2 in hexagon',
    '7, 13 mm hexagon',
    '5 mm hexagon key',
    'T15, T20 bits',
    'trim lever',
    'slotted driver',
  ]);
  expect(mergeDrives([])).toEqual([]);
});
