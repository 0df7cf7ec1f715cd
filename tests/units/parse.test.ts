import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { parseQuantity, parseRange } from '../../src/units/parse.ts';
import type { Dimension } from '../../src/units/quantity.ts';
import { dimensionWords, units } from '../../src/units/table.ts';
import { runs } from '../samples.ts';

function read(text: string, dimension: Dimension): string {
  const parsed = parseQuantity(text, dimension);
  return parsed.ok ? `${parsed.quantity.written} ${parsed.quantity.unit}` : parsed.problem;
}

describe('the spellings that authors use', () => {
  test.each([
    ['25 N·m', '25 N·m'],
    ['25Nm', '25 N·m'],
    ['25 N m', '25 N·m'],
    ['25\u00a0N⋅m', '25 N·m'],
    ['25\u202fN-m', '25 N·m'],
    ['18 lbf·ft', '18 lbf·ft'],
    ['18 ft-lb', '18 lbf·ft'],
    ['18 lb-ft', '18 lbf·ft'],
    ['18 ft. lbs.', '18 lbf·ft'],
    ['18 foot-pounds', '18 lbf·ft'],
    ['44 in-lb', '44 lbf·in'],
    ['5 kgf·m', '5 kgf·m'],
  ])('a torque: %s', (typed, printed) => expect(read(typed, 'torque')).toBe(printed));

  test.each([
    ['12.5 mm', '12.5 mm'],
    ['1 000 mm', '1000 mm'],
    ['.5 mm', '0.5 mm'],
    ['+60 mm', '60 mm'],
    ['1 1/4 in', '1 1/4 in'],
    ['1-1/4 in', '1 1/4 in'],
    ['1¼ in', '1 1/4 in'],
    ['1¼"', '1 1/4 in'],
    ['1¼″', '1 1/4 in'],
    ['¾in', '3/4 in'],
    ['1⁄2 inch', '1/2 in'],
    ["6'", '6 ft'],
  ])('a length: %s', (typed, printed) => expect(read(typed, 'length')).toBe(printed));

  test.each<[string, Dimension, string]>([
    ['20 °C', 'temperature', '20 °C'],
    ['-10 C', 'temperature', '-10 °C'],
    ['−10 ºC', 'temperature', '-10 °C'],
    ['68 F', 'temperature', '68 °F'],
    ['90°', 'angle', '90 °'],
    ['1/4 turn', 'angle', '1/4 turn'],
    ['2.5 mm²', 'area', '2.5 mm²'],
    ['2.5 mm2', 'area', '2.5 mm²'],
    ['12V', 'voltage', '12 V'],
    ['75 Ah', 'charge', '75 A·h'],
    ['800 mAh', 'charge', '800 mA·h'],
    ['75 A·h', 'charge', '75 A·h'],
    ['1 h 30 min', 'time', '1 h 30 min'],
    ['0.5 Ω', 'resistance', '0.5 Ω'],
    ['3 oz', 'mass', '3 oz'],
    ['3 fl oz', 'volume', '3 US fl oz'],
    ['220 kpa', 'pressure', '220 kPa'],
  ])('%s', (typed, dimension, printed) => expect(read(typed, dimension)).toBe(printed));
});

describe('what is refused, and what is said about it', () => {
  test.each<[string, Dimension, string, string]>([
    ['', 'torque', 'empty', 'the value is empty; a torque was expected, for example "25 N·m"'],
    ['25', 'torque', 'no-unit', '"25" has no unit; a torque was expected, for example "25 N·m"'],
    ['25 mm', 'torque', 'wrong-kind', '"25 mm" is a length; a torque was expected, for example "25 N·m"'],
    ['5 lb', 'force', 'wrong-kind', '"5 lb" is a mass; a force was expected, for example "200 N"'],
    [
      '25 ft/lb',
      'torque',
      'unknown-unit',
      '"ft/lb" in "25 ft/lb" is not a unit that Baybook knows; a torque is written in N·m, lbf·ft, lbf·in, kgf·m or kgf·cm, for example "25 N·m"',
    ],
    ['12,5 mm', 'length', 'decimal-comma', '"12,5 mm" has a decimal comma; write a decimal point'],
    [
      '1e3 mm',
      'length',
      'not-a-number',
      '"1e3 mm" is not written as a plain number; a length was expected, for example "25 mm"',
    ],
    [
      '1/0 in',
      'length',
      'not-a-number',
      '"1/0 in" does not begin with a number; a length was expected, for example "25 mm"',
    ],
    [
      'Infinity mm',
      'length',
      'not-a-number',
      '"Infinity mm" does not begin with a number; a length was expected, for example "25 mm"',
    ],
    [
      'NaN mm',
      'length',
      'not-a-number',
      '"NaN mm" does not begin with a number; a length was expected, for example "25 mm"',
    ],
    [
      '-5 mm',
      'length',
      'out-of-range',
      '"-5 mm" is below zero, which a length here cannot be; a length was expected, for example "25 mm"',
    ],
    [
      '99999 N·m',
      'torque',
      'out-of-range',
      '"99999 N·m" is beyond anything on a vehicle; check the number and its unit, a torque was expected, for example "25 N·m"',
    ],
  ])('"%s" as %s', (typed, dimension, fault, message) =>
    expect(parseQuantity(typed, dimension)).toMatchObject({ ok: false, problem: fault, message }),
  );

  test('a decimal comma is mended by a point, a comma for thousands is not guessed at', () => {
    expect(parseQuantity('12,5 mm', 'length')).toMatchObject({ suggestion: '12.5 mm' });
    expect(parseQuantity('1,000 mm', 'length')).toMatchObject({ problem: 'decimal-comma' });
    expect(parseQuantity('1,000 mm', 'length')).not.toHaveProperty('suggestion');
  });

  test('milli and mega are not mixed up', () => {
    expect(read('5 mPa', 'pressure')).toBe('unknown-unit');
    expect(parseQuantity('5 mΩ', 'resistance')).toMatchObject({ quantity: { base: 0.005 } });
    expect(parseQuantity('5 MΩ', 'resistance')).toMatchObject({ quantity: { base: 5e6 } });
  });

  test('a coordinate may be below zero where the caller says so', () => {
    expect(parseQuantity('-5 mm', 'length', { negative: true })).toMatchObject({ quantity: { base: -5 } });
  });

  test('more digits than a number can hold are absurd, not infinite', () => {
    expect(read(`${'9'.repeat(400)} mm`, 'length')).toBe('not-a-number');
    expect(read(`${'9'.repeat(30)} mm`, 'length')).toBe('out-of-range');
  });
});

describe('ranges', () => {
  const range = (text: string, dimension: Dimension = 'torque'): string => {
    const parsed = parseRange(text, dimension);
    if (!parsed.ok) return parsed.problem;
    const { least, most } = parsed.range;
    return `${least.base} to ${most.base} ${most.unit}`;
  };

  test.each([
    '10..60 N·m',
    '10 .. 60 Nm',
    '10–60 N·m',
    '10-60 N·m',
    '10…60 N·m',
    '10 to 60 N·m',
    '10 N·m..60 N·m',
  ])('%s', (typed) => expect(range(typed)).toBe('10 to 60 N·m'));

  test('fractions, minus signs and compound times', () => {
    expect(range('1/2..3/4 in', 'length')).toBe('12.7 to 19.049999999999997 in');
    expect(range('-10..40 °C', 'temperature')).toBe('-10 to 40 °C');
    expect(range('45 min..1 h 30 min', 'time')).toBe('45 to 90 min');
    expect(range('0..60 N·m')).toBe('0 to 60 N·m');
  });

  test.each([
    ['60..10 N·m', 'wrong-way-round'],
    ['10..60', 'no-unit'],
    ['10 mm..60 N·m', 'wrong-kind'],
    ['25 N·m', 'not-a-number'],
    ['10..', 'not-a-number'],
    ['1,5..2,5 N·m', 'decimal-comma'],
    ['1-1/4 in', 'not-a-number'],
  ])('%s is refused', (typed, fault) => expect(range(typed)).toBe(fault));
});

test('every unit can be typed as it is printed, and its example is read', () => {
  for (const unit of units) {
    expect(read(`1 ${unit.name}`, unit.dimension)).toBe(`1 ${unit.name}`);
    expect(parseQuantity(dimensionWords[unit.dimension].example, unit.dimension).ok).toBe(true);
  }
});

test('no text whatever makes the reader throw or gives a number that is not finite', () => {
  const dimensions = fc.constantFrom<Dimension>('length', 'torque', 'time', 'temperature');
  const pieces = fc.constantFrom(
    '1',
    '25',
    '.',
    ',',
    '/',
    '-',
    '..',
    ' ',
    'N·m',
    'mm',
    'in',
    '¼',
    '"',
    'h',
    'e',
    '°',
    '–',
    '0',
  );
  const text = fc.oneof(
    fc.string(),
    fc.array(pieces, { maxLength: 8 }).map((list) => list.join('')),
  );
  fc.assert(
    fc.property(text, dimensions, (typed, dimension) => {
      const parsed = parseQuantity(typed, dimension);
      if (parsed.ok) expect(Number.isFinite(parsed.quantity.base)).toBe(true);
      else expect(parsed.message.length).toBeGreaterThan(10);
      const range = parseRange(typed, dimension);
      if (range.ok) expect(range.range.least.base).toBeLessThanOrEqual(range.range.most.base);
    }),
    runs(200, 500),
  );
});

test('a suggestion is itself accepted', () => {
  fc.assert(
    fc.property(fc.nat(999), fc.stringMatching(/^[0-9]{1,2}$/), (whole, decimals) => {
      const parsed = parseQuantity(`${whole},${decimals} mm`, 'length');
      const suggestion = parsed.ok ? undefined : parsed.suggestion;
      expect(parseQuantity(suggestion ?? '', 'length').ok).toBe(true);
    }),
  );
});
