import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { orderWords, type Pattern, patternPoints, tighteningOrder } from '../../src/trade/pattern.ts';

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
