import { describe, expect, test } from 'vitest';
import { judgeCircuit } from '../../src/trade/circuit.ts';
import { base } from '../../src/units/quantity.ts';
import { wire } from './read.ts';

function faults(load: number, metres: number, size: string, fuse: number): readonly string[] {
  const circuit = { load: base<'current'>(load), length: base<'length'>(metres * 1000), wire: wire(size) };
  return judgeCircuit({ ...circuit, fuse: base<'current'>(fuse), voltage: base<'voltage'>(12) }).map(
    (one) => one.message,
  );
}

describe('a circuit', () => {
  test('that is sound has no fault', () => expect(faults(10, 1.5, '2.5 mm²', 15)).toEqual([]));

  test('whose fuse does not lie between load and wire is told', () => {
    expect(faults(10, 0.5, '1 mm²', 20)).toEqual([
      'the 20 A fuse does not protect 1 mm², which may carry 17 A: the wire burns first',
    ]);
    expect(faults(12, 1, '2.5 mm²', 10)).toEqual(['the 10 A fuse blows at the load of 12 A']);
    expect(faults(14, 1, '2.5 mm²', 15)).toEqual([
      'the load of 14 A is more than 80 % of the 15 A fuse, which ages and blows (our own rule of thumb)',
    ]);
    expect(faults(25, 0.5, '1.5 mm²', 40)).toEqual([
      'the load of 25 A is too much for 1.5 mm², which may carry 21 A',
      'the 40 A fuse does not protect 1.5 mm², which may carry 21 A: the wire burns first',
    ]);
  });

  test('that loses too much on the way is told, there and back', () => {
    expect(faults(10, 5, '2.5 mm²', 15)).toEqual([
      '0.76 V of 12 V (6 %) is lost in the wire; more than 3 % dims a lamp',
    ]);
    expect(faults(10, 10, '2.5 mm²', 15)).toEqual([
      '1.52 V of 12 V (13 %) is lost in the wire; more than 10 % starves the load',
    ]);
  });

  test('needs a fuse that can be bought', () => {
    expect(faults(8, 1, '2.5 mm²', 12)).toEqual([
      'no blade fuse is made for 12 A; they are 1, 2, 3, 4, 5, 7.5, 10, 15, 20, 25, 30, 35, 40 A',
    ]);
  });

  test('of thin wire and of thick cable is judged', () => {
    expect(faults(1, 0.5, '0.5 mm²', 2)).toEqual([]);
    expect(faults(1, 0.5, '0.5 mm²', 20)).toEqual([
      'the 20 A fuse does not protect 0.5 mm², which may carry 11 A: the wire burns first',
    ]);
    expect(faults(80, 0.5, '16 mm²', 300)).toEqual([
      'the 300 A fuse does not protect 16 mm², which may carry 102 A: the wire burns first',
    ]);
    expect(faults(200, 0.5, '70 mm²', 250)).toEqual([]);
  });

  test('is judged as far as it is stated', () => {
    const stated = {
      load: base<'current'>(12),
      length: null,
      wire: null,
      fuse: base<'current'>(10),
      voltage: null,
    };
    expect(judgeCircuit(stated).map(({ kind }) => kind)).toEqual(['fuse-below-load']);
    expect(judgeCircuit({ ...stated, load: null, wire: wire('0.5 mm²'), fuse: base(20) })).toHaveLength(1);
    expect(judgeCircuit({ ...stated, load: null, fuse: null })).toEqual([]);
  });
});
