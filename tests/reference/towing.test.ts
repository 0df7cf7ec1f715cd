import { describe, expect, test } from 'vitest';
import { dValue, hitchClasses, trailerForDValue } from '../../src/trade/towing.ts';
import { base } from '../../src/units/quantity.ts';

const kilonewtons = (vehicle: number, trailer: number): number =>
  dValue(base(vehicle * 1000), base(trailer * 1000)) / 1000;

describe('D = 9.81·T·R/(T + R)', () => {
  // engineersedge.com prints 97 for 18 t and 22 t; the others are computed.
  test.each([
    [18, 22, 97.119],
    [18, 14, 77.254],
    [2, 1.5, 8.409],
    [1.8, 1.5, 8.026],
    [2.2, 2, 10.277],
    [3.5, 3.5, 17.168],
  ])('%d t and %d t', (vehicle, trailer, d) => expect(kilonewtons(vehicle, trailer)).toBeCloseTo(d, 3));

  // trailer_hitch_ball_coupler_size_14733 prints R = T·D/(9.81·R − D), with R on both sides; 9.81·T is right.
  test('solved for the trailer it gives the trailer back', () => {
    expect(trailerForDValue(base(18000), base(97119))).toBeCloseTo(22000, -1);
    expect(trailerForDValue(base(2000), dValue(base(2000), base(1500)))).toBeCloseTo(1500, 6);
  });
});

// SAE J684 gross trailer masses by sizes.com; ball loads: class 2 engineerfix.com, the others from memory, a tenth.
test('hitch classes', () => {
  expect(Object.values(hitchClasses).map((one) => one.trailer)).toEqual([2000, 3500, 5000, 10000]);
  expect(hitchClasses['2']?.ball).toBe(350);
  for (const { trailer, ball } of Object.values(hitchClasses)) expect(ball).toBe(trailer / 10);
});
