import Flatten from '@flatten-js/core';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { area, type Contour, perimeter } from '../../src/geometry/contour.ts';
import { type BentSides, type Corner, cornerMisfits, polygon } from '../../src/geometry/corners.ts';
import { filletOf } from '../../src/geometry/fillet.ts';
import { type Point, polar } from '../../src/geometry/point.ts';
import { arcThrough, directionAt, endOf, line, type Segment, startOf } from '../../src/geometry/segment.ts';
import { runs } from '../samples.ts';

/** The same segment in @flatten-js/core, which keeps arcs and was written by others. */
function outside(s: Segment): Flatten.Segment | Flatten.Arc {
  if (s.kind === 'line')
    return new Flatten.Segment(new Flatten.Point(s.from.x, s.from.y), new Flatten.Point(s.to.x, s.to.y));
  const centre = new Flatten.Point(s.centre.x, s.centre.y);
  return new Flatten.Arc(centre, s.radius, s.start, s.start + s.sweep, s.sweep > 0);
}

/** How far two segments are from going on smoothly from one into the other. */
function kinkBetween(a: Segment, b: Segment): number {
  const [u, v] = [directionAt(a, 1), directionAt(b, 0)];
  const [p, q] = [endOf(a), startOf(b)];
  return Math.hypot(u.x - v.x, u.y - v.y) + Math.hypot(p.x - q.x, p.y - q.y);
}

describe('a rounding between a line and an arc', () => {
  // A circle of r in the corner between a chord through the centre and its circle of R: its centre lies r from
  // the chord and R − r from the centre (Pythagoras), outside the circle R + r.
  test('within the circle: R 50, r 10', () => {
    const arc = arcThrough({ x: 50, y: 0 }, { x: 0, y: 50 }, { x: -50, y: 0 });
    const found = filletOf(line({ x: 0, y: 0 }, { x: 50, y: 0 }), arc, 10);
    expect(found?.rounding.centre.x).toBeCloseTo(Math.sqrt(40 ** 2 - 10 ** 2), 12);
    expect(found?.rounding.centre.y).toBeCloseTo(10, 12);
    expect(found?.enter.x).toBeCloseTo(38.729833462, 9);
    expect(found?.leave.x).toBeCloseTo((38.729833462 * 50) / 40, 8);
    expect(found?.leave.y).toBeCloseTo(12.5, 12);
  });

  test('outside the circle: R 50, r 10', () => {
    const arc = arcThrough({ x: 50, y: 0 }, { x: 0, y: 50 }, { x: -50, y: 0 });
    const found = filletOf(line({ x: 100, y: 0 }, { x: 50, y: 0 }), arc, 10);
    expect(found?.rounding.centre.x).toBeCloseTo(Math.sqrt(60 ** 2 - 10 ** 2), 12);
    expect(found?.rounding.centre.y).toBeCloseTo(10, 12);
  });

  test('is none where the circle has no room for it', () => {
    const arc = arcThrough({ x: 50, y: 0 }, { x: 0, y: 50 }, { x: -50, y: 0 });
    expect(filletOf(line({ x: 0, y: 0 }, { x: 50, y: 0 }), arc, 26)).toBeNull();
    expect(filletOf(line({ x: 0, y: 0 }, { x: 50, y: 0 }), arc, 60)).toBeNull();
  });
});

/** A segment that begins or ends in the origin: straight, or bulging to either side. */
const spoke = fc
  .record({
    angle: fc.integer({ min: 0, max: 359 }),
    length: fc.integer({ min: 20, max: 120 }),
    bulge: fc.integer({ min: -40, max: 40 }),
  })
  .map(({ angle, length, bulge }): { end: Point; middle: Point } => {
    const turn = (angle * Math.PI) / 180;
    const end = polar({ x: 0, y: 0 }, length, turn);
    const middle = polar(polar({ x: 0, y: 0 }, length / 2, turn), (bulge * length) / 100, turn + Math.PI / 2);
    return { end, middle };
  });

const origin = { x: 0, y: 0 };

test('touches both sides at its radius, between their ends, and goes on smoothly: held against flatten-js', () => {
  let rounded = 0;
  fc.assert(
    fc.property(spoke, spoke, fc.double({ min: 0.5, max: 30, noNaN: true }), (one, other, radius) => {
      const incoming = arcThrough(one.end, one.middle, origin);
      const outgoing = arcThrough(origin, other.middle, other.end);
      const found = filletOf(incoming, outgoing, radius);
      if (!found) return;
      rounded += 1;
      const { rounding, enter, leave } = found;
      expect(rounding.radius).toBeCloseTo(radius, 8);
      const centre = new Flatten.Point(rounding.centre.x, rounding.centre.y);
      for (const [side, touch] of [
        [incoming, enter],
        [outgoing, leave],
      ] as const) {
        const shape = outside(side);
        const point = new Flatten.Point(touch.x, touch.y);
        expect(point.distanceTo(shape)[0]).toBeLessThan(1e-6);
        expect(centre.distanceTo(point)[0]).toBeCloseTo(radius, 6);
      }
      expect(kinkBetween(trimmed(incoming, 0, found.before), rounding)).toBeLessThan(1e-6);
      expect(kinkBetween(rounding, trimmed(outgoing, found.after, 1))).toBeLessThan(1e-6);
    }),
    runs(500, 2000),
  );
  expect(rounded).toBeGreaterThan(process.env.LONG ? 500 : 250);
});

function trimmed(segment: Segment, from: number, to: number): Segment {
  if (segment.kind === 'arc')
    return { ...segment, start: segment.start + segment.sweep * from, sweep: segment.sweep * (to - from) };
  const at = (t: number) => ({
    x: segment.from.x + (segment.to.x - segment.from.x) * t,
    y: segment.from.y + (segment.to.y - segment.from.y) * t,
  });
  return line(at(from), at(to));
}

/** Polygons around the origin whose sides may be bent and whose corners may be rounded. */
const bentPolygon = fc
  .array(
    fc.record({
      reach: fc.integer({ min: 60, max: 100 }),
      radius: fc.integer({ min: 0, max: 12 }),
      bulge: fc.integer({ min: -12, max: 12 }),
    }),
    { minLength: 3, maxLength: 8 },
  )
  .map((spokes) => {
    const corners = spokes.map(
      ({ reach, radius }, i): Corner => ({
        point: polar(origin, reach, (2 * Math.PI * i) / spokes.length),
        radius,
      }),
    );
    const bent: BentSides = spokes.map(({ bulge }, i) => {
      const [a, b] = [corners[i]?.point ?? origin, corners[(i + 1) % corners.length]?.point ?? origin];
      const middle = { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 };
      const out = Math.atan2(b.y - a.y, b.x - a.x) - Math.PI / 2;
      const side = arcThrough(a, polar(middle, bulge, out), b);
      return side.kind === 'arc' ? side : null;
    });
    return { corners, bent };
  });

/** The joints of a contour at which it turns. */
function kinks({ segments }: Contour): number {
  return segments.filter((s, i) => {
    const next = segments[(i + 1) % segments.length];
    return next !== undefined && kinkBetween(s, next) > 1e-6;
  }).length;
}

test('an outline with bent sides is sharp only where it is asked to be, and flatten-js measures the same', () => {
  let fitted = 0;
  fc.assert(
    fc.property(bentPolygon, ({ corners, bent }) => {
      if (cornerMisfits(corners, bent).length > 0) return;
      fitted += 1;
      const shape = polygon(corners, bent);
      expect(kinks(shape)).toBe(corners.filter(({ radius }) => radius === 0).length);
      const other = new Flatten.Polygon();
      other.addFace(shape.segments.map(outside));
      expect(area(shape)).toBeCloseTo(other.area(), 6);
      expect(perimeter(shape)).toBeCloseTo(
        [...other.edges].reduce((sum, edge) => sum + edge.length, 0),
        6,
      );
    }),
    runs(200, 500),
  );
  expect(fitted).toBeGreaterThan(100);
});

test('the largest radius that is told fits, and a hair more does not', () => {
  fc.assert(
    fc.property(bentPolygon, ({ corners, bent }) => {
      const wide = corners.map((corner, i) =>
        i === 0 ? { ...corner, radius: 400 } : { ...corner, radius: 0 },
      );
      const [misfit] = cornerMisfits(wide, bent);
      if (!misfit) return;
      const withRadius = (radius: number) =>
        cornerMisfits(
          wide.map((corner, i) => (i === 0 ? { ...corner, radius } : corner)),
          bent,
        );
      if (misfit.largest > 0.01) expect(withRadius(misfit.largest * 0.999)).toEqual([]);
      expect(withRadius(misfit.largest * 1.001 + 0.001)).toHaveLength(1);
    }),
  );
});
