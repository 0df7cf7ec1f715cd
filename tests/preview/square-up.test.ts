import fc from 'fast-check';
import { expect, it } from 'vitest';
import type { Point } from '../../src/geometry/point.ts';
import { squareUp } from '../../src/preview/bench/square-up.ts';
import { runs } from '../samples.ts';

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const place = fc.record({ x: number(-900, 900), y: number(-900, 900) });

/** How a camera far away draws a flat panel: x and y each get a way in the picture, whose y runs down. */
const camera = fc
  .record({
    across: number(0.5, 8),
    up: number(0.5, 8),
    turn: number(-20, 20),
    angle: number(65, 115),
    shift: place,
  })
  .map(({ across, up, turn, angle, shift }) => {
    const [x, y] = [turn, turn + angle].map((degrees) => (degrees * Math.PI) / 180) as [number, number];
    return (at: Point): Point => ({
      x: shift.x + at.x * across * Math.cos(x) + at.y * up * Math.cos(y),
      y: shift.y - at.x * across * Math.sin(x) - at.y * up * Math.sin(y),
    });
  });

/** Two lengths on the panel, along its x and its y, each pressed from either end and in either order. */
const lengths = fc.record({
  lying: fc.record({ at: place, length: number(50, 800) }),
  standing: fc.record({ at: place, length: number(50, 800) }),
  turned: fc.tuple(fc.boolean(), fc.boolean(), fc.boolean()),
});

type Lengths = typeof lengths extends fc.Arbitrary<infer T> ? T : never;

function pressed({ lying, standing, turned }: Lengths, press: (at: Point) => Point) {
  const known = (at: Point, to: Point, length: number, isTurned: boolean) => {
    const [from, end] = [press(at), press(to)];
    return isTurned ? { from: end, to: from, length } : { from, to: end, length };
  };
  const one = known(lying.at, { x: lying.at.x + lying.length, y: lying.at.y }, lying.length, turned[0]);
  const other = known(
    standing.at,
    { x: standing.at.x, y: standing.at.y + standing.length },
    standing.length,
    turned[1],
  );
  return turned[2] ? squareUp(other, one) : squareUp(one, other);
}

it('a panel that a distant camera draws askew comes back as it is', () => {
  fc.assert(
    fc.property(camera, lengths, place, place, (draw, known, zero, corner) => {
      const square = pressed(known, draw);
      const { x = Number.NaN, y = Number.NaN } = square?.place(draw(corner), draw(zero)) ?? {};
      expect(Math.hypot(x - (corner.x - zero.x), y - (corner.y - zero.y))).toBeLessThan(0.01);
    }),
    runs(200, 20_000),
  );
});

it('whoever presses up to a pixel beside each point is no farther off than was said', () => {
  const slip = fc.record({ x: number(-1, 1), y: number(-1, 1) });
  const edge = fc.record({ x: fc.constantFrom(-1, 1), y: fc.constantFrom(-1, 1) });
  const slips = fc.array(fc.oneof(slip, edge), { minLength: 6, maxLength: 6 });
  let nearest = 0;
  fc.assert(
    fc.property(camera, lengths, place, place, slips, (draw, known, zero, corner, beside) => {
      let next = 0;
      const press = (at: Point): Point => {
        const { x, y } = draw(at);
        const off = beside[next++] ?? { x: 0, y: 0 };
        return { x: x + off.x, y: y + off.y };
      };
      const square = pressed(known, press);
      if (!square) return;
      const [at, from] = [press(corner), press(zero)];
      const { x, y } = square.place(at, from);
      const off = Math.hypot(x - (corner.x - zero.x), y - (corner.y - zero.y));
      const said = square.offByPointing(at, from, 1);
      expect(off).toBeLessThanOrEqual(said + 1e-6);
      nearest = Math.max(nearest, off / said);
    }),
    runs(300, 20_000),
  );
  // What is said is no mere caution: some come near to it.
  expect(nearest).toBeGreaterThan(0.6);
});

it('says what the camera did: how far apart the scales are, and what became of the right angle', () => {
  // 2 px/mm across; 1.6 px/mm up, leaning by the 3-4-5 triangle: worked by hand.
  const across = { from: { x: 100, y: 500 }, to: { x: 500, y: 500 }, length: 200 };
  const up = { from: { x: 100, y: 500 }, to: { x: 196, y: 372 }, length: 100 };
  const square = squareUp(up, across);
  expect(square?.across).toBeCloseTo(2, 12);
  expect(square?.up).toBeCloseTo(1.6, 12);
  expect(square?.skew).toBeCloseTo(0.25, 12);
  expect(square?.angle).toBeCloseTo(53.130102354, 8);
  // 100 mm up, along the leaning length.
  const at = square?.place({ x: 196, y: 372 }, { x: 100, y: 500 });
  expect(at?.x).toBeCloseTo(0, 9);
  expect(at?.y).toBeCloseTo(100, 9);
  expect(square?.offBySkew({ x: 196, y: 372 }, { x: 100, y: 500 })).toBeCloseTo(100 * (0.25 + 0.6), 9);
});

it('refuses lengths that tell nothing of each other', () => {
  const one = { from: { x: 0, y: 0 }, to: { x: 100, y: 0 }, length: 100 };
  expect(squareUp(one, { from: { x: 0, y: 50 }, to: { x: 100, y: 20 }, length: 100 })).toBeNull();
  expect(squareUp(one, { from: { x: 9, y: 9 }, to: { x: 9, y: 9 }, length: 100 })).toBeNull();
  const short = { from: { x: 0, y: 0 }, to: { x: 0, y: -2 }, length: 1 };
  expect(squareUp(one, short)?.offByPointing({ x: 50, y: 50 }, { x: 0, y: 0 }, 1)).toBe(Infinity);
});
