import { expect, test } from 'vitest';
import { PAPERS, POINTS_PER_MM, paperTolerance } from '../../src/trade/paper.ts';

// ISO 216 and ANSI sizes; points as mecengineers.net prints them, and pdf-lib's PageSizes to 0.01 pt.
test.each([
  ['a4', 595.2756, 841.8898],
  ['a3', 841.8898, 1190.5512],
  ['letter', 612, 792],
  ['tabloid', 792, 1224],
] as const)('%s in points', (name, width, height) => {
  expect(PAPERS[name].width * POINTS_PER_MM).toBeCloseTo(width, 4);
  expect(PAPERS[name].height * POINTS_PER_MM).toBeCloseTo(height, 4);
});

test('paper cannot hold half a millimetre over 600 mm, and can hold 0.6 mm over 124 mm', () => {
  expect(paperTolerance(600)).toBeGreaterThan(0.5);
  expect(paperTolerance(124)).toBeLessThan(0.6);
});
