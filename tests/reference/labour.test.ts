import { describe, expect, test } from 'vitest';
import { expectation, inSeries, tenthsOfAnHour } from '../../src/trade/labour.ts';
import type { Estimate } from '../../src/units/estimate.ts';
import { base } from '../../src/units/quantity.ts';

function estimate(text: string): Estimate {
  const [least = 0, likely = 0, most = 0] = text.split('-').map(Number);
  return { least: base(least), likely: base(likely), most: base(most) };
}

const mean = (text: string): number => expectation(estimate(text)).mean;
const variance = (text: string): number => expectation(estimate(text)).spread ** 2;

/** Share of a normal distribution below z, by Abramowitz and Stegun 26.2.17 (error below 7.5e-8). */
function normalShare(z: number): number {
  const t = 1 / (1 + 0.2316419 * z);
  const tail =
    t * (0.31938153 + t * (-0.356563782 + t * (1.781477937 + t * (-1.821255978 + t * 1.330274429))));
  return 1 - (Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI)) * tail;
}

describe('PERT: mean (a + 4m + b)/6, variance ((b − a)/6)²', () => {
  // schematex.js.org.
  test('5-8-14', () => {
    expect(mean('5-8-14')).toBe(8.5);
    expect(expectation(estimate('5-8-14')).spread).toBe(1.5);
  });

  // A ten-activity example (scribd 396883604): path C-F-H-J is 17; the variance of the path is computed.
  test('ten activities', () => {
    const all = ['5-6-7', '1-3-5', '1-4-7', '1-2-3', '1-2-9', '1-5-9', '2-2-8', '4-4-10', '2-5-8', '2-2-8'];
    expect(all.map(mean)).toEqual([6, 3, 4, 2, 3, 5, 3, 5, 5, 3]);
    expect(all.map((one) => Math.round(variance(one) * 100) / 100)).toEqual([
      0.11, 0.44, 1, 0.11, 1.78, 1.78, 1, 1, 1, 1,
    ]);
    const path = inSeries(['1-4-7', '1-5-9', '4-4-10', '2-2-8'].map(estimate));
    expect(path.mean).toBe(17);
    expect(path.spread ** 2).toBeCloseTo(4.778, 3);
  });

  // flylib 3.287.1.117: four in series, probability .9633 of 28 or less (.9632 computed).
  test('four in series', () => {
    const { mean: total, spread } = inSeries(['5-8-17', '3-5-7', '4-6-8', '3-4-5'].map(estimate));
    expect(total).toBe(24);
    expect(spread ** 2).toBeCloseTo(5, 9);
    expect(normalShare((28 - total) / spread)).toBeCloseTo(0.9632, 4);
  });

  // The paper mill (from memory; the share is computed): A-C-E-G-H.
  test('paper mill', () => {
    const { mean: total, spread } = inSeries(['1-2-3', '1-2-3', '1-4-7', '3-4-11', '1-2-3'].map(estimate));
    expect(total).toBe(15);
    expect(spread ** 2).toBeCloseTo(3.111, 3);
    expect(normalShare((16 - total) / spread)).toBeCloseTo(0.7146, 3);
  });
});

describe('tenths of an hour', () => {
  // hugecalculator.com: 6 min are 0.1 h, minutes are divided by 6 and rounded to the nearest; halves go up.
  test.each([
    [6, 0.1],
    [7, 0.1],
    [9, 0.2],
    [15, 0.3],
    [45, 0.8],
    [83, 1.4],
    [0, 0],
  ])('%d min', (minutes, hours) => expect(tenthsOfAnHour([base(minutes)])).toBe(hours));

  test('half-even rounding, which some programs use, would give 15 min as 0.2 h', () => {
    expect(tenthsOfAnHour([base(15)])).not.toBe(0.2);
  });
});
