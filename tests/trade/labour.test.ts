import fc from 'fast-check';
import { expect, test } from 'vitest';
import { addEstimates, expectation, formatLabour, inSeries, tenthsOfAnHour } from '../../src/trade/labour.ts';
import { base, type Minutes } from '../../src/units/quantity.ts';
import { plain } from './read.ts';

const minutes = fc.integer({ min: 0, max: 500 });
const estimates = fc.tuple(minutes, minutes, minutes).map((three) => {
  const [least = 0, likely = 0, most = 0] = three.toSorted((a, b) => a - b);
  return { least: base<'time'>(least), likely: base<'time'>(likely), most: base<'time'>(most) };
});

test('minutes are summed first and rounded once', () => {
  const four = base<'time'>(4);
  expect(tenthsOfAnHour(Array<Minutes>(10).fill(four))).toBe(0.7);
  expect(plain(formatLabour(0.7))).toBe('0.7 h');
  expect(plain(formatLabour(2))).toBe('2.0 h');
});

test('binary fractions do not tip a half downwards', () => {
  expect(tenthsOfAnHour(Array<Minutes>(30).fill(base(0.1)))).toBe(0.1);
});

test('the expected time lies between the bounds, and spreads add as squares', () => {
  fc.assert(
    fc.property(fc.array(estimates, { minLength: 1, maxLength: 8 }), (list) => {
      const { mean, spread } = inSeries(list);
      const bounds = addEstimates(list);
      expect(mean).toBeGreaterThanOrEqual(bounds.least - 1e-9);
      expect(mean).toBeLessThanOrEqual(bounds.most + 1e-9);
      expect(spread).toBeLessThanOrEqual(list.reduce((sum, one) => sum + expectation(one).spread, 0) + 1e-9);
    }),
  );
});
