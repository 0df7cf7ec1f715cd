import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  convert,
  formatBoth,
  formatQuantity,
  formatRange,
  formatRangeBoth,
  formatReading,
  quantityOf,
  significant,
} from '../../src/units/format.ts';
import { inchFraction, nearestFraction } from '../../src/units/fraction.ts';
import { parseQuantity, parseRange } from '../../src/units/parse.ts';
import { base, type Dimension, type Quantity, type QuantityRange } from '../../src/units/quantity.ts';
import { limits, units } from '../../src/units/table.ts';

function quantity<D extends Dimension>(text: string, dimension: D): Quantity<D> {
  const parsed = parseQuantity(text, dimension, { negative: true });
  if (!parsed.ok) throw new Error(parsed.message);
  return parsed.quantity;
}

function range<D extends Dimension>(text: string, dimension: D): QuantityRange<D> {
  const parsed = parseRange(text, dimension);
  if (!parsed.ok) throw new Error(parsed.message);
  return parsed.range;
}

/** Printed text with its no-break spaces shown as ordinary ones. */
const plain = (text: string): string => text.replace(/\u00a0/g, ' ');

test('a number and its unit stay on one line', () => {
  expect(formatQuantity(quantity('25 Nm', 'torque'))).toBe('25\u00a0N·m');
  expect(formatQuantity(quantity('1¼ in', 'length'))).toBe('1\u00a01/4\u00a0in');
  expect(formatQuantity(quantity('90 deg', 'angle'))).toBe('90°');
  expect(formatQuantity(quantity('-10 C', 'temperature'))).toBe('−10\u00a0°C');
});

describe("both systems, the author's first", () => {
  test.each<[string, Dimension, string]>([
    ['25 N·m', 'torque', '25 N·m (18.4 lbf·ft)'],
    ['8 N·m', 'torque', '8 N·m (70.8 lbf·in)'],
    ['18 lbf·ft', 'torque', '18 lbf·ft (24.4 N·m)'],
    ['44 lbf·in', 'torque', '44 lbf·in (4.97 N·m)'],
    ['60 mm', 'length', '60 mm (2 3/8 in)'],
    ['60.0 mm', 'length', '60.0 mm (2 23/64 in)'],
    ['10 mm', 'length', '10 mm (25/64 in)'],
    ['300 mm', 'length', '300 mm (11 13/16 in)'],
    ['0.1 mm', 'length', '0.1 mm (0.00394 in)'],
    ['2 m', 'length', '2 m (6.56 ft)'],
    ['0.6 m', 'length', '0.6 m (23 1/2 in)'],
    ['4500 mm', 'length', '4500 mm (14.8 ft)'],
    ['1 1/4 in', 'length', '1 1/4 in (31.8 mm)'],
    ['6 ft', 'length', '6 ft (1.83 m)'],
    ['-10 °C', 'temperature', '−10 °C (14 °F)'],
    ['50 °F', 'temperature', '50 °F (10 °C)'],
    ['220 kPa', 'pressure', '220 kPa (31.9 psi)'],
    ['50 ml', 'volume', '50 ml (1.69 US fl oz)'],
    ['3500 lb', 'mass', '3500 lb (1588 kg)'],
    ['2 kN', 'force', '2 kN (450 lbf)'],
    ['90°', 'angle', '90°'],
    ['10 A', 'current', '10 A'],
  ])('%s', (typed, dimension, printed) =>
    expect(plain(formatBoth(quantity(typed, dimension)))).toBe(printed),
  );

  test('ranges', () => {
    expect(plain(formatRange(range('10..60 N·m', 'torque')))).toBe('10–60 N·m');
    expect(plain(formatRangeBoth(range('10..60 N·m', 'torque')))).toBe('10–60 N·m (7.38–44.3 lbf·ft)');
    expect(plain(formatRangeBoth(range('180..240 mm', 'length')))).toBe('180–240 mm (7 3/32–9 7/16 in)');
    expect(plain(formatRangeBoth(range('-10..40 °C', 'temperature')))).toBe('−10 °C to 40 °C (14–104 °F)');
    expect(plain(formatRange(range('45 min..1 h 30 min', 'time')))).toBe('45 min to 1 h 30 min');
  });

  test('gives a small reading in 64ths of an inch, as a rule has them, never beyond its limits', () => {
    // Worked out by hand: 5/64 in = 1.984 mm, 6/64 = 2.38; 1/32 in = 0.794 mm, 3/64 = 1.19; 1/64 in = 0.397 mm.
    const words = (text: string) => plain(formatReading(range(text, 'length')));
    expect(words('0..2 mm')).toBe('0–2 mm (0–5/64 in)');
    expect(words('0..1 mm')).toBe('0–1 mm (0–1/32 in)');
    expect(words('0.5..2.5 mm')).toBe('0.5–2.5 mm (1/32–3/32 in)');
    expect(words('8..14 mm')).toBe('8–14 mm (5/16–35/64 in)');
    // A feeler gauge is needed here: no rule shows it.
    expect(words('0.1..0.3 mm')).toBe('0.1–0.3 mm (0.00394–0.0118 in)');
    expect(words('0.5..0.7 mm')).toBe('0.5–0.7 mm (0.0197–0.0276 in)');
  });
});

describe('fractions of an inch', () => {
  test('are reduced, at most 64ths, and their error is known', () => {
    expect(inchFraction(base(25))).toEqual({ text: '63/64', error: expect.closeTo(0.003, 3) });
    expect(inchFraction(base(25), 0.4)).toEqual({ text: '1', error: expect.closeTo(0.4, 9) });
    expect(nearestFraction(base(12.7), 16).text).toBe('1/2');
    expect(inchFraction(base(-12.7)).text).toBe('-1/2');
    expect(inchFraction(base(0)).text).toBe('0');
  });

  test('the nearest 64th is never off by more than half of one', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 5000, noNaN: true }), (mm) => {
        const { text, error } = inchFraction(base(mm));
        expect(Math.abs(error)).toBeLessThanOrEqual(25.4 / 128 + 1e-9);
        const read = text === '0' ? 0 : quantity(`${text} in`, 'length').base;
        expect(read - error).toBeCloseTo(mm, 6);
        const [top, bottom] = text.includes('/')
          ? (text.split(' ').at(-1) ?? '').split('/').map(Number)
          : [1, 1];
        expect((top ?? 0) % 2).toBe(1);
        expect(64 % (bottom ?? 0)).toBe(0);
      }),
    );
  });
});

describe('numbers', () => {
  test('have three significant digits, no noise and no exponent', () => {
    expect(significant(18.439)).toBe('18.4');
    expect(significant(0.1 + 0.2)).toBe('0.3');
    expect(significant(1234567)).toBe('1234567');
    expect(significant(0)).toBe('0');
    expect(significant(0.00000001)).toBe('0');
    expect(significant(-0.00000001)).toBe('0');
    expect(significant(9.9999)).toBe('10');
  });

  test('are never printed in exponent form or with float noise', () => {
    fc.assert(
      fc.property(fc.constantFrom(...units), fc.double({ min: 0, max: 1, noNaN: true }), (unit, share) => {
        const most = limits[unit.dimension][1];
        const printed = plain(
          formatBoth(quantityOf(unit.dimension, (share * most - unit.offset) / unit.factor, unit.name)),
        );
        expect(printed).not.toMatch(/\d[eE][+-]?\d|NaN|Infinity|\.\d{7,}/);
      }),
    );
  });
});

describe('round trips', () => {
  const numbers = fc.oneof(
    fc.nat(999).map(String),
    fc.tuple(fc.nat(99), fc.nat(99)).map(([whole, part]) => `${whole}.${part}`),
    fc
      .tuple(fc.integer({ min: 1, max: 9 }), fc.integer({ min: 1, max: 63 }))
      .map(([whole, top]) => `${whole} ${top}/64`),
  );

  test('what is printed is read back as the same quantity', () => {
    fc.assert(
      fc.property(numbers, fc.constantFrom(...units), (number, unit) => {
        const parsed = parseQuantity(`${number} ${unit.name}`, unit.dimension);
        fc.pre(parsed.ok);
        if (parsed.ok)
          expect(quantity(formatQuantity(parsed.quantity), unit.dimension)).toEqual(parsed.quantity);
      }),
    );
  });

  test('the converted value is within half a percent, a 64th of an inch or a degree', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 900 }), fc.constantFrom(...units), (number, unit) => {
        const parsed = parseQuantity(`${number} ${unit.name}`, unit.dimension);
        fc.pre(parsed.ok);
        if (!parsed.ok) return;
        const other = /\((.*)\)/.exec(formatBoth(parsed.quantity))?.[1];
        fc.pre(other !== undefined && /[1-9]/.test(other));
        const back = quantity(other ?? '', unit.dimension).base;
        const slack = unit.dimension === 'length' ? 0.2 : unit.dimension === 'temperature' ? 0.6 : 1e-6;
        expect(Math.abs(back - parsed.quantity.base)).toBeLessThanOrEqual(
          0.006 * Math.abs(parsed.quantity.base) + slack,
        );
      }),
    );
  });

  test('twelve pound-force inches are one pound-force foot', () => {
    expect(convert(quantity('1 lbf·ft', 'torque'), 'lbf·in')).toBeCloseTo(12, 12);
  });

  test('a conversion between kinds is our own bug and throws', () => {
    expect(() => convert(quantity('1 mm', 'length'), 'N·m')).toThrow('N·m is no unit of length');
    expect(() => convert(quantity('1 mm', 'length'), 'furlong')).toThrow('no unit is named furlong');
  });
});
