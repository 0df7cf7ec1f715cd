import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type Join, joinsOf, trimmedWindows } from '../../src/cut/sheet/joins.ts';
import { windowSizes } from '../../src/cut/sheet/layout.ts';
import { type Content, tile } from '../../src/cut/sheet/tiling.ts';
import type { Bounds, Point } from '../../src/geometry/point.ts';
import { flattenSegment, type Segment, startOf } from '../../src/geometry/segment.ts';
import { circle, rectangle } from '../../src/geometry/shapes.ts';
import { PAPERS } from '../../src/trade/paper.ts';
import { runs } from '../samples.ts';

const SIZES = windowSizes(PAPERS.a4);
const OVERLAP = 10;

// The safe area of A4 upright is 184 × 266 mm and lying 261 × 184 mm; rulers take 5 mm all round.
test('a sheet shows what the margins and slim rulers leave', () => {
  expect(SIZES).toEqual({ upright: { width: 174, height: 256 }, lying: { width: 251, height: 174 } });
});

// Sheets along an axis = 1 if L ≤ u, else ceil((L − o) / (u − o)): arithmetic of overlapping sheets.
test.each([
  [100, 100, 1],
  [173, 255, 1],
  [173, 256, 2],
  [250, 173, 1],
  [251, 174, 2],
  [337, 501, 4],
])('the lines round %d × %d mm need at most %d sheets', (width, height, sheets) => {
  expect(tile(boxContent(width, height), SIZES).windows.length).toBeLessThanOrEqual(sheets);
});

test('a square opening is laid on four sheets turned round its empty middle', () => {
  const { windows } = tile(boxContent(405, 405), SIZES);
  expect(windows).toHaveLength(4);
  expect(windows.filter(({ landscape }) => landscape)).toHaveLength(2);
  expect(joinsOf(windows)).toHaveLength(4);
});

test('a panel of 2.4 m with a row of holes takes at most eleven sheets, all of them joined', () => {
  const centres = Array.from({ length: 9 }, (_, i) => ({ x: i * 300, y: 40 }));
  const content: Content = {
    segments: centres.flatMap((c) => circle(c, 4).segments),
    holes: centres.map((point) => ({ point, radius: 4 })),
    corners: [],
  };
  const { windows } = tile(content, SIZES);
  expect(windows.length).toBeLessThanOrEqual(11);
  expect(parts(windows.map(({ at }) => at))).toBe(1);
});

test('no two strips are joined at their ends alone: what lies between is never longer than one sheet', () => {
  const { windows } = tile({ ...boxContent(700, 1200), corners: [] }, SIZES);
  const plain = Math.ceil((1201 - OVERLAP) / 246) * Math.ceil((701 - OVERLAP) / 164);
  expect(windows.length).toBeLessThanOrEqual(plain);
  const boxes = windows.map(({ at }) => at);
  const middle = (boxes[0]?.maxX ?? 0) + 40;
  const crossing = boxes
    .filter((b) => b.minX < middle && b.maxX > middle)
    .toSorted((a, b) => a.minY - b.minY);
  for (const [i, b] of crossing.slice(1).entries())
    expect(b.minY - (crossing[i]?.maxY ?? 0)).toBeLessThan(256);
});

/** The trims of one sheet alone, as joins of a list that holds only it. */
function trimsOf(joins: readonly Join[]): Join[] {
  return joins.map((join) => ({ ...join, trimmed: 0, under: 1 }));
}

/** How many groups of windows there are that overlap nowhere along an edge. */
function parts(windows: readonly Bounds[]): number {
  const joins = joinsOf(windows.map((at) => ({ landscape: false, at })));
  const group = windows.map((_, i) => i);
  for (const { trimmed, under } of joins) {
    const [a, b] = [group[trimmed], group[under]];
    group.forEach((g, i) => {
      if (g === a) group[i] = b ?? 0;
    });
  }
  return new Set(group).size;
}

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

/** Points along every line, at most 1 mm apart. */
function sampled(segments: readonly Segment[]): Point[] {
  return segments.flatMap((segment) => {
    const points: Point[] = [];
    let from = startOf(segment);
    for (const to of flattenSegment(segment, 0.05)) {
      const steps = Math.max(1, Math.ceil(Math.hypot(to.x - from.x, to.y - from.y)));
      for (let i = 0; i <= steps; i++)
        points.push({ x: from.x + ((to.x - from.x) * i) / steps, y: from.y + ((to.y - from.y) * i) / steps });
      from = to;
    }
    return points;
  });
}

/**
 * What any grid of one kind of sheet can do, tried at offsets of 16 mm with nothing left out: the fewest sheets, and
 * whether as few leave every hole whole by 3 mm.
 */
function plainGrids(content: Content): { fewest: number; clear: boolean } {
  const points = sampled(content.segments);
  const low = { x: Math.min(...points.map((p) => p.x)), y: Math.min(...points.map((p) => p.y)) };
  const high = { x: Math.max(...points.map((p) => p.x)), y: Math.max(...points.map((p) => p.y)) };
  let best = { fewest: Number.POSITIVE_INFINITY, clear: false };
  for (const { width, height } of [SIZES.upright, SIZES.lying]) {
    const count = (length: number, window: number): number =>
      length + 0.6 <= window ? 1 : Math.ceil((Math.ceil(length + 0.6) - OVERLAP) / (window - OVERLAP));
    const [columns, rows] = [count(high.x - low.x, width), count(high.y - low.y, height)];
    const spare = {
      x: columns * (width - OVERLAP) + OVERLAP - (high.x - low.x) - 0.8,
      y: rows * (height - OVERLAP) + OVERLAP - (high.y - low.y) - 0.8,
    };
    const clearAlong = (axis: 'x' | 'y', pitch: number, n: number): boolean => {
      for (let shift = 0; shift <= Math.max(0, spare[axis]); shift += 4) {
        const seams = Array.from(
          { length: n - 1 },
          (_, k) => low[axis] - 0.4 - shift + (k + 1) * pitch + OVERLAP / 2,
        );
        if (seams.every((s) => content.holes.every((h) => Math.abs(h.point[axis] - s) >= h.radius + 4.5)))
          return true;
      }
      return false;
    };
    const clear = clearAlong('x', width - OVERLAP, columns) && clearAlong('y', height - OVERLAP, rows);
    const sheets = columns * rows;
    if (sheets < best.fewest) best = { fewest: sheets, clear };
    else if (sheets === best.fewest) best = { fewest: sheets, clear: best.clear || clear };
  }
  return best;
}

test('never more sheets than a plain grid, all joined, all shown, and no seam at a hole where that can be had', () => {
  fc.assert(
    fc.property(scene, (drawn) => {
      const content = contentOf(drawn);
      const { windows } = tile(content, SIZES);
      const { fewest, clear } = plainGrids(content);
      expect(windows.length).toBeLessThanOrEqual(fewest);
      const boxes = windows.map(({ at }) => at);
      expect(parts(boxes)).toBe(1);
      const joins = joinsOf(windows);
      // A sheet that another is laid on stays whole; one that is laid on it has lost what lies beyond its seam.
      const left = windows.map((_, i) => joins.filter((join) => join.trimmed === i));
      const trimmed = windows.map((one, i) => trimmedWindows([one], trimsOf(left[i] ?? []))[0] ?? one.at);
      for (const p of sampled(content.segments)) {
        const shown = trimmed.filter(
          (w) => p.x >= w.minX - 0.01 && p.x <= w.maxX + 0.01 && p.y >= w.minY - 0.01 && p.y <= w.maxY + 0.01,
        );
        if (shown.length === 0) throw new Error(`lost ${p.x}, ${p.y}`);
      }
      if (!clear) return;
      for (const { upright, at, from, to } of joins) {
        for (const { point, radius } of content.holes) {
          const [across, along] = upright ? [point.x, point.y] : [point.y, point.x];
          if (along < from - radius || along > to + radius) continue;
          expect(Math.abs(across - at)).toBeGreaterThanOrEqual(radius + 3);
        }
      }
    }),
    runs(10, 200),
  );
}, 300_000);
