import { describe, expect, test } from 'vitest';
import { parseThread } from '../../src/trade/thread.ts';
import { thread } from './read.ts';

describe('threads as authors write them', () => {
  test.each([
    ['M8x1.25', 'M8x1.25', 'coarse'],
    ['M8×1.25', 'M8x1.25', 'coarse'],
    ['m8 x 1', 'M8x1', 'fine'],
    ['M8', 'M8x1.25', 'coarse'],
    ['M6x1.0', 'M6x1', 'coarse'],
    ['1/4-20', '1/4-20', 'coarse'],
    ['1/4-28 UNF', '1/4-28', 'fine'],
    ['¼-20', '1/4-20', 'coarse'],
    ['#10-24', '#10-24', 'coarse'],
    ['10-32', '#10-32', 'fine'],
  ])('%s', (typed, name, series) => expect(thread(typed)).toMatchObject({ name, series }));
});

// Unified threads, coarse and fine, per inch: BOSL2 screws.scad.
test.each([
  ['1/4', 20, 28],
  ['5/16', 18, 24],
  ['3/8', 16, 24],
  ['7/16', 14, 20],
  ['1/2', 13, 20],
  ['9/16', 12, 18],
  ['5/8', 11, 18],
  ['3/4', 10, 16],
])('%s in has %d or %d threads to the inch', (size, coarse, fine) => {
  const found = [coarse, fine].map((count) => thread(`${size}-${count}`));
  expect(found.map(({ series }) => series)).toEqual(['coarse', 'fine']);
  expect(found.map(({ pitch }) => Math.round(25.4 / pitch))).toEqual([coarse, fine]);
});

describe('threads that are refused', () => {
  test.each([
    ['M8x2', 'M8 is not made with a pitch of 2 mm; it has 1.25, 1, 0.75', 'M8x1.25'],
    ['1/4-24', '1/4 is not made with 24 threads to the inch; it has 20 or 28', '1/4-20'],
    ['M8x1,25', '"M8x1,25" has a decimal comma; write a decimal point', 'M8x1.25'],
    [
      'M9',
      'there is no thread M9 among those that vehicles use; write, for example, "M8x1.25" or "1/4-20"',
      undefined,
    ],
    [
      '13/64-20',
      'there is no inch thread 13/64 among those that vehicles use; write, for example, "M8x1.25" or "1/4-20"',
      undefined,
    ],
    ['1/4', '"1/4" is not a thread that Baybook knows; write, for example, "M8x1.25" or "1/4-20"', undefined],
    ['', 'the thread is empty; write, for example, "M8x1.25" or "1/4-20"', undefined],
  ])('%s', (typed, message, suggestion) => {
    const parsed = parseThread(typed);
    expect(parsed).toMatchObject({ ok: false, message });
    expect(!parsed.ok && parsed.suggestion).toBe(suggestion);
  });
});
