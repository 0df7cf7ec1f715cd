import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  orderWords,
  type Pattern,
  patternPoints,
  pointsInPattern,
  tighteningOrder,
} from '../../src/trade/pattern.ts';
import { runs } from '../samples.ts';

const counts = fc.integer({ min: 3, max: 16 });
const patterns = fc.constantFrom<Pattern>('cross', 'circle', 'row');

function order(count: number, pattern: Pattern): readonly number[] {
  const found = tighteningOrder(count, pattern);
  if (!found) throw new Error(`no order for ${count}`);
  return found;
}

/** How far two positions are apart round the ring. */
function apart(a: number, b: number, count: number): number {
  const steps = Math.abs(a - b);
  return Math.min(steps, count - steps);
}

describe('every tightening order', () => {
  test('takes each fastener once', () => {
    fc.assert(
      fc.property(counts, patterns, (count, pattern) => {
        expect([...order(count, pattern)].sort((a, b) => a - b)).toEqual(
          Array.from({ length: count }, (_, i) => i + 1),
        );
      }),
    );
  });

  test('goes from one fastener to the one opposite, where the number is even', () => {
    fc.assert(
      fc.property(counts, fc.constantFrom<Pattern>('cross', 'circle'), (count, pattern) => {
        fc.pre(count % 2 === 0);
        const list = order(count, pattern);
        for (let index = 0; index < count; index += 2) {
          expect(apart(list[index] ?? 0, list[index + 1] ?? 0, count)).toBe(count / 2);
        }
      }),
    );
  });

  test('never goes to a neighbour, from five fasteners up', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 5, max: 16 }),
        fc.constantFrom<Pattern>('cross', 'circle'),
        (count, pattern) => {
          const list = order(count, pattern);
          for (let index = 1; index < count; index += 1) {
            expect(apart(list[index - 1] ?? 0, list[index] ?? 0, count)).toBeGreaterThan(1);
          }
        },
      ),
    );
  });

  test('of a row works from the middle outwards', () => {
    expect(order(5, 'row')).toEqual([3, 2, 4, 1, 5]);
    expect(order(6, 'row')).toEqual([3, 4, 2, 5, 1, 6]);
  });

  test('of a frame begins in the middle', () => {
    expect(order(4, 'cross')).toEqual([1, 3, 2, 4]);
    expect(order(6, 'cross')).toEqual([2, 5, 1, 4, 6, 3]);
  });

  test('is not made up for two fasteners, for seventeen, or for half of one', () => {
    for (const count of [0, 2, 17, 4.5, Number.NaN]) expect(tighteningOrder(count, 'circle')).toBeUndefined();
  });
});

test('an order is told as it was worked out', () => {
  const words = (count: number, pattern: Pattern) => orderWords(order(count, pattern), pattern);
  expect(words(12, 'circle')).toBe('in opposite pairs');
  expect(words(3, 'circle')).toBe('one after another round the circle');
  expect(words(5, 'circle')).toBe('each time across, as in a star');
  expect(words(4, 'cross')).toBe('crosswise');
  expect(words(6, 'cross')).toBe('crosswise, from the middle outwards');
  expect(words(5, 'row')).toBe('from the middle of the row outwards');
});

describe('where fasteners are drawn', () => {
  test('opposite positions mirror each other through the middle', () => {
    fc.assert(
      fc.property(counts, fc.constantFrom<Pattern>('cross', 'circle'), (count, pattern) => {
        fc.pre(count % 2 === 0);
        const points = patternPoints(count, pattern);
        points.forEach((point, index) => {
          const opposite = points[(index + count / 2) % count];
          expect(point.x + (opposite?.x ?? 9)).toBeCloseTo(1, 9);
          expect(point.y + (opposite?.y ?? 9)).toBeCloseTo(1, 9);
        });
      }),
    );
  });

  test('a circle runs clockwise from the top', () => {
    const [first, second] = patternPoints(4, 'circle');
    expect(first).toEqual({ x: 0.5, y: 0 });
    expect(second?.x).toBeCloseTo(1, 9);
    expect(second?.y).toBeCloseTo(0.5, 9);
  });
});

describe('points of a picture', () => {
  /** A pattern as a camera at a slant sees it: turned, stretched and sheared, never mirrored. */
  const slant = fc.record({
    turn: fc.double({ min: -0.4, max: 0.4, noNaN: true }),
    wide: fc.double({ min: 2, max: 3, noNaN: true }),
    shear: fc.double({ min: -0.3, max: 0.3, noNaN: true }),
  });
  const cases = fc.record({
    pattern: fc.constantFrom<Pattern>('circle', 'cross', 'row'),
    count: fc.integer({ min: 3, max: 16 }),
    slant,
    shuffle: fc.array(fc.nat(), { minLength: 16, maxLength: 16 }),
  });

  test('are found in the order of their positions, from whatever angle and in whatever order they are told', () => {
    fc.assert(
      fc.property(cases, ({ pattern, count, slant: { turn, wide, shear }, shuffle }) => {
        const seen = patternPoints(count, pattern).map(({ x, y }, position) => {
          const [u, v] = [wide * (x - 0.5) + shear * (y - 0.5), y - 0.5];
          const [c, s] = [Math.cos(turn), Math.sin(turn)];
          return { x: c * u - s * v, y: s * u + c * v, position };
        });
        const told = [...seen].sort((a, b) => (shuffle[a.position] ?? 0) - (shuffle[b.position] ?? 0));
        const found = pointsInPattern(told, pattern)?.map(({ position }) => position) ?? [];
        const first = found[0] ?? 0;
        expect(found).toEqual(found.map((_, index) => (first + index) % count));
        expect(found).toHaveLength(count);
        // Two rows stay two rows, and a row begins at its end.
        if (pattern === 'cross' && count % 2 === 0 && count > 4) expect(first % (count / 2)).toBe(0);
        if (pattern === 'row') expect(first).toBe(0);
      }),
      runs(60, 2000),
    );
  });

  test('are none of a pattern where they do not lie in one', () => {
    const heap = [
      { x: 0, y: 0 },
      { x: 1, y: 0 },
      { x: 2, y: 0 },
      { x: 1, y: 1 },
    ];
    const line = heap.map(({ x }) => ({ x, y: 0 }));
    expect(pointsInPattern(heap, 'row')).toBeUndefined();
    expect(pointsInPattern(line, 'circle')).toBeUndefined();
    expect(pointsInPattern(heap.slice(0, 2), 'row')).toBeUndefined();
  });
});
