import { expect, test } from 'vitest';
import { drawTemplate } from '../../src/cut/draw-template.ts';
import { metricsOf } from '../../src/cut/drawing/metrics.ts';
import { panelLines } from '../../src/cut/drawing/panel-marks.ts';
import { headLines, positionsOf } from '../../src/cut/drawing/positions.ts';
import { readDrawing } from '../../src/cut/read/read-drawing.ts';
import { resolve } from '../../src/cut/shape/resolve.ts';
import type { CutTemplate } from '../../src/model/cut-template.ts';
import { CONTEXT, hole, span, template } from './fixtures.ts';

const svg = (inner: string): string =>
  `<svg xmlns="http://www.w3.org/2000/svg" width="100mm" height="100mm" viewBox="0 0 100 100">${inner}</svg>`;

/** A closed polyline with so many corners, as a DXF of millimetres: a star of many blunt points. */
const wheel = (corners: number) => polyline(corners, (i) => (i % 2 === 0 ? 100 : 98));

/** The same round a circle. */
const ring = (corners: number) => polyline(corners, () => 100);

function polyline(corners: number, radiusOf: (i: number) => number): string {
  const at = (i: number): string => {
    const [angle, radius] = [(2 * Math.PI * i) / corners, radiusOf(i)];
    return `10\n${200 + radius * Math.cos(angle)}\n20\n${200 + radius * Math.sin(angle)}\n`;
  };
  const vertices = Array.from({ length: corners }, (_, i) => at(i)).join('');
  return `0\nSECTION\n2\nHEADER\n9\n$INSUNITS\n70\n4\n0\nENDSEC\n0\nSECTION\n2\nENTITIES\n0\nLWPOLYLINE\n8\n0\n90\n${corners}\n70\n1\n${vertices}0\nENDSEC\n0\nEOF\n`;
}

function reading(path: string, text: string): CutTemplate {
  const outline = { kind: 'file' as const, path, text, layers: null, unit: null, when: null, at: span(3) };
  return template({ outlines: [outline] });
}

// Each took from seconds to minutes, or grew with the square of its length: what hangs fails by its time.
test.each([
  [
    'long runs of blanks in a path',
    'a.svg',
    svg(`<path d="M0 0${' '.repeat(100_000)}A5 5 0 0 1${' '.repeat(100_000)}x"/>`),
    ['cut-file-unreadable'],
  ],
  [
    'a word of 100 kB in a path',
    'a.svg',
    svg(`<path d="M0 0${'z'.repeat(100_000)}"/>`),
    ['cut-file-unreadable'],
  ],
  ['a number of 100 kB', 'a.svg', svg(`<path d="M0 ${'1'.repeat(100_000)}"/>`), ['cut-file-unreadable']],
  [
    '100 kB of blanks in a transform',
    'a.svg',
    svg(`<path transform="rotate(${' '.repeat(100_000)}x" d="M0 0L9 9"/>`),
    ['cut-file-unreadable'],
  ],
  [
    'a style of 100 kB',
    'a.svg',
    svg(`<path style="${'/*'.repeat(50_000)}" d="M0 0L9 9"/>`),
    ['cut-outline-open'],
  ],
  ['a polyline of 2,400 corners', 'a.dxf', wheel(2400), []],
])('%s is read, or told, soon', { timeout: 20_000 }, (_, path, text, told) => {
  const codes = resolve(reading(path, text)).findings.map(({ code }) => code);
  expect(codes).toEqual(told);
});

// Two thousand corners, each tried against each of the others on every sheet, took 23 s.
test('of 1,200 corners every one is listed, on the drawing every fiftieth may be named, and each hole is', async () => {
  const holes = [hole(350, 200, 8), hole(350, 230, 8)];
  const wide = { ...reading('a.dxf', wheel(1200)), holes };
  const { resolved } = resolve(wide);
  expect(positionsOf(resolved)).toHaveLength(1202);
  expect(headLines(resolved, 200, metricsOf(CONTEXT.fonts))).toContain(
    'On the drawing at most 1 corner in 50 is named',
  );
  const { files } = await drawTemplate(wide, { ...CONTEXT, papers: [] });
  const svg = new TextDecoder().decode(files.find(({ format }) => format === 'svg')?.bytes);
  const named = [...svg.matchAll(/>A(\d+)\b/g)].map(([, number]) => Number(number));
  expect(named.length).toBeGreaterThan(10);
  expect(named.filter((number) => (number - 1) % 50 !== 0)).toEqual([]);
  for (const mark of ['B', 'C']) expect(svg).toMatch(new RegExp(`>${mark}  Ø 8`));
});

test('the waste of a curve of many short lines is hatched as that of one arc', () => {
  const strokes = (corners: number) =>
    panelLines(resolve(reading('a.dxf', ring(corners))).resolved).hatch.length;
  // 2π × 100 mm with a stroke each 4 mm; a stroke may wait for the end of the line that it stands on.
  expect(strokes(60)).toBeGreaterThan(110);
  expect(strokes(1200)).toBeGreaterThan(110);
  expect(strokes(1200)).toBeLessThan(158);
});

test('shapes that repeat themselves without end are refused', () => {
  const uses = Array.from(
    { length: 12 },
    (_, i) => `<g id="g${i + 1}">${`<use href="#g${i}"/>`.repeat(9)}</g>`,
  );
  const read = readDrawing('a.svg', svg(`<g id="g0"><path d="M0 0L9 9"/></g>${uses.join('')}`), {
    layers: null,
    unit: null,
  });
  expect(read).toMatchObject({
    ok: false,
    message: 'the file repeats its shapes more often than can be followed',
  });
});
