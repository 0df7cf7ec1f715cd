import Flatten from '@flatten-js/core';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { area, type Contour, contourBounds, flatten, perimeter } from '../../src/geometry/contour.ts';
import { cornerMisfits, polygon } from '../../src/geometry/corners.ts';
import { selfCrossings } from '../../src/geometry/crossings.ts';
import { distanceToContour, lineDistance } from '../../src/geometry/distance.ts';
import { isInside } from '../../src/geometry/inside.ts';
import { offset } from '../../src/geometry/offset.ts';
import { slot } from '../../src/geometry/shapes.ts';
import { MIRROR, moveContour, rotation, translation } from '../../src/geometry/transform.ts';
import { runs } from '../samples.ts';

/** The same contour in @flatten-js/core, which keeps arcs and was written by others. */
function outside(contour: Contour): Flatten.Polygon {
  const edges = contour.segments.map((s) =>
    s.kind === 'line'
      ? new Flatten.Segment(new Flatten.Point(s.from.x, s.from.y), new Flatten.Point(s.to.x, s.to.y))
      : new Flatten.Arc(
          new Flatten.Point(s.centre.x, s.centre.y),
          s.radius,
          s.start,
          s.start + s.sweep,
          s.sweep > 0,
        ),
  );
  const shape = new Flatten.Polygon();
  shape.addFace(edges);
  return shape;
}

/** Star-shaped polygons with some rounded corners: concave, never self-crossing. */
const star = fc
  .array(fc.record({ reach: fc.integer({ min: 20, max: 100 }), radius: fc.integer({ min: 0, max: 6 }) }), {
    minLength: 4,
    maxLength: 11,
  })
  .map((spokes) =>
    spokes.map(({ reach, radius }, i) => {
      const angle = (2 * Math.PI * i) / spokes.length;
      return { point: { x: reach * Math.cos(angle), y: reach * Math.sin(angle) }, radius };
    }),
  )
  .filter((corners) => cornerMisfits(corners).length === 0)
  .map(polygon);

const place = fc.record({ x: fc.integer({ min: -120, max: 120 }), y: fc.integer({ min: -120, max: 120 }) });

test('area, length and bounds agree with flatten-js', () => {
  fc.assert(
    fc.property(star, (shape) => {
      const other = outside(shape);
      expect(area(shape)).toBeCloseTo(other.area(), 6);
      expect(perimeter(shape)).toBeCloseTo(
        [...other.edges].reduce((sum, e) => sum + e.length, 0),
        6,
      );
      const b = contourBounds(shape);
      expect(b.minX).toBeCloseTo(other.box.xmin, 6);
      expect(b.maxY).toBeCloseTo(other.box.ymax, 6);
    }),
  );
});

test('inside and distance agree with flatten-js', () => {
  fc.assert(
    fc.property(star, place, (shape, point) => {
      const other = outside(shape);
      const p = new Flatten.Point(point.x + 0.137, point.y + 0.211);
      const mine = { x: p.x, y: p.y };
      const away = Math.min(...[...other.edges].map((e) => p.distanceTo(e.shape)[0]));
      expect(distanceToContour(shape, mine)).toBeCloseTo(away, 6);
      if (away > 1e-6) expect(isInside(shape, mine)).toBe(other.contains(p));
    }),
  );
});

test('distance between two slots agrees with flatten-js', () => {
  fc.assert(
    fc.property(place, place, place, (a, b, shift) => {
      const one = slot({ x: 0, y: 0 }, a, 8);
      const two = slot(b, { x: b.x + shift.x, y: b.y + shift.y }, 5);
      const least = Math.min(
        ...[...outside(one).edges].flatMap((e) =>
          [...outside(two).edges].map((f) => e.shape.distanceTo(f.shape)[0]),
        ),
      );
      const mine = lineDistance(one, two);
      // flatten-js takes a near miss for a hit within its own tolerance.
      expect(Math.abs(mine - least)).toBeLessThan(1e-5);
    }),
  );
});

test('every point of an offset lies at its distance, and none is lost against clipper2', () => {
  const how = fc.constantFrom(-8, -3, -1.5, 1.5, 3, 8);
  fc.assert(
    fc.property(star, how, fc.constantFrom('round' as const, 'mitre' as const), (shape, distance, join) => {
      const result = offset(shape, distance, join);
      expect(result).not.toBeNull();
      for (const contour of result ?? []) {
        expect(selfCrossings(contour)).toEqual([]);
        for (const p of flatten(contour, 0.05)) {
          const away = distanceToContour(shape, p);
          expect(away).toBeGreaterThan(Math.abs(distance) - 1e-5);
          if (join === 'round') expect(away).toBeLessThan(Math.abs(distance) + 1e-5);
        }
      }
    }),
    runs(60, 200),
  );
});

test('moving keeps area, and mirroring twice gives the shape back', () => {
  fc.assert(
    fc.property(star, fc.integer({ min: -180, max: 180 }), (shape, turn) => {
      const moved = moveContour(moveContour(shape, rotation(turn)), translation(31, -7));
      expect(area(moved)).toBeCloseTo(area(shape), 6);
      const twice = moveContour(moveContour(shape, MIRROR), MIRROR);
      expect(lineDistance(twice, shape)).toBeLessThan(1e-9);
      expect(contourBounds(twice).minX).toBeCloseTo(contourBounds(shape).minX, 9);
    }),
    runs(20, 50),
  );
});
