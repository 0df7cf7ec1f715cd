import { expect, test } from 'vitest';
import { resolve } from '../../src/cut/shape/resolve.ts';
import { hole, keepOut, mm, span, template } from './fixtures.ts';

const hose = keepOut('Washer hose', [
  [-80, 60],
  [80, 60],
  [80, 75],
  [-80, 75],
]);

const curved = (radius: number) =>
  resolve(
    template({
      holes: [hole(30, 20, 8)],
      keepOuts: [hose],
      curveRadius: { value: mm(radius), at: span(7) },
    }),
  ).findings.map(({ code, at, message }) => `${code} ${at.start} ${message}`);

test('a curve on which everything can be laid is right', () => {
  // 80 mm is 0.95 of 84.2 mm.
  expect(curved(85)).toEqual([]);
});

// A radius of 1 mm once took seconds: each side of the keep-out was halved until nothing of it was left.
test.each([1, 84])('a tighter curve is told once, with the least that fits: %s mm', (radius) => {
  const message = `a curve of ${radius} mm is too tight for this template: “Washer hose” reaches 80 mm from the upright datum, which asks for a radius of at least 85 mm`;
  expect(curved(radius)).toEqual([`cut-curve-too-tight 7 ${message}`]);
});
