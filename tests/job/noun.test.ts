import { describe, expect, it } from 'vitest';
import { capitalised, listed, nounOf, regularPlural } from '../../src/job/words/noun.ts';

describe('what an item is called', () => {
  it.each([
    ['Liner screw', 'liner screw', 'liner screws'],
    ['Torque wrench, 10–60 N·m', 'torque wrench', 'torque wrenches'],
    ['Masking tape, 25 mm', 'masking tape', 'masking tapes'],
    ['M8 flange nut', 'M8 flange nut', 'M8 flange nuts'],
    ['T15 bit', 'T15 bit', 'T15 bits'],
    ['7 mm socket', '7 mm socket', '7 mm sockets'],
    ['LED lamp', 'LED lamp', 'LED lamps'],
    ['Hub assembly', 'hub assembly', 'hub assemblies'],
    ['Relay', 'relay', 'relays'],
  ])('%s', (label, singular, plural) => {
    expect(nounOf(label)).toEqual({ label, singular, plural });
  });

  it('takes the plural that the author gives', () => {
    expect(nounOf('Pair of pliers', 'pairs of pliers').plural).toBe('pairs of pliers');
  });
});

it('makes regular plurals', () => {
  expect(['bolt', 'bush', 'latch', 'boss', 'box', 'key', 'body'].map(regularPlural)).toEqual([
    'bolts',
    'bushes',
    'latches',
    'bosses',
    'boxes',
    'keys',
    'bodies',
  ]);
});

it('begins a sentence with a capital, also an accented one', () => {
  expect(capitalised('émail')).toBe('Émail');
});

it('lists words as a sentence does', () => {
  expect(listed([])).toBe('');
  expect(listed(['a'])).toBe('a');
  expect(listed(['a', 'b'])).toBe('a and b');
  expect(listed(['a', 'b', 'c'], 'or')).toBe('a, b or c');
});
