import { describe, expect, test } from 'vitest';
import { area, type Contour, contourBounds, perimeter } from '../../src/geometry/contour.ts';
import { polygon } from '../../src/geometry/corners.ts';
import { arcOverChord, chordUnderArc, sagitta } from '../../src/geometry/curved.ts';
import { offset } from '../../src/geometry/offset.ts';
import { distanceBetween, type Point } from '../../src/geometry/point.ts';
import { pointsOnCircle, rectangle } from '../../src/geometry/shapes.ts';

const ORIGIN = { x: 0, y: 0 };

function sharp(...points: [number, number][]): Contour {
  return polygon(points.map(([x, y]) => ({ point: { x, y }, radius: 0 })));
}

function only(contours: Contour[] | null): Contour {
  expect(contours).toHaveLength(1);
  return contours?.[0] as Contour;
}

// Rounded rectangle A = w·h − (4 − π)r², P = 2(w + h) − 8r + 2πr: closed forms, worked to six decimals.
test.each([
  [200, 120, 25, 23463.495408, 597.079633],
  [100, 60, 10, 5914.159265, 302.831853],
  [300, 200, 40, 58626.548246, 931.327412],
  [80, 50, 0, 4000, 260],
])('a %d × %d rectangle with r %d', (w, h, r, mm2, mm) => {
  const shape = rectangle(ORIGIN, w, h, r);
  expect(area(shape)).toBeCloseTo(mm2, 6);
  expect(perimeter(shape)).toBeCloseTo(mm, 6);
});

// Steiner's formula for parallel curves: A + P·d + π·d², P + 2π·d, inward only while d ≤ r.
test.each([
  [1.5, 24366.183441, 606.504411],
  [-1.5, 22574.944543, 587.654855],
  [3, 25283.00864, 615.929189],
  [-3, 21700.530844, 578.230077],
  [-25, 10500, 440],
])('200 × 120 r25 offset by %d', (d, mm2, mm) => {
  const moved = only(offset(rectangle(ORIGIN, 200, 120, 25), d));
  expect(area(moved)).toBeCloseTo(mm2, 6);
  expect(perimeter(moved)).toBeCloseTo(mm, 6);
});

describe('sharp corners', () => {
  const plate = rectangle(ORIGIN, 200, 120);
  test('are rounded', () => expect(area(only(offset(plate, 3)))).toBeCloseTo(25948.274334, 6));
  test('are mitred', () => expect(area(only(offset(plate, 3, 'mitre')))).toBeCloseTo(25956, 6));
  test('stay sharp inwards', () => expect(area(only(offset(plate, -3)))).toBeCloseTo(22116, 6));
});

test('an L shape, where the formula for convex shapes is wrong', () => {
  const shape = sharp([0, 0], [100, 0], [100, 40], [60, 40], [60, 80], [0, 80]);
  expect(area(shape)).toBe(6400);
  expect(perimeter(shape)).toBe(360);
  const moved = only(offset(shape, 3));
  expect(area(moved)).toBeCloseTo(7506.342917, 6);
  const convexFormula = 6400 + 360 * 3 + Math.PI * 9;
  expect(Math.abs(area(moved) - convexFormula)).toBeGreaterThan(1.9);
});

test('an outward offset of 120 × 35 r6 by 1 mm is exactly 122 × 37 r7', () => {
  const moved = only(offset(rectangle(ORIGIN, 120, 35, 6), 1));
  expect(area(moved)).toBeCloseTo(122 * 37 - (4 - Math.PI) * 49, 9);
  const radii = moved.segments.flatMap((s) => (s.kind === 'arc' ? [s.radius] : []));
  expect(radii).toHaveLength(4);
  for (const r of radii) expect(r).toBeCloseTo(7, 9);
  const b = contourBounds(moved);
  expect([b.minX, b.minY, b.maxX, b.maxY].map((v) => Number(v.toFixed(9)))).toEqual([-1, -1, 121, 36]);
});

// The shoelace formula's usual worked example.
test('an irregular pentagon', () => {
  expect(area(sharp([3, 4], [5, 11], [12, 8], [9, 5], [5, 6]))).toBe(30);
});

// Chord factors sin(π/n), as printed in workshop bolt-circle tables.
test.each([
  [3, 0.866025],
  [4, Math.SQRT1_2],
  [5, 0.587785],
  [6, 0.5],
  [8, 0.382683],
  [10, 0.309017],
  [12, 0.258819],
])('%d holes on a circle stand a chord factor of %d apart', (count, factor) => {
  const [a, b] = pointsOnCircle(ORIGIN, 1, count, 15) as [Point, Point];
  expect(distanceBetween(a, b)).toBeCloseTo(factor, 6);
});

test('6 holes on a 5 in circle stand 2.5 in apart', () => {
  const [a, b] = pointsOnCircle(ORIGIN, 5, 6, 0) as [Point, Point];
  expect(distanceBetween(a, b)).toBeCloseTo(2.5, 12);
});

// Circle geometry: arc = 2R·asin(c/2R), sagitta = R − √(R² − c²/4).
test.each([
  [300, 300, 314.159265, 40.192379],
  [500, 200, 201.357921, 10.102051],
  [1000, 200, 200.334842, 5.012563],
  [2500, 400, 400.4279, 8.012841],
])('on a curve of %d mm a chord of %d mm', (radius, chord, arc, rise) => {
  expect(arcOverChord(radius, chord)).toBeCloseTo(arc, 6);
  expect(sagitta(radius, chord)).toBeCloseTo(rise, 6);
});

test.each([
  [1000, 500, 494.807919],
  [500, 500, 479.425539],
  [800, 400, 395.846335],
])('on a curve of %d mm an arc of %d mm', (radius, arc, chord) => {
  expect(chordUnderArc(radius, arc)).toBeCloseTo(chord, 6);
});
