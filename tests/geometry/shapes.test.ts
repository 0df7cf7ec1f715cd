import { expect, test } from 'vitest';
import { area, contourBounds, gapOf, perimeter } from '../../src/geometry/contour.ts';
import { cornerMisfits, polygon } from '../../src/geometry/corners.ts';
import { selfCrossings } from '../../src/geometry/crossings.ts';
import { arcOverChord, unrollContour } from '../../src/geometry/curved.ts';
import { offset } from '../../src/geometry/offset.ts';
import { carryOn, openAt, trimAtEdge } from '../../src/geometry/open-edge.ts';
import { arcThrough, endOf, startOf } from '../../src/geometry/segment.ts';
import { circle, pointsOnLine, rectangle, slot } from '../../src/geometry/shapes.ts';

const ORIGIN = { x: 0, y: 0 };

test('a radius that takes more than half of a short side does not fit, and the largest that does is told', () => {
  const corners = [
    { point: { x: 0, y: 0 }, radius: 0 },
    { point: { x: 40, y: 0 }, radius: 6 },
    { point: { x: 40, y: 10 }, radius: 6 },
    { point: { x: 0, y: 10 }, radius: 0 },
  ];
  const misfits = cornerMisfits(corners);
  expect(misfits.map((m) => m.corner)).toEqual([1, 2]);
  expect(misfits[0]?.largest).toBeCloseTo(4, 9);
});

test('two roundings that just meet fit', () => {
  const corners = [
    { x: 0, y: 0 },
    { x: 20, y: 0 },
    { x: 20, y: 20 },
    { x: 0, y: 20 },
  ].map((point) => ({ point, radius: 10 }));
  expect(cornerMisfits(corners)).toEqual([]);
  const round = polygon(corners);
  expect(round.segments).toHaveLength(4);
  expect(area(round)).toBeCloseTo(Math.PI * 100, 9);
});

test('a slot is a rectangle and a circle', () => {
  const shape = slot({ x: 0, y: 0 }, { x: 30, y: 40 }, 10);
  expect(area(shape)).toBeCloseTo(50 * 10 + Math.PI * 25, 9);
  expect(perimeter(shape)).toBeCloseTo(100 + 2 * Math.PI * 5, 9);
  expect(gapOf(shape)).toBeNull();
});

test('a bow tie crosses itself once, a rectangle never', () => {
  const tie = polygon(
    [ORIGIN, { x: 20, y: 20 }, { x: 20, y: 0 }, { x: 0, y: 20 }].map((point) => ({ point, radius: 0 })),
  );
  expect(selfCrossings(tie)).toEqual([{ x: 10, y: 10 }]);
  expect(selfCrossings(rectangle(ORIGIN, 20, 10, 3))).toEqual([]);
  expect(selfCrossings(circle(ORIGIN, 9))).toEqual([]);
});

test('an arc through three points', () => {
  const half = arcThrough({ x: -10, y: 0 }, { x: 0, y: 10 }, { x: 10, y: 0 });
  expect(half).toMatchObject({ kind: 'arc', radius: 10 });
  expect(startOf(half).x).toBeCloseTo(-10, 12);
  expect(endOf(half).x).toBeCloseTo(10, 12);
  expect(arcThrough(ORIGIN, { x: 5, y: 0 }, { x: 10, y: 0 }).kind).toBe('line');
});

test('holes on a line stand at both ends', () => {
  expect(pointsOnLine(ORIGIN, { x: 90, y: 30 }, 4)).toEqual([
    { x: 0, y: 0 },
    { x: 30, y: 10 },
    { x: 60, y: 20 },
    { x: 90, y: 30 },
  ]);
});

test('an inner offset beyond the middle leaves nothing', () => {
  expect(offset(rectangle(ORIGIN, 40, 20), -10.5)).toEqual([]);
});

test('an inner offset of a dumb-bell falls into two', () => {
  const corners = [0, 0, 30, 0, 30, 10, 50, 10, 50, 0, 80, 0, 80, 30, 50, 30, 50, 20, 30, 20, 30, 30, 0, 30];
  const shape = polygon(
    Array.from({ length: 12 }, (_, i) => ({
      point: { x: corners[2 * i] as number, y: corners[2 * i + 1] as number },
      radius: 0,
    })),
  );
  expect(offset(shape, -6)).toHaveLength(2);
  expect(offset(shape, -4)).toHaveLength(1);
});

test('an open notch grows by its set-back and still ends on the edge of the panel', () => {
  const notch = openAt(rectangle({ x: -62, y: 0 }, 124, 38), 'bottom');
  if (!notch) throw new Error('the bottom side was not found');
  expect(notch.cut.closed).toBe(false);
  expect(perimeter(notch.cut)).toBeCloseTo(38 + 124 + 38, 9);
  const grown = offset(carryOn(notch, 4), 2)?.[0];
  const cut = grown && trimAtEdge(grown, notch.edge);
  if (!cut) throw new Error('the cut was lost');
  expect(contourBounds(cut)).toMatchObject({ minX: -64, maxX: 64, minY: 0 });
  expect(contourBounds(cut).maxY).toBeCloseTo(40, 9);
  expect(perimeter(cut)).toBeCloseTo(38 + 124 + 38 + 2 * Math.PI, 6);
});

test('an outline without a straight side at the edge cannot be open there', () => {
  expect(openAt(circle(ORIGIN, 20), 'bottom')).toBeNull();
});

test('a square 200 mm wide, laid flat from a curve of 500 mm, is wider and no higher', () => {
  const flat = unrollContour(rectangle({ x: -100, y: 0 }, 200, 50, 10), {
    radius: 500,
    crown: 0,
    axis: 'vertical' as const,
  });
  const b = contourBounds(flat);
  expect(b.maxX - b.minX).toBeCloseTo(arcOverChord(500, 200), 4);
  expect(b.maxY - b.minY).toBeCloseTo(50, 4);
  expect(flat.segments.length).toBeLessThan(24);
  expect(gapOf(flat)).toBeNull();
});
