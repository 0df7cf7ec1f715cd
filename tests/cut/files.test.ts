import dxfParser, { type IDxf } from 'dxf-parser';
import fc from 'fast-check';
import sharp from 'sharp';
import { describe, expect, test } from 'vitest';
import { type DrawnTemplate, drawTemplate } from '../../src/cut/draw-template.ts';
import { readDrawing } from '../../src/cut/read/read-drawing.ts';
import { resolve } from '../../src/cut/shape/resolve.ts';
import { type Contour, contourBounds, flatten, perimeter } from '../../src/geometry/contour.ts';
import { distanceToContour } from '../../src/geometry/distance.ts';
import { runs } from '../samples.ts';
import { CONTEXT, hole, keepOut, mm, NOTCH, OPENING, outline, span, template } from './fixtures.ts';

// The package's types and its module disagree about which of its exports is the class.
const DxfParser = dxfParser as unknown as new () => { parseSync(text: string): IDxf | null };

function text(drawn: DrawnTemplate, ending: string): string {
  const found = drawn.files.find((f) => f.name.endsWith(ending));
  if (!found) throw new Error(`no ${ending}`);
  return new TextDecoder().decode(found.bytes);
}

interface Vertex {
  x: number;
  y: number;
  bulge?: number;
}

describe('DXF, read by dxf-parser', () => {
  test('is in millimetres, holes are circles, corners are bulges', async () => {
    const dxf = new DxfParser().parseSync(
      text(await drawTemplate(OPENING, { ...CONTEXT, papers: [] }), '.dxf'),
    );
    expect(dxf?.header.$INSUNITS).toBe(4);
    const entities = (dxf?.entities ?? []).filter((e) => e.layer === 'CUT');
    const circles = entities.filter((e) => e.type === 'CIRCLE') as unknown as {
      radius: number;
      center: Vertex;
    }[];
    expect(circles).toHaveLength(8);
    expect(
      circles
        .map((c) => c.radius)
        .toSorted((a, b) => a - b)
        .at(-1),
    ).toBe(6);
    const line = entities.find((e) => e.type === 'LWPOLYLINE') as unknown as {
      vertices: Vertex[];
      shape: boolean;
    };
    expect(line.shape).toBe(true);
    // A quarter turn has a bulge of tan(22.5°) = 0.41421.
    expect(line.vertices.filter((v) => Math.abs((v.bulge ?? 0) - Math.SQRT2 + 1) < 1e-6)).toHaveLength(4);
    const xs = line.vertices.map((v) => v.x);
    expect([Math.min(...xs), Math.max(...xs)]).toEqual([-180, 180]);
    const layers = new Set((dxf?.entities ?? []).map((e) => e.layer));
    expect([...layers].sort()).toEqual(['CENTRE', 'CUT', 'DATUM', 'DIMENSION', 'IDENTITY', 'KEEP-OUT']);
  });

  test('an open notch is an open line, the path of the cutter is on its own layer', async () => {
    const dxf = new DxfParser().parseSync(
      text(await drawTemplate(NOTCH, { ...CONTEXT, papers: [] }), '.dxf'),
    );
    const cut = (dxf?.entities ?? []).find((e) => e.layer === 'CUT') as unknown as {
      shape: boolean;
      vertices: Vertex[];
    };
    expect(cut.shape).toBe(false);
    expect(cut.vertices.at(-1)).toMatchObject({ x: -62, y: 0 });
    expect((dxf?.entities ?? []).some((e) => e.layer === 'TOOL-PATH')).toBe(true);
  });
});

test('files for a machine say who they are and how their guide stands, clear of every line', async () => {
  const standing = 'Not verified since step 7 changed';
  const correction = { x: 1.0081, y: 0.994 };
  const drawn = await drawTemplate(
    { ...OPENING, side: 'left', setBack: { value: mm(0.5), at: span(14) } },
    { ...CONTEXT, papers: [], standing, draft: true, correction },
  );
  const svg = text(drawn, '.svg');
  const dxf = new DxfParser().parseSync(text(drawn, '.dxf'));
  const identity = (dxf?.entities ?? []).filter((e) => e.layer === 'IDENTITY');
  const lettered = identity.filter((e) => e.type === 'TEXT') as unknown as {
    text: string;
    startPoint: Vertex;
  }[];
  const inDxf = lettered.map((e) => e.text).join(' ');
  const inSvg = (/<g id="identity">(.*?)<\/g>/s.exec(svg)?.[1] ?? '')
    .replace(/<[^>]*>/g, ' ')
    .replace(/\s+/g, ' ');
  for (const said of [inSvg, inDxf]) {
    for (const words of ['DRAFT', 'Roof vent opening', 'LEFT SIDE, OUTSIDE face', 'UP', CONTEXT.fingerprint])
      expect(said).toContain(words);
    expect(said).toContain(standing);
    expect(said).toContain('Set-back of 0.5 mm applied');
    // These files are not for the printer that the correction was made for.
    expect(said).not.toContain('CORRECTED');
  }
  // All else is drawn above y = 0, the lowest datum.
  expect(Math.max(...lettered.map(({ startPoint }) => startPoint.y))).toBeLessThan(-20);
  const plain = await drawTemplate(OPENING, { ...CONTEXT, papers: [] });
  expect(text(plain, '.svg')).not.toContain('DRAFT');
});

test('SVG, painted by librsvg, has its cut within 0.1 mm', async () => {
  const svg = text(
    await drawTemplate(template({ holes: [hole(30, 40, 20)], datums: [] }), { ...CONTEXT, papers: [] }),
    '.svg',
  );
  const size = /width="([\d.]+)mm" height="([\d.]+)mm" viewBox="0 0 ([\d.]+) ([\d.]+)"/.exec(svg);
  expect(size?.[1]).toBe(size?.[3]);
  // Only the cut; librsvg's own idea of a pixel does not matter, since the whole width is known in mm.
  const only = svg.replace(/<g id="(?!cut)[\s\S]*?<\/g>/g, '');
  const { data, info } = await sharp(Buffer.from(only), { density: 150 })
    .flatten({ background: 'white' })
    .greyscale()
    .raw()
    .toBuffer({ resolveWithObject: true });
  const dark = (i: number): boolean => (data[i] ?? 255) < 128;
  const columns = Array.from({ length: info.width }, (_, c) => c).filter((c) =>
    Array.from({ length: info.height }, (_, r) => r).some((r) => dark(r * info.width + c)),
  );
  const wide = ((columns.at(-1) ?? 0) + 1 - (columns[0] ?? 0)) * (Number(size?.[1]) / info.width);
  // A circle of 20 mm and the width of its line, 0.5 mm.
  expect(Math.abs(wide - 20.5)).toBeLessThan(0.1);
});

describe('round trips lose less than 0.01 mm', () => {
  const shape = fc.record({
    w: fc.integer({ min: 20, max: 300 }),
    h: fc.integer({ min: 20, max: 300 }),
    r: fc.integer({ min: 1, max: 9 }),
  });
  test.each(['.dxf', '.svg'])('through %s', async (ending) => {
    await fc.assert(
      fc.asyncProperty(shape, async ({ w, h, r }) => {
        const one = template({
          datums: [],
          outlines: [
            outline([
              [5, 7, r],
              [5 + w, 7, r],
              [5 + w, 7 + h, r],
              [5, 7 + h, r],
            ]),
          ],
        });
        const whole = text(await drawTemplate(one, { ...CONTEXT, papers: [] }), ending);
        const only =
          ending === '.svg' ? whole.replace(/<g id="(?!cut)[\s\S]*?<\/g>/g, '') : withoutDimensions(whole);
        const contour = onlyOne(`cut${ending}`, only);
        const area = resolve(one).resolved.cuts[0]?.area;
        if (!area) throw new Error('nothing cut');
        expect(Math.abs(perimeter(contour) - perimeter(area))).toBeLessThan(0.01);
        const [a, b] = [contourBounds(contour), contourBounds(area)];
        const shift = { x: a.minX - b.minX, y: a.minY - b.minY };
        for (const p of flatten(contour, 0.01)) {
          expect(distanceToContour(area, { x: p.x - shift.x, y: p.y - shift.y })).toBeLessThan(0.01);
        }
      }),
      runs(6, 12),
    );
  });
});

const PLAIN = { layers: null, unit: null };

/** The one line of a drawing. */
function onlyOne(path: string, file: string): Contour {
  const read = readDrawing(path, file, PLAIN);
  if (!read.ok) throw new Error(read.message);
  const [shape] = read.shapes;
  if (!shape || read.shapes.length !== 1) throw new Error(`${read.shapes.length} lines`);
  return shape.contour;
}

/** Leaves only the polyline of the CUT layer: loose lines belong to the dimensions. */
function withoutDimensions(dxf: string): string {
  const [head = '', rest = ''] = dxf.split(/(?<=ENTITIES\r?\n)/);
  const end = rest.search(/ {0,2}0\r?\nENDSEC/);
  const entities = rest.slice(0, end).split(/(?=^ {0,2}0\r?\n[A-Z])/m);
  return (
    head +
    entities.filter((e) => e.includes('LWPOLYLINE') && /\r?\nCUT\r?\n/.test(e)).join('') +
    rest.slice(end)
  );
}

describe('a maker’s outline', () => {
  const svg = (inner: string, size = 'width="100mm" height="50mm" viewBox="0 0 200 100"'): string =>
    `<svg xmlns="http://www.w3.org/2000/svg" ${size}>${inner}</svg>`;

  test('an SVG path with arcs, in half millimetres', () => {
    const contour = onlyOne('a.svg', svg('<path d="M20 10h100a20,20 0 0 1 20 20v40H20z"/>'));
    const b = contourBounds(contour);
    expect([b.maxX - b.minX, b.maxY - b.minY]).toEqual([60, 30]);
    expect(perimeter(contour)).toBeCloseTo(50 + 5 * Math.PI + 20 + 60 + 30, 9);
  });

  test('a DXF of loose lines in inches, in any order and direction', () => {
    const entity = (x1: number, y1: number, x2: number, y2: number): string =>
      `0\nLINE\n8\n0\n10\n${x1}\n20\n${y1}\n11\n${x2}\n21\n${y2}\n`;
    const lines = entity(0, 0, 4, 0) + entity(0, 2, 0, 0) + entity(4, 2, 4, 0) + entity(0, 2, 4, 2);
    const file = `0\nSECTION\n2\nHEADER\n9\n$INSUNITS\n70\n1\n0\nENDSEC\n0\nSECTION\n2\nENTITIES\n${lines}0\nENDSEC\n0\nEOF\n`;
    const contour = onlyOne('a.dxf', file);
    expect(contour.closed).toBe(true);
    expect(perimeter(contour)).toBeCloseTo(12 * 25.4, 9);
  });

  test('a gap is a finding', () => {
    const one = template({
      outlines: [
        {
          ...PLAIN,
          kind: 'file',
          path: 'notch.svg',
          text: svg('<path d="M20 20H80V60"/>'),
          when: null,
          at: span(3),
        },
      ],
    });
    expect(resolve(one).findings[0]).toMatchObject({ code: 'cut-outline-open', at: span(3) });
  });
});

test('the preview has the page’s colours only, no style and no script', async () => {
  const { sides } = await drawTemplate(NOTCH, { ...CONTEXT, papers: [] });
  const preview = sides[0]?.preview ?? '';
  expect(preview).not.toMatch(/style|script|black|#[0-9a-f]{3}/i);
  expect(preview).toContain('stroke="currentColor"');
  expect(preview).toContain('DATUM');
  expect(preview).toContain('>38<');
});

test('far datums and keep-outs leave the lettering of a small cut large enough for a phone', async () => {
  const stringer = keepOut('Stringer', [
    [20, -250],
    [60, -250],
    [60, 150],
    [20, 150],
  ]);
  const one = template({ holes: [hole(140, -60, 51)], keepOuts: [stringer] });
  const { sides } = await drawTemplate(one, { ...CONTEXT, papers: [] });
  const box = /viewBox="0 0 ([\d.]+) ([\d.]+)"/.exec(sides[0]?.preview ?? '');
  // A page of 390 px shows it 354 px wide: letters of 2.5 mm have an em of 7 px at least.
  expect((2.5 / 0.729) * (354 / Number(box?.[1]))).toBeGreaterThan(7);
  expect(Number(box?.[2])).toBeLessThan(250);
});

test('a template for each side has a mirrored twin with readable words', async () => {
  const one = template({ side: 'each', holes: [hole(30, 40, 8)] });
  const { sides, files } = await drawTemplate(one, { ...CONTEXT, papers: ['a4'] });
  expect(sides.map((s) => s.side)).toEqual(['left', 'right']);
  expect(files.map((f) => f.name)).toEqual([
    'notch-left-a4.pdf',
    'notch-left.svg',
    'notch-left.dxf',
    'notch-right-a4.pdf',
    'notch-right.svg',
    'notch-right.dxf',
  ]);
  const dxf = new DxfParser().parseSync(text({ sides, files: sides[1]?.files ?? [], findings: [] }, '.dxf'));
  const circle = dxf?.entities.find((e) => e.type === 'CIRCLE') as unknown as { center: Vertex };
  expect(circle.center).toMatchObject({ x: -30, y: 40 });
  const svg = text({ sides, files: sides[1]?.files ?? [], findings: [] }, '.svg');
  expect(svg).toContain('x −30  y 40');
  expect(svg).not.toContain('scale(');
});

test('letters that the fonts lack are a warning, never a gap', async () => {
  const { findings, files } = await drawTemplate(
    { ...NOTCH, title: 'Opening 開口' },
    { ...CONTEXT, papers: ['a4'] },
  );
  expect(findings.map((f) => f.code)).toEqual(['cut-letters-missing']);
  expect(files.length).toBeGreaterThan(0);
});

test('a template of too many sheets is refused with the number it would need', async () => {
  const one = template({
    outlines: [
      outline([
        [-1500, 20],
        [1500, 20],
        [1500, 1900],
        [-1500, 1900],
      ]),
    ],
  });
  const { findings } = await drawTemplate(one, { ...CONTEXT, papers: ['a4'] });
  expect(findings[0]?.message).toMatch(
    /^this template would need \d+ sheets of A4; 40 is the most that can be laid true$/,
  );
});

test('a drawing that some builds alone have says so in its name, in its words and on every sheet', async () => {
  const { getDocument } = await import('pdfjs-dist/legacy/build/pdf.mjs');
  const variant = { suffix: 'fog-yes', builds: 'with front fog lamps', whole: OPENING };
  const { files, sides } = await drawTemplate({ ...OPENING, variant }, { ...CONTEXT, papers: ['a4'] });
  expect(files.map(({ name }) => name)).toEqual([
    'vent_fog-yes-a4.pdf',
    'vent_fog-yes.svg',
    'vent_fog-yes.dxf',
  ]);
  const document = await getDocument({ data: new Uint8Array(files[0]?.bytes ?? []) }).promise;
  expect((await document.getMetadata()).info).toMatchObject({
    Title: 'Roof vent opening, with front fog lamps',
  });
  for (let page = 1; page <= document.numPages; page++) {
    const { items } = await (await document.getPage(page)).getTextContent();
    const words = items.map((item) => ('str' in item ? item.str : '')).join(' ');
    expect(words).toContain('ONLY with front fog lamps');
  }
  expect(sides[0]?.preview).toContain('Roof vent opening, with front fog lamps, seen on');
  expect(new TextDecoder().decode(files[1]?.bytes)).toContain(
    '<title>Roof vent opening, with front fog lamps</title>',
  );
});
