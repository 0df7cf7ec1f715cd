import { describe, expect, test } from 'vitest';
import { drawingsRead } from '../../src/cut/shape/maker.ts';
import { span, template } from './fixtures.ts';
import { differenceOf, foreignFiles, foreignText, readForeign } from './foreign-files.ts';

/*
 * Drawings of other programs, as those wrote them (what a DXF has beside layers, blocks and entities is cut away
 * to keep them small). files.json names the program of each. What they hold was read by GDAL 3.6.2 (ogr2ogr, arcs
 * in steps of 1°), whose corners lie on the curves; splines, of which GDAL drops the closing ones, by ezdxf. SVG is held against a browser in tests/browser.
 */
const dxf = foreignFiles.filter(([name, { oracle }]) => name.endsWith('.dxf') && oracle);

describe('DXF of other programs, as GDAL and ezdxf read it', () => {
  test.each(dxf)('%s', (name, file) => {
    const read = readForeign(name, file);
    if (!read.ok || !file.oracle) throw new Error(read.ok ? 'no oracle' : read.message);
    const { point, size, length } = differenceOf(read, file.oracle);
    expect(point).toBeLessThan(0.01);
    // An arc in steps of 1° falls short of its furthest point by up to 4e-5 of its radius.
    expect(size).toBeLessThan(0.02);
    expect(length).toBeLessThan(1e-3);
  });
});

describe('what cannot be read as drawn is refused by its cause', () => {
  test.each(foreignFiles.filter(([, { refused }]) => refused !== undefined))('%s', (name, file) => {
    const read = readForeign(name, file);
    expect(read.ok ? 'read' : read.message).toContain(file.refused);
  });
});

test('most are read, and none is left untried', () => {
  expect(foreignFiles.length).toBeGreaterThanOrEqual(60);
  const read = foreignFiles.filter(([name, file]) => readForeign(name, file).ok);
  expect(read.length).toBeGreaterThanOrEqual(48);
  expect(read.every(([, { refused }]) => refused === undefined)).toBe(true);
});

test('a page says what was read, with its overall size', () => {
  const outline = (name: string, layers: readonly string[] | null) => ({
    kind: 'file' as const,
    path: `shop/${name}`,
    text: foreignText(name),
    layers,
    unit: null,
    when: null,
    at: span(3),
  });
  const words = (name: string, layers: readonly string[] | null = null) =>
    drawingsRead(template({ outlines: [outline(name, layers)] }));
  // 120 × 35 mm, as GDAL has it.
  expect(words('layers-chosen.dxf', ['CUT'])).toEqual([
    'Read from layers CUT of layers-chosen.dxf: 1 outline, 120 × 35 mm overall',
  ]);
  expect(words('layer-frozen.dxf')).toEqual([
    'Read from layer-frozen.dxf: 1 outline and 2 circles, 120 × 35 mm overall',
    'Left out of it: what is not shown, text',
  ]);
  expect(words('ellipse-half.dxf')[1]).toMatch(/^Its curves are followed by arcs within 0\.00\d mm$/);
});
