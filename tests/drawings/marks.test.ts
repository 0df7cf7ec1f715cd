import { point, segment } from '@flatten-js/core';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { marksOverlay } from '../../src/drawings/marks.ts';
import {
  MARGIN,
  type MarkLayout,
  PICTURE_WIDTH,
  type PlacedMark,
  placeMarks,
} from '../../src/drawings/place-marks.ts';
import { runs } from '../samples.ts';

const photo = { width: 1600, height: 1200 };

function marks(...points: readonly (readonly [x: number, y: number])[]) {
  return points.map(([x, y], index) => ({ letter: String.fromCharCode(65 + index), point: { x, y } }));
}

function samePoint(a: PlacedMark, b: PlacedMark): boolean {
  return a.leader.to.x === b.leader.to.x && a.leader.to.y === b.leader.to.y;
}

/** Where two leaders meet, by an outside geometry library. */
function meet(a: PlacedMark, b: PlacedMark): boolean {
  const line = ({ leader: { from, to } }: PlacedMark) => segment(point(from.x, from.y), point(to.x, to.y));
  return line(a).intersect(line(b)).length > 0;
}

function pairs(layout: MarkLayout): [PlacedMark, PlacedMark][] {
  return layout.placed.flatMap((a, index) =>
    layout.placed.slice(index + 1).map((b): [PlacedMark, PlacedMark] => [a, b]),
  );
}

const fraction = fc.oneof(fc.double({ min: 0, max: 1, noNaN: true }), fc.constantFrom(0, 0.25, 0.5, 0.75, 1));
const upToTwelve = fc.array(fc.tuple(fraction, fraction), { minLength: 1, maxLength: 12 });
const pictures = fc.constantFrom(
  photo,
  { width: 900, height: 1600 },
  { width: 3000, height: 900 },
  { width: 5, height: 5 },
);

describe('up to 12 marks anywhere on a picture of any shape', () => {
  test('leaders do not cross and letters do not overlap', () => {
    fc.assert(
      fc.property(upToTwelve, pictures, (points, picture) => {
        const layout = placeMarks(marks(...points), picture, null);
        expect(layout.placed.map(({ letter }) => letter)).toEqual(
          marks(...points).map(({ letter }) => letter),
        );
        for (const [a, b] of pairs(layout)) {
          const apart = Math.max(Math.abs(a.centre.x - b.centre.x), Math.abs(a.centre.y - b.centre.y));
          expect(apart).toBeGreaterThanOrEqual(layout.letterSize);
          if (!samePoint(a, b)) expect(meet(a, b)).toBe(false);
        }
      }),
      runs(100, 300),
    );
  });

  test('letters stand outside the picture, in line, within the margin; dots are inside', () => {
    fc.assert(
      fc.property(upToTwelve, pictures, (points, picture) => {
        const layout = placeMarks(marks(...points), picture, null);
        for (const { side, centre, leader } of layout.placed) {
          const across = side === 'above' || side === 'below';
          const middle = across
            ? side === 'above'
              ? -centre.y
              : centre.y - layout.height
            : side === 'left'
              ? -centre.x
              : centre.x - PICTURE_WIDTH;
          expect(middle).toBeCloseTo(MARGIN * 0.56, 6);
          expect(leader.to.x).toBeGreaterThanOrEqual(0);
          expect(leader.to.x).toBeLessThanOrEqual(PICTURE_WIDTH);
          expect(leader.to.y).toBeGreaterThanOrEqual(0);
          expect(leader.to.y).toBeLessThanOrEqual(layout.height);
          const along = across ? centre.x : centre.y;
          expect(along - layout.letterSize / 2).toBeGreaterThanOrEqual(0);
          expect(along + layout.letterSize / 2).toBeLessThanOrEqual(across ? PICTURE_WIDTH : layout.height);
        }
      }),
      runs(60, 200),
    );
  });
});

test('a wide picture has rows, a tall one columns', () => {
  const four = marks([0.1, 0.1], [0.9, 0.1], [0.1, 0.9], [0.9, 0.9]);
  expect(placeMarks(four, photo, null).sides).toEqual(['above', 'below']);
  expect(placeMarks(four, { width: 1200, height: 1600 }, null).sides).toEqual(['left', 'right']);
});

test('marks that lie together share one row', () => {
  expect(placeMarks(marks([0.3, 0.3], [0.4, 0.2], [0.5, 0.3]), photo, null).sides).toEqual(['above']);
});

test('a leader leans, so that it does not pass for an upright line of the picture', () => {
  const layout = placeMarks(marks([0.5, 0.5], [0.2, 0.4]), photo, null);
  for (const { leader } of layout.placed) expect(Math.abs(leader.to.x - leader.from.x)).toBeGreaterThan(30);
});

test('a crop moves the marks with the picture and tells which it leaves out', () => {
  const layout = placeMarks(marks([0.75, 0.75], [0.2, 0.2]), photo, {
    left: 0.5,
    top: 0.5,
    width: 0.5,
    height: 0.5,
  });
  expect(layout.outside).toEqual(['B']);
  expect(layout.placed[0]?.leader.to).toEqual({ x: 500, y: 375 });
});

test('a mark outside the picture is told, an unreadable one is left to its own finding', () => {
  const layout = placeMarks([...marks([1.2, 0.5]), { letter: 'B', point: null }], photo, null);
  expect(layout).toMatchObject({ outside: ['A'], placed: [], sides: [] });
});

test('more marks than one side holds still do not overlap', () => {
  const many = marks(
    ...Array.from({ length: 40 }, (_, index): [number, number] => [
      (index % 8) / 8 + 0.05,
      Math.floor(index / 8) / 6 + 0.1,
    ]),
  );
  const layout = placeMarks(many, photo, null);
  for (const [a, b] of pairs(layout)) {
    expect(
      Math.max(Math.abs(a.centre.x - b.centre.x), Math.abs(a.centre.y - b.centre.y)),
    ).toBeGreaterThanOrEqual(layout.letterSize);
  }
});

test('the drawing covers the picture and its margins, and is the same every time', () => {
  const layout = placeMarks(marks([0.3, 0.3], [0.4, 0.2]), photo, null);
  const overlay = marksOverlay(layout);
  expect(overlay.properties).toMatchObject({
    viewBox: '0 -70 1000 820',
    className: ['marks', 'marked-above'],
  });
  expect(marksOverlay(placeMarks(marks([0.3, 0.3], [0.4, 0.2]), photo, null))).toEqual(overlay);
});

test('a detail is framed on the main picture', () => {
  const overlay = marksOverlay(placeMarks([], photo, null), { left: 0.5, top: 0.2, width: 0.1, height: 0.4 });
  expect(overlay.properties.viewBox).toBe('0 0 1000 750');
  expect(JSON.stringify(overlay)).toContain('"x":500,"y":150,"width":100,"height":300');
});
