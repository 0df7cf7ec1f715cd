import { expect, test } from 'vitest';
import { claimAboveWeakest, trailerForDValue, weakestLink } from '../../src/trade/towing.ts';
import { base } from '../../src/units/quantity.ts';
import { plain, quantity } from './read.ts';

const link = (name: string, rating: string) => ({ name, rating: quantity(rating, 'mass') });
const links = [link('vehicle', '2000 kg'), link('hitch', '3500 lb'), link('ball', '1500 kg')];

test('the weakest link governs, in whatever unit it is rated, and the first of equals is named', () => {
  expect(weakestLink(links)?.name).toBe('ball');
  expect(weakestLink([link('hitch', '1500 kg'), link('ball', '1500 kg')])?.name).toBe('hitch');
  expect(weakestLink([])).toBeUndefined();
});

test('a claim above the weakest link is told', () => {
  expect(claimAboveWeakest(quantity('1500 kg', 'mass'), links)).toBeUndefined();
  expect(plain(claimAboveWeakest(quantity('3500 lb', 'mass'), links) ?? '')).toBe(
    '3500 lb (1588 kg) is claimed, but the ball is rated 1500 kg (3307 lb); the weakest link governs',
  );
  expect(claimAboveWeakest(quantity('3500 lb', 'mass'), [])).toBeUndefined();
});

test('a coupling that is stronger than any trailer can pull has no limit', () => {
  expect(trailerForDValue(base(1000), base(9810))).toBe(Number.POSITIVE_INFINITY);
});
