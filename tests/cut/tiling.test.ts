import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type Content, tile, windowOf } from '../../src/cut/sheet/tiling.ts';
import { contourBounds } from '../../src/geometry/contour.ts';
import type { Point } from '../../src/geometry/point.ts';
import { flattenSegment, type Segment, startOf } from '../../src/geometry/segment.ts';
import { circle, rectangle } from '../../src/geometry/shapes.ts';
import { runs } from '../samples.ts';

const SIZE = { width: 164, height: 189 };
const OVERLAP = 10;

// Tiles per axis = 1 if L ≤ u, else ceil((L − o) / (u − o)): arithmetic of overlapping sheets.
test.each([
  [100, 100, 1],
  [164, 189, 1],
  [165, 189, 2],
  [318, 368, 4],
  [319, 368, 6],
])('%d × %d mm needs %d sheets', (width, height, sheets) => {
  expect(tile(boxContent(width, height), SIZE).tiles).toHaveLength(sheets);
});

test('the drawing is turned where that saves sheets', () => {
  const tiling = tile(boxContent(189, 164), SIZE);
  expect(tiling.rotation).toBe(90);
  expect(tiling.tiles).toHaveLength(1);
});

test('an empty middle is not printed', () => {
  const tiling = tile({ ...boxContent(480, 560), corners: [] }, SIZE);
  expect(tiling.columns * tiling.rows).toBeGreaterThan(tiling.tiles.length);
});

function boxContent(width: number, height: number): Content {
  const box = rectangle({ x: -30, y: 12 }, width, height);
  return { segments: box.segments, holes: [], corners: box.segments.map(startOf) };
}

const scene = fc.record({
  width: fc.integer({ min: 60, max: 420 }),
  height: fc.integer({ min: 60, max: 420 }),
  holes: fc.array(
    fc.record({
      x: fc.integer({ min: 0, max: 420 }),
      y: fc.integer({ min: 0, max: 420 }),
      radius: fc.integer({ min: 2, max: 12 }),
    }),
    { maxLength: 6 },
  ),
});

function contentOf({
  width,
  height,
  holes,
}: {
  width: number;
  height: number;
  holes: { x: number; y: number; radius: number }[];
}): Content {
  const box = rectangle({ x: 0, y: 0 }, width, height);
  return {
    segments: [...box.segments, ...holes.flatMap((h) => circle(h, h.radius).segments)],
    holes: holes.map(({ x, y, radius }) => ({ point: { x, y }, radius })),
    corners: box.segments.map(startOf),
  };
}

/** Points along every line, at most 1 mm apart, turned if asked. */
function sampled(segments: readonly Segment[], turned: boolean): Point[] {
  return segments.flatMap((segment) => {
    const points: Point[] = [];
    let from = startOf(segment);
    for (const to of flattenSegment(segment, 0.05)) {
      const steps = Math.max(1, Math.ceil(Math.hypot(to.x - from.x, to.y - from.y)));
      for (let i = 0; i <= steps; i++)
        points.push({ x: from.x + ((to.x - from.x) * i) / steps, y: from.y + ((to.y - from.y) * i) / steps });
      from = to;
    }
    return points.map((p) => (turned ? { x: -p.y, y: p.x } : p));
  });
}

/** Every offset of the grid in steps of `step`, each judged by which windows hold points that no chosen one shows. */
function bruteForce(content: Content, step: number): { fewest: number; clear: boolean } {
  let best = { fewest: Infinity, clear: false };
  const [px, py] = [SIZE.width - OVERLAP, SIZE.height - OVERLAP];
  for (const turned of [false, true]) {
    const points = sampled(content.segments, turned);
    const holes = content.holes.map(({ point: { x, y } }) => (turned ? { x: -y, y: x } : { x, y }));
    const minX = Math.min(...points.map((p) => p.x));
    const minY = Math.min(...points.map((p) => p.y));
    for (let ox = 0; ox < px; ox += step) {
      for (let oy = 0; oy < py; oy += step) {
        const windows = cover(points, minX - ox, minY - oy, px, py);
        if (windows.size > best.fewest) continue;
        const columns = [...windows].map((w) => Number(w.split(',')[0]));
        const rows = [...windows].map((w) => Number(w.split(',')[1]));
        const seamFree = (at: number, first: number, pitch: number, which: number[]): boolean => {
          for (let k = Math.min(...which) + 1; k <= Math.max(...which); k++) {
            if (Math.abs(at - (first + k * pitch + OVERLAP / 2)) < 3) return false;
          }
          return true;
        };
        const clear = holes.every(
          (h) => seamFree(h.x, minX - ox, px, columns) && seamFree(h.y, minY - oy, py, rows),
        );
        if (windows.size < best.fewest || clear)
          best = { fewest: windows.size, clear: windows.size < best.fewest ? clear : best.clear || clear };
      }
    }
  }
  return best;
}

function cover(points: readonly Point[], x0: number, y0: number, px: number, py: number): Set<string> {
  const chosen = new Set<string>();
  const shared: string[][] = [];
  const [maxX, maxY] = [Math.max(...points.map((p) => p.x)), Math.max(...points.map((p) => p.y))];
  for (const { x, y } of points) {
    const span = (at: number, pitch: number): number[] => {
      const k = Math.floor((at + 1e-9) / pitch);
      return at - k * pitch < OVERLAP && k > 0 ? [k - 1, k] : [k];
    };
    // A line on the far edge of a window is half cut off there, unless it is the drawing's own last line.
    const within = (at: number, last: number): number => (at > last - 1e-6 ? at - 1e-6 : at);
    const columns = span(Math.max(0, within(x, maxX) - x0), px);
    const rows = span(Math.max(0, within(y, maxY) - y0), py);
    const windows = columns.flatMap((c) => rows.map((r) => `${c},${r}`));
    if (windows.length === 1 && windows[0]) chosen.add(windows[0]);
    else shared.push(windows);
  }
  for (const windows of shared.sort((a, b) => a.length - b.length)) {
    if (windows[0] && !windows.some((w) => chosen.has(w))) chosen.add(windows[0]);
  }
  return chosen;
}

test('never more sheets than brute force finds, and no hole centre at a seam where that can be had', () => {
  fc.assert(
    fc.property(scene, (drawn) => {
      const content = contentOf(drawn);
      const tiling = tile(content, SIZE);
      const { fewest, clear } = bruteForce(content, 16);
      expect(tiling.tiles.length).toBeLessThanOrEqual(fewest);
      if (tiling.tiles.length === fewest && clear) {
        for (const { point } of content.holes) {
          const p = tiling.rotation === 90 ? { x: -point.y, y: point.x } : point;
          for (let k = 1; k < tiling.columns; k++) {
            expect(Math.abs(p.x - (windowOf(tiling, k, 0, SIZE).minX + OVERLAP / 2))).toBeGreaterThanOrEqual(
              3,
            );
          }
          for (let k = 1; k < tiling.rows; k++) {
            expect(Math.abs(p.y - (windowOf(tiling, 0, k, SIZE).minY + OVERLAP / 2))).toBeGreaterThanOrEqual(
              3,
            );
          }
        }
      }
    }),
    runs(10, 25),
  );
}, 240_000);

test('every point of the drawing lies in a printed window', () => {
  fc.assert(
    fc.property(scene, (drawn) => {
      const content = contentOf(drawn);
      const tiling = tile(content, SIZE);
      const windows = tiling.tiles.map(([c, r]) => windowOf(tiling, c, r, SIZE));
      for (const p of sampled(content.segments, tiling.rotation === 90)) {
        const shown = windows.some(
          (w) => p.x >= w.minX - 0.01 && p.x <= w.maxX + 0.01 && p.y >= w.minY - 0.01 && p.y <= w.maxY + 0.01,
        );
        if (!shown)
          throw new Error(
            `lost ${p.x}, ${p.y} of ${JSON.stringify(contourBounds({ segments: content.segments, closed: false }))}`,
          );
      }
    }),
    runs(15, 40),
  );
});
