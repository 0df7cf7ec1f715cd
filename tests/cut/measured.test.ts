import { beforeAll, describe, expect, test } from 'vitest';
import { type DrawnSide, drawTemplate } from '../../src/cut/draw-template.ts';
import { layoutOf } from '../../src/cut/sheet/layout.ts';
import type { Bounds } from '../../src/geometry/point.ts';
import type { SheetTile } from '../../src/model/cut-template.ts';
import { PAPERS, SAFE_MARGIN } from '../../src/trade/paper.ts';
import { sampleOf } from '../samples.ts';
import { CONTEXT, NOTCH, OPENING } from './fixtures.ts';
import { ask, type Ink, paint } from './ink.ts';

/** The printed sheets are measured, never the numbers that made them. */
const WITHIN = 0.1;

function near(values: readonly number[], expected: number): number {
  const best = values.reduce((a, b) => (Math.abs(b - expected) < Math.abs(a - expected) ? b : a), Number.NaN);
  const nearest = Number.isNaN(best)
    ? (values.toSorted((a, b) => Math.abs(a - expected) - Math.abs(b - expected))[0] ?? Number.NaN)
    : best;
  expect(Math.abs(nearest - expected)).toBeLessThan(WITHIN);
  return nearest;
}

function file(side: DrawnSide | undefined, ending: string): Uint8Array {
  const found = side?.files.find((f) => f.name.endsWith(ending));
  if (!found) throw new Error(`no file ${ending}`);
  return found.bytes;
}

let opening: DrawnSide | undefined;
let notch: DrawnSide | undefined;
const pages = new Map<number, Ink>();

function page(number: number): Ink {
  const known = pages.get(number) ?? paint(file(opening, 'a4.pdf'), number);
  pages.set(number, known);
  return known;
}

beforeAll(async () => {
  opening = (await drawTemplate(OPENING, CONTEXT)).sides[0];
  notch = (await drawTemplate(NOTCH, CONTEXT)).sides[0];
}, 60_000);

describe('the proof sheet', () => {
  test('has a 100 mm square', () => {
    const ink = page(1);
    // The proof block: square 6 mm in from its corner, which lies at the left of the safe area.
    const left = 13 + 6;
    const top = 297 - 13 - 34 - 6;
    const columns = ink.across(top - 30.5, left - 1, left + 101);
    const x1 = near(columns, left);
    const x2 = near(columns, left + 100);
    expect(Math.abs(x2 - x1 - 100)).toBeLessThan(WITHIN);
    const rows = ink.up(left + 30.5, top - 101, top + 1);
    expect(Math.abs(near(rows, top) - near(rows, top - 100) - 100)).toBeLessThan(WITHIN);
    // Both diagonals cross in its middle.
    const middle = ink.across(top - 50.05, left + 45, left + 55);
    near(middle, left + 50);
  });

  test('has a bank card of 85.60 × 53.98 mm (ISO/IEC 7810)', () => {
    const ink = page(1);
    const [left, bottom] = [13 + 6, 297 - 13 - 34 - 6 - 100];
    near(ink.across(bottom + 25, left + 80, left + 90), left + 85.6);
    near(ink.up(left + 60, bottom + 50, bottom + 58), bottom + 53.98);
  });

  test('has rulers whose every centimetre and inch is true', () => {
    const ink = page(1);
    const [left, bottom] = [13 + 6, 297 - 13 - 34 - 6 - 100];
    const ticks = ink.across(bottom - 2.6, left - 1, left + 101);
    expect(ticks).toHaveLength(11);
    for (const [i, at] of ticks.entries()) expect(Math.abs(at - (left + 10 * i))).toBeLessThan(WITHIN);
    const inches = ink.across(bottom + 100 + 2.7, left - 1, left + 101);
    for (const [i, at] of inches.entries()) expect(Math.abs(at - (left + 25.4 * i))).toBeLessThan(WITHIN);
    expect(inches).toHaveLength(4);
  });
});

describe('a tile', () => {
  const tiles = () => opening?.plans[0]?.tiles ?? [];
  const frameOf = ({ landscape }: SheetTile) => layoutOf(PAPERS.a4, landscape).window;

  test('shows cuts and holes where the plan says, true to size', () => {
    const at = (px: number, py: number) => {
      const tile = tiles().find(({ trimmed: t }) => {
        const [x, y] = [px - t.x, py - t.y];
        return x > 6 && x < t.width - 6 && y > 6 && y < t.height - 6;
      });
      if (!tile) throw new Error(`no sheet shows ${px}, ${py}`);
      const frame = frameOf(tile);
      return {
        ink: page(tile.page),
        x: (v: number): number => v - tile.window.x + frame.minX,
        y: (v: number): number => v - tile.window.y + frame.minY,
      };
    };
    // The left side of the opening at x −180, its upper side at y 420, and hole E at −160, 445.
    const side = at(-180, 300.3);
    near(side.ink.across(side.y(300.3), side.x(-185), side.x(-175)), side.x(-180));
    const top = at(-110.3, 420);
    near(top.ink.up(top.x(-110.3), top.y(415), top.y(425)), top.y(420));
    // The r 40 corner at 45°: centre −140, 380.
    const corner = 40 * Math.SQRT1_2;
    const arc = at(-140 - corner, 380 + corner);
    near(arc.ink.across(arc.y(380 + corner), arc.x(-172), arc.x(-164)), arc.x(-140 - corner));
    // Beside its hatching a hole is measured where the cross and the strokes are not: at its two edges.
    const { ink, x, y } = at(-160, 445);
    const hole = ink.across(y(445) + 1.5, x(-166), x(-154));
    const half = Math.sqrt(4.25 ** 2 - 1.5 ** 2);
    const middle = (near(hole, x(-160) - half) + near(hole, x(-160) + half)) / 2;
    expect(Math.abs(middle - x(-160))).toBeLessThan(WITHIN);
  });

  test('has true rulers, and joins its neighbour within 0.1 mm', () => {
    const [a, b] = tiles().flatMap((left) => {
      const right = tiles().find(
        ({ page: number, window }) =>
          left.joins.includes(number) && window.y === left.window.y && window.x > left.window.x,
      );
      return right ? [left, right] : [];
    });
    if (!a || !b) throw new Error('no two sheets side by side');
    const [left, right] = [page(a.page), page(b.page)];
    const [frame, other] = [frameOf(a), frameOf(b)];
    // Only the marks of whole centimetres are as long as 1.9 mm.
    const ticks = left.across(frame.minY - 1.9, frame.minX - 1, frame.maxX + 1);
    for (const [i, at] of ticks.entries()) expect(Math.abs(at - (frame.minX + 10 * i))).toBeLessThan(WITHIN);
    expect(ticks).toHaveLength(Math.floor((frame.maxX - frame.minX) / 10) + 1);
    // The same crosses on both sheets: 5 mm in from the window's edge, their level arms at one height.
    const armsOf = (ink: Ink, at: number, { minY, maxY }: Bounds): number[] =>
      ink.up(at, minY + 8, maxY - 8).map((y) => y - minY);
    const onLeft = armsOf(left, frame.maxX - 5 - 2, frame);
    const onRight = armsOf(right, other.minX + 5 - 2, other);
    const shared = onLeft.filter((y) => onRight.some((z) => Math.abs(y - z) < WITHIN));
    expect(shared.length).toBeGreaterThanOrEqual(2);
    expect(b.window.x - a.window.x).toBe(frame.maxX - frame.minX - 10);
  });
});

test('ink stays inside the safe area on every sheet', () => {
  const numbers = Array.from({ length: opening?.plans[0]?.pages ?? 0 }, (_, index) => index + 1);
  expect(numbers.length).toBeGreaterThan(6);
  for (const i of sampleOf(numbers, 6)) {
    const box = page(i).box();
    const landscape = page(i).width > page(i).height;
    // A lying sheet may come out with its foot at either end.
    const margin = landscape ? { left: 18, right: 18, top: 13, bottom: 13 } : SAFE_MARGIN;
    expect(box.minX).toBeGreaterThan(margin.left - 0.2);
    expect(box.maxX).toBeLessThan(page(i).width - margin.right + 0.2);
    expect(box.minY).toBeGreaterThan(margin.bottom - 0.2);
    expect(box.maxY).toBeLessThan(page(i).height - margin.top + 0.2);
  }
}, 240_000);

test('one sheet carries all where it fits, true to size', () => {
  expect(notch?.plans[0]).toMatchObject({ oneSheet: true, pages: 1 });
  const ink = paint(file(notch, 'a4.pdf'), 1);
  const box = ink.box();
  expect(box.minX).toBeGreaterThan(SAFE_MARGIN.left - 0.2);
  expect(box.minY).toBeGreaterThan(SAFE_MARGIN.bottom - 0.2);
  // The notch is 124 mm wide: both of its sides on one level line through its middle.
  const rows = ink.across(182.05, 30, 190);
  const pairs = rows.flatMap((p) => rows.map((q) => q - p));
  near(pairs, 124);
});

describe('as other readers see it', () => {
  test.each([
    ['a4', PAPERS.a4],
    ['letter', PAPERS.letter],
  ] as const)('the page box is exactly the paper: %s', (name, paper) => {
    const text = ask('pdfinfo', file(opening, `${name}.pdf`), '-box', '-l', '3');
    const box =
      /MediaBox:\s+([\d.]+)\s+([\d.]+)\s+([\d.]+)\s+([\d.]+)/.exec(text)?.slice(1).map(Number) ?? [];
    expect(box[2]).toBeCloseTo((paper.width * 72) / 25.4, 1);
    expect(box[3]).toBeCloseTo((paper.height * 72) / 25.4, 1);
  });

  test('qpdf finds no fault and poppler every page', () => {
    const pdf = file(opening, 'a4.pdf');
    expect(ask('qpdf', pdf, '--check')).toContain('No syntax or stream encoding errors');
    expect(ask('pdfinfo', pdf)).toContain(`Pages:           ${opening?.plans[0]?.pages}`);
  });

  test('pdfjs reads the wish not to be scaled', async () => {
    const { getDocument } = await import('pdfjs-dist/legacy/build/pdf.mjs');
    const doc = await getDocument({ data: new Uint8Array(file(notch, 'a4.pdf')), verbosity: 0 }).promise;
    const wishes = await doc.getViewerPreferences();
    expect(wishes).toMatchObject({
      PrintScaling: 'None',
      PickTrayByPDFSize: true,
      Duplex: 'Simplex',
    });
    // pdfjs passes over /Enforce; qpdf shows it.
    expect(ask('qpdf', file(notch, 'a4.pdf'), '--json')).toMatch(/"\/Enforce":\s*\[\s*"\/PrintScaling"\s*\]/);
    const first = await doc.getPage(1);
    expect(first.view[2]).toBeCloseTo(595.2756, 3);
    await doc.destroy();
  });
});

test('a corrected file is stretched per axis and says so', async () => {
  const correction = { x: 100 / 99.2, y: 1 };
  const { files } = await drawTemplate(NOTCH, { ...CONTEXT, papers: ['a4'], correction });
  const pdf = files.find((f) => f.name === 'notch-a4-corrected.pdf');
  if (!pdf) throw new Error('no corrected file');
  const ink = paint(pdf.bytes, 1);
  const rows = ink.across(182.05, 30, 190);
  near(
    rows.flatMap((p) => rows.map((q) => q - p)),
    124 * correction.x,
  );
});

test('two builds give the same bytes', async () => {
  const again = (await drawTemplate(OPENING, CONTEXT)).files;
  for (const [i, one] of (opening?.files ?? []).entries()) {
    expect(again[i]?.name).toBe(one.name);
    expect(Buffer.compare(Buffer.from(one.bytes), Buffer.from(again[i]?.bytes ?? []))).toBe(0);
  }
});
