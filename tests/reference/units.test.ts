import fc from 'fast-check';
import { unit as mathUnit } from 'mathjs';
import { describe, expect, test } from 'vitest';
import { convert, quantityOf } from '../../src/units/format.ts';
import { nearestFraction } from '../../src/units/fraction.ts';
import { base, type Dimension } from '../../src/units/quantity.ts';
import { units } from '../../src/units/table.ts';
import { runs } from '../samples.ts';

/** Our printed units in the spelling of mathjs 15, and a base unit to measure each dimension in. */
const oracle: { readonly [D in Dimension]: { readonly [ours: string]: string } } = {
  length: { mm: 'mm', cm: 'cm', m: 'm', µm: 'um', in: 'inch', ft: 'ft' },
  mass: { kg: 'kg', g: 'g', t: 'tonne', lb: 'lbm', oz: 'oz' },
  volume: {
    l: 'l',
    ml: 'ml',
    'US gal': 'gallon',
    'US qt': 'quart',
    'US pt': 'pint',
    'US fl oz': 'fluidounce',
  },
  time: { min: 'minute', s: 's', h: 'hour', d: 'day' },
  torque: { N·m: 'N m', lbf·ft: 'lbf ft', lbf·in: 'lbf inch', kgf·m: 'kgf m', kgf·cm: 'kgf cm' },
  force: { N: 'N', kN: 'kN', kgf: 'kgf', lbf: 'lbf' },
  pressure: { kPa: 'kPa', Pa: 'Pa', MPa: 'MPa', bar: 'bar', psi: 'psi' },
  angle: { '°': 'deg', turn: 'cycle', rad: 'rad' },
  temperature: { '°C': 'degC', '°F': 'degF' },
  area: { 'mm²': 'mm^2', 'cm²': 'cm^2', 'm²': 'm^2', 'in²': 'inch^2' },
  current: { A: 'A', mA: 'mA' },
  charge: { A·h: 'A hour', mA·h: 'mA hour' },
  voltage: { V: 'V', mV: 'mV', kV: 'kV' },
  power: { W: 'W', kW: 'kW' },
  // The only unit of its dimension: there is nothing to convert it to.
  percentage: { '%': '' },
  resistance: { Ω: 'ohm', mΩ: 'mohm', kΩ: 'kohm', MΩ: 'Mohm' },
};

describe('every conversion agrees with mathjs', () => {
  test('each unit has its counterpart there', () => {
    expect(
      units.map((unit) => unit.name).filter((name) => !Object.values(oracle).some((row) => name in row)),
    ).toEqual([]);
  });

  test('between any two units of a dimension', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...units.filter(({ dimension }) => dimension !== 'percentage')),
        fc.nat(9),
        fc.double({ min: 0.01, max: 5000, noNaN: true }),
        (from, pick, value) => {
          const family = units.filter((unit) => unit.dimension === from.dimension);
          const to = family[pick % family.length] ?? from;
          const names = oracle[from.dimension];
          const theirs = mathUnit(value, names[from.name] ?? '').toNumber(names[to.name] ?? '');
          const ours = convert(quantityOf(from.dimension, value, from.name), to.name);
          // mathjs rounds its psi in the eleventh figure.
          expect(Math.abs(ours - theirs)).toBeLessThanOrEqual(1e-9 * Math.max(1, Math.abs(theirs)));
        },
      ),
      runs(300, 1000),
    );
  });
});

describe('exact values: international yard and pound (1959), NIST SP 811 appendix B.8', () => {
  // The long forms follow from inch 25.4 mm, pound 0.453 592 37 kg and g 9.806 65 m/s² (Unicode CLDR units.xml).
  test.each<[Dimension, string, string, number]>([
    ['length', 'in', 'mm', 25.4],
    ['length', 'ft', 'm', 0.3048],
    ['mass', 'lb', 'kg', 0.45359237],
    ['force', 'lbf', 'N', 4.4482216152605],
    ['torque', 'lbf·ft', 'N·m', 1.3558179483314],
    ['torque', 'lbf·in', 'N·m', 0.1129848290276167],
    ['torque', 'kgf·m', 'N·m', 9.80665],
    ['torque', 'N·m', 'lbf·ft', 0.737562149277],
    ['torque', 'N·m', 'lbf·in', 8.850745791327],
    ['torque', 'kgf·m', 'lbf·ft', 7.233013851],
    ['torque', 'lbf·ft', 'lbf·in', 12],
    ['pressure', 'psi', 'Pa', 6894.7572931684],
    ['mass', 'kg', 'lb', 2.204622621849],
  ])('one of %s %s is %s', (dimension, from, to, value) => {
    const ours = convert(quantityOf(dimension, 1, from), to);
    expect(Math.abs(ours / value - 1)).toBeLessThan(1e-9);
  });

  // The seven figures that NIST SP 811 prints.
  test.each<[Dimension, string, string, string]>([
    ['torque', 'lbf·ft', 'N·m', '1.355818'],
    ['torque', 'lbf·in', 'N·m', '0.1129848'],
    ['pressure', 'psi', 'kPa', '6.894757'],
    ['mass', 'lb', 'kg', '0.4535924'],
  ])('%s: %s in %s to seven figures', (dimension, from, to, printed) => {
    expect(Number(convert(quantityOf(dimension, 1, from), to).toPrecision(7))).toBe(Number(printed));
  });

  test('freezing and boiling water', () => {
    expect(convert(quantityOf('temperature', 32, '°F'), '°C')).toBeCloseTo(0, 9);
    expect(convert(quantityOf('temperature', 100, '°C'), '°F')).toBeCloseTo(212, 9);
  });
});

// Computed from the exact factors above.
describe('torques that a shop meets', () => {
  test.each([
    [5, 3.688, 44.25],
    [8, 5.9, 70.81],
    [10, 7.376, 88.51],
    [12, 8.851, 106.21],
    [25, 18.439, 221.27],
    [48, 35.403, 424.84],
    [110, 81.132, 973.58],
  ])('%d N·m', (newtonMetres, feet, inches) => {
    const torque = quantityOf('torque', newtonMetres, 'N·m');
    expect(convert(torque, 'lbf·ft')).toBeCloseTo(feet, 3);
    expect(convert(torque, 'lbf·in')).toBeCloseTo(inches, 2);
  });

  test.each([
    [5, 6.7791],
    [18, 24.4047],
    [25, 33.8954],
    [35, 47.4536],
    [65, 88.1282],
    [80, 108.4654],
    [100, 135.5818],
  ])('%d lbf·ft', (feet, newtonMetres) => {
    expect(convert(quantityOf('torque', feet, 'lbf·ft'), 'N·m')).toBeCloseTo(newtonMetres, 4);
  });
});

describe('fractions of an inch', () => {
  // Decimal-to-fraction chart of machinecalcs.com: 0.123 in is 7.87/64, so 8/64, so 1/8.
  test('the worked example', () => expect(nearestFraction(base(0.123 * 25.4), 64).text).toBe('1/8'));

  test.each([
    ['25/64', 9.921875],
    ['33/64', 13.096875],
    ['63/64', 25.003125],
  ])('%s in of the chart', (text, mm) =>
    expect(nearestFraction(base(mm), 64)).toEqual({ text, error: expect.closeTo(0, 9) }),
  );

  // Computed; errors in mm are those of the fraction against the metric size.
  test.each([
    [8, '5/16', -0.062, '5/16'],
    [10, '25/64', -0.078, '3/8'],
    [11, '7/16', 0.113, '7/16'],
    [12, '15/32', -0.094, '1/2'],
    [13, '33/64', 0.097, '1/2'],
    [14.2875, '9/16', 0, '9/16'],
    [17, '43/64', 0.066, '11/16'],
    [19, '3/4', 0.05, '3/4'],
    [22, '55/64', -0.172, '7/8'],
    [25, '63/64', 0.003, '1'],
    [51, '2 1/64', 0.197, '2'],
    [300, '11 13/16', 0.037, '11 13/16'],
  ])('%d mm', (mm, in64ths, error, in16ths) => {
    expect(nearestFraction(base(mm), 64)).toEqual({ text: in64ths, error: expect.closeTo(error, 2) });
    expect(nearestFraction(base(mm), 16).text).toBe(in16ths);
  });
});
