import { expect, test } from 'vitest';
import { trailerForDValue, weakestLink } from '../../src/trade/towing.ts';
import { base } from '../../src/units/quantity.ts';

test('the weakest link governs, and the first of equals is named', () => {
  const link = (name: string, kg: number) => ({ name, rating: base<'mass'>(kg), mark: null });
  expect(weakestLink([link('vehicle', 2000), link('hitch', 1500), link('ball', 1500)])?.name).toBe('hitch');
  expect(weakestLink([])).toBeUndefined();
});

test('a coupling that is stronger than any trailer can pull has no limit', () => {
  expect(trailerForDValue(base(1000), base(9810))).toBe(Number.POSITIVE_INFINITY);
});
