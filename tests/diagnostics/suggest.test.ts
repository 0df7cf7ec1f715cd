import { describe, expect, it } from 'vitest';
import { didYouMean, nearest, quotedList } from '../../src/diagnostics/suggest.ts';

describe('nearest', () => {
  const tools = ['trim-lever', 'bit-t15', 'socket-7', 'socket-13', 'torque-60', 'rotary-cutter', 'hand-file'];

  it.each([
    ['trim-levr', ['trim-lever']],
    ['socket-8', ['socket-7', 'socket-13']],
    ['torque-wrench', ['torque-60']],
    ['sockt-13', ['socket-13']],
    ['bit-t-15', ['bit-t15']],
    ['spanner', []],
    ['x', []],
  ])('of %s', (typed, expected) => {
    expect(nearest(typed, tools)).toEqual(expected);
  });

  it('offers few, and never the name itself', () => {
    expect(nearest('clip', ['clip', 'clip-a', 'clip-b', 'clip-c', 'clip-d'])).toEqual([
      'clip-a',
      'clip-b',
      'clip-c',
    ]);
  });
});

// Some 20 ms each where it was written.
it('looks through a crib of 16,000 names, all of which share a word with the mistyped one', {
  timeout: 20_000,
}, () => {
  const crib = Array.from({ length: 16_000 }, (_, index) => `socket-${index}`);
  for (let index = 1; index <= 5; index += 1)
    expect(nearest(`socket-${index}70x`, crib)[0]).toBe(`socket-${index}70`);
});

it('lists names as a person does', () => {
  expect(quotedList(['a'], 'or')).toBe('"a"');
  expect(quotedList(['a', 'b', 'c'], 'and')).toBe('"a", "b" and "c"');
  expect(didYouMean([])).toBe('');
  expect(didYouMean(['a', 'b'])).toBe('did you mean "a" or "b"?');
});
