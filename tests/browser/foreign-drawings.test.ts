/// <reference lib="dom" />
/// <reference lib="dom.iterable" />
import type { Browser } from 'playwright-core';
import { beforeAll, expect, test } from 'vitest';
import { differenceOf, foreignFiles, foreignText, type Oracle, readForeign } from '../cut/foreign-files.ts';
import { chromiumOfWorker } from './browser.ts';

const all = foreignFiles.filter(([name, { refused }]) => name.endsWith('.svg') && refused === undefined);
const svg = process.env.LONG ? all : all.filter((_, i) => i % 3 === 0);

let browser: Browser;

beforeAll(async () => {
  browser = await chromiumOfWorker();
});

/** What Chromium draws: points along each shape that is shown, in millimetres from the zero of the user units. */
function measure({ mm, layers }: { mm: number | null; layers: readonly string[] | null }): Oracle {
  const root = document.querySelector('svg') as SVGSVGElement;
  const zero = new DOMPoint(0, 0).matrixTransform(root.getScreenCTM() ?? undefined);
  const one = new DOMPoint(1, 0).matrixTransform(root.getScreenCTM() ?? undefined);
  // Where the guide states the unit, it is of the outermost user unit; else a pixel is 1/96 inch.
  const scale = mm === null ? 25.4 / 96 : mm / (one.x - zero.x);
  const runs: DOMPoint[][] = [];
  const along = (shape: SVGGeometryElement, matrix: DOMMatrix): void => {
    const total = shape.getTotalLength();
    const steps = 800;
    const run = Array.from({ length: steps + 1 }, (_, i) =>
      shape.getPointAtLength((total * i) / steps).matrixTransform(matrix),
    );
    runs.push(run);
  };
  const isPainted = (element: Element): boolean => {
    const { fill, stroke, visibility } = getComputedStyle(element);
    if (visibility !== 'visible' || (fill === 'none' && stroke === 'none')) return false;
    for (let one: Element | null = element; one; one = one.parentElement)
      if (getComputedStyle(one).display === 'none') return false;
    return true;
  };
  for (const element of root.querySelectorAll('*')) {
    if (element.closest('defs, clipPath, symbol, mask')) continue;
    const layer = element.closest('g[id^=layer]')?.getAttribute('inkscape:label') ?? '';
    if (layers && !layers.includes(layer)) continue;
    if (element instanceof SVGGeometryElement && isPainted(element))
      along(element, element.getScreenCTM() ?? new DOMMatrix());
    if (element instanceof SVGUseElement) {
      // What a use shows is out of a script's reach, but for its box.
      const { x, y, width, height } = element.getBBox();
      const corners = [new DOMPoint(x, y), new DOMPoint(x + width, y + height)];
      runs.push(corners.map((corner) => corner.matrixTransform(element.getScreenCTM() ?? undefined)));
    }
  }
  const inMm = runs.map((run) =>
    run.map(({ x, y }) => [(x - zero.x) * scale, (zero.y - y) * scale] as const),
  );
  const whole = inMm.flat();
  // A jump from one part of a path to the next is no part of its line.
  const step = (a: readonly [number, number], b: readonly [number, number]): number =>
    Math.hypot(a[0] - b[0], a[1] - b[1]);
  const length = inMm.reduce((sum, run) => {
    const steps = run.slice(1).map((b, i) => step(run[i] as readonly [number, number], b));
    const usual = steps.toSorted((a, b) => a - b)[Math.floor(steps.length / 2)] ?? 0;
    return sum + steps.filter((one) => one < 4 * usual).reduce((total, one) => total + one, 0);
  }, 0);
  const [xs, ys] = [whole.map(([x]) => x), whole.map(([, y]) => y)];
  const bounds = [Math.min(...xs), Math.min(...ys), Math.max(...xs), Math.max(...ys)];
  return { bounds, length, points: whole.filter((_, i) => i % 17 === 0 || i === whole.length - 1) };
}

test.each(svg)('%s is read as Chromium draws it', async (name, file) => {
  const page = await browser.newPage();
  await page.goto(new URL(`../cut/foreign/${name}`, import.meta.url).href);
  const oracle = await page.evaluate(measure, { mm: file.unit ?? null, layers: file.layers ?? null });
  await page.close();
  const read = readForeign(name, file);
  if (!read.ok) throw new Error(read.message);
  const { point, size, length } = differenceOf(read, oracle);
  const isUsed = foreignText(name).includes('<use');
  if (!isUsed) expect(point).toBeLessThan(0.01);
  // A corner falls between two of the browser's points.
  expect(size).toBeLessThan(0.25);
  if (!isUsed) expect(length).toBeLessThan(4e-3);
});
