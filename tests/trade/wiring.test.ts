import { describe, expect, test } from 'vitest';
import { judgeCircuit, parseWire } from '../../src/trade/wiring.ts';
import { base } from '../../src/units/quantity.ts';
import { wire } from './read.ts';

function faults(load: number, metres: number, size: string, fuse: number): readonly string[] {
  const circuit = { load: base<'current'>(load), length: base<'length'>(metres * 1000), wire: wire(size) };
  return judgeCircuit({ ...circuit, fuse: base<'current'>(fuse), voltage: base<'voltage'>(12) }).faults.map(
    (one) => one.message,
  );
}

describe('a circuit', () => {
  test('that is sound has no fault', () => expect(faults(10, 1.5, '2.5 mm²', 15)).toEqual([]));

  test('whose fuse does not lie between load and wire is told', () => {
    expect(faults(10, 1, '1 mm²', 20)).toEqual([
      'the 20 A fuse does not protect 1 mm², which may carry 17 A: the wire burns first',
    ]);
    expect(faults(12, 1, '2.5 mm²', 10)).toEqual(['the 10 A fuse blows at the load of 12 A']);
    expect(faults(14, 1, '2.5 mm²', 15)).toEqual([
      'the load of 14 A is more than 80 % of the 15 A fuse, which ages and blows',
    ]);
    expect(faults(25, 0.5, '1.5 mm²', 40)).toEqual([
      'the load of 25 A is more than 1.5 mm² may carry, 21 A',
      'the 40 A fuse does not protect 1.5 mm², which may carry 21 A: the wire burns first',
    ]);
  });

  test('that loses too much on the way is told, there and back', () => {
    expect(faults(10, 5, '2.5 mm²', 15)).toEqual([
      '0.715 V of 12 V (6 %) is lost in the wire; more than 3 % dims a lamp',
    ]);
    expect(faults(10, 10, '2.5 mm²', 15)).toEqual([
      '1.43 V of 12 V (12 %) is lost in the wire; more than 10 % starves the load',
    ]);
  });

  test('needs a fuse that can be bought', () => {
    expect(faults(8, 1, '2.5 mm²', 12)).toEqual([
      'no blade fuse is made for 12 A; they are 1, 2, 3, 4, 5, 7.5, 10, 15, 20, 25, 30, 35, 40 A',
    ]);
  });

  test('of a wire that the table does not hold is not judged by guess', () => {
    expect(faults(1, 0.5, '0.5 mm²', 2)).toEqual([]);
    expect(faults(100, 0.5, '16 mm²', 150)).toEqual([]);
  });
});

describe('wire sizes as authors write them', () => {
  test.each(['2.5 mm²', '2.5 mm2', '2.5mm²', '14 AWG', 'AWG 14', '14 sae'])('%s', (typed) =>
    expect(parseWire(typed).ok).toBe(true),
  );

  test.each([
    [
      '14 ga',
      '"14 ga" can be AWG or SAE, and an SAE wire holds less copper; write, for example, "2.5 mm²", "14 AWG" or "14 SAE"',
    ],
    [
      '3 mm²',
      'no vehicle wire is made 3 mm²; the sizes are 0.35, 0.5, 0.75, 1, 1.5, 2.5, 4, 6, 10, 16, 25, 35, 50, 70, 95, 120',
    ],
    ['2,5 mm²', '"2,5 mm²" has a decimal comma; write a decimal point'],
    [
      '30 AWG',
      '30 AWG is too fine for a vehicle\'s wiring; write, for example, "2.5 mm²", "14 AWG" or "14 SAE"',
    ],
    ['13 SAE', 'SAE 13 is not a wire size known here; write, for example, "2.5 mm²", "14 AWG" or "14 SAE"'],
    ['2.5', '"2.5" is not a wire size; write, for example, "2.5 mm²", "14 AWG" or "14 SAE"'],
    ['', 'the wire size is empty; write, for example, "2.5 mm²", "14 AWG" or "14 SAE"'],
  ])('%s is refused', (typed, message) => expect(parseWire(typed)).toMatchObject({ ok: false, message }));
});
