import { readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import fc from 'fast-check';
import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import { readDrawing } from '../../src/cut/read/read-drawing.ts';
import { resolve as resolveTemplate } from '../../src/cut/shape/resolve.ts';
import type { Finding } from '../../src/diagnostics/finding.ts';
import { renderText } from '../../src/diagnostics/render-text.ts';
import { collector, type Report } from '../../src/diagnostics/report.ts';
import { corners } from '../../src/directives/attributes/points.ts';
import { directives } from '../../src/directives/index.ts';
import { directiveNames } from '../../src/guide/index.ts';
import { inspectPicture } from '../../src/pictures/inspect.ts';
import { inspect, memoryFiles } from '../../src/shop/index.ts';
import { readCrib } from '../../src/shop/lists/crib.ts';
import { readFastenerTypes } from '../../src/shop/lists/fastener-types.ts';
import { readSettings } from '../../src/shop/lists/settings.ts';
import { type SourceFile, sourceFile } from '../../src/source/source-file.ts';
import { readMarkdown } from '../../src/syntax/read.ts';
import { hole, outline, template } from '../cut/fixtures.ts';
import { photo } from '../pictures/fixtures.ts';
import { files as lightBar } from '../rehearsal/workspace.ts';
import { runs } from '../samples.ts';
import { spoilings, spoilt } from './spoiling.ts';

/**
 * Sound files, spoilt by chance in a few places, as a slip of the keyboard, a torn save or ill will would do it. No
 * outcome is stated: whatever is found is found as a finding with a place, and nothing is thrown. Whole workspaces
 * are dear, so that each reader is tried by itself with many more.
 */

const paths = [
  'light-bar/guide.md',
  'shop.yaml',
  'tools.yaml',
  'fasteners.yaml',
  'platforms/test-van.md',
] as const;
const text = (path: string) => new TextDecoder().decode(lightBar.read(path) ?? new Uint8Array());
const guide = text(paths[0]);
const crib = 'lever: {name: Trim lever, synonyms: [lever]}\nsocket-8: {name: 8 mm socket, drive: hex 8}\n';
const types = 'clip: {name: Push clip, drive: push-in, reuse: no, release: Lift it.}\n';
const sound: { readonly [path: string]: string } = {
  ...Object.fromEntries(paths.map((path) => [path, text(path)])),
  'tools.yaml': crib,
  'fasteners.yaml': types,
};

/** Words of a program instead of those of a person. */
const raw = /\bundefined\b|\[object |TypeError|RangeError|is not a function|\n/;

function expectFindings(findings: readonly Finding[], lengthOf: (file: string) => number): void {
  for (const { at, message, notes } of findings) {
    expect(message).not.toMatch(raw);
    expect(at.start >= 0 && at.start <= at.end && at.end <= lengthOf(at.file), message).toBe(true);
    for (const note of notes) expect(note.message).not.toMatch(raw);
  }
}

/** Every number in a value, however deep. */
function numbersIn(value: unknown): readonly number[] {
  if (typeof value === 'number') return [value];
  return typeof value === 'object' && value !== null ? Object.values(value).flatMap(numbersIn) : [];
}

describe('whatever stands in a workspace', () => {
  it('is told of in findings with places, or published', async () => {
    // The guide is by far the largest, and most of what can go wrong stands in it.
    const which = fc.oneof({ weight: 5, arbitrary: fc.constant(paths[0]) }, fc.constantFrom(...paths));
    await fc.assert(
      fc.asyncProperty(which, spoilings, async (path, list) => {
        const spoiltFiles = { ...sound, [path]: spoilt(sound[path] ?? '', list) };
        const { findings, sources } = await inspect(memoryFiles(spoiltFiles));
        expectFindings(findings, (file) => sources.get(file)?.text.length ?? 0);
        renderText(findings, { sources, prefix: '' }, { colour: false, width: 100 });
      }),
      runs(20, 4000),
    );
  }, 10_800_000);
});

/** Reads spoilt texts, which may bring findings with places within them and nothing else. */
function survives(
  texts: readonly string[],
  read: (source: SourceFile, report: Report) => unknown,
  few: number,
  all: number,
): void {
  fc.assert(
    fc.property(fc.constantFrom(...texts), spoilings, (whole, list) => {
      const source = sourceFile('a', spoilt(whole, list));
      const { findings, report } = collector();
      read(source, report);
      expectFindings(findings, () => source.text.length);
    }),
    runs(few, all),
  );
}

describe('whatever stands in', () => {
  const passages = guide.split(/\n(?=#+ |::step)/);

  it('a passage of a guide', () => {
    survives(passages, (source, report) => readMarkdown(source, directiveNames, report), 300, 15_000);
  }, 10_800_000);

  it('a tool crib', () => {
    survives([crib], readCrib, 400, 12_000);
  }, 10_800_000);

  it('a list of fastener types', () => {
    survives([types], readFastenerTypes, 300, 8000);
  }, 10_800_000);

  it('the settings of a shop', () => {
    const settings = `${text('shop.yaml')}\naddress: https://guides.example/\naccent: "#123456"\npaper: [A4, Letter]\n`;
    survives([settings], (source, report) => readSettings(source, new Map(), report), 300, 8000);
  }, 10_800_000);

  it('an attribute', () => {
    const all = directives.flatMap(({ name, attributes }) =>
      Object.entries(attributes).map(([key, type]) => [`${name} ${key}`, type] as const),
    );
    // A sample of each from its own explanation, as in `12.5 mm`.
    const samples = all.flatMap(([name, type]) =>
      ['3', 'a b', ...[...type.expects.matchAll(/`([^`]+)`/g)].map(([, value = '']) => value)].map(
        (value) => [name, type, value] as const,
      ),
    );
    fc.assert(
      fc.property(fc.constantFrom(...samples), spoilings, ([name, type, sample], list) => {
        const value = spoilt(sample, list);
        const reading = type.read(value, { file: 'a', start: 7, end: 7 + value.length });
        if (reading.ok) expect(numbersIn(reading.value).every(Number.isFinite), name).toBe(true);
        else {
          expect(reading.message.replaceAll(value, ''), `${name} ${JSON.stringify(value)}`).not.toMatch(
            /\bundefined\b|\[object |TypeError|is not a function/,
          );
          const { start = 7, end = 7 + value.length } = reading.at ?? {};
          expect(start >= 7 && start <= end && end <= 7 + value.length, name).toBe(true);
        }
      }),
      runs(1500, 20_000),
    );
  }, 10_800_000);

  it('an outline', () => {
    const number = fc.oneof(
      { weight: 5, arbitrary: fc.integer({ min: -200, max: 200 }) },
      fc.constantFrom(0, 0.001, -0.001, 1e-9, 4999, 5001, 1e9, -1e9, 1e20),
      fc.double({ min: -500, max: 500, noNaN: true }),
    );
    const corner = fc.tuple(number, number, fc.option(number.map(Math.abs), { nil: undefined, freq: 3 }));
    const shape = fc.record({
      around: fc.array(corner, { maxLength: 12 }),
      open: fc.option(fc.constantFrom('top', 'bottom', 'left', 'right'), { nil: null }),
      holes: fc.array(fc.tuple(number, number, number.map(Math.abs)), { maxLength: 3 }),
    });
    fc.assert(
      fc.property(shape, ({ around, open, holes }) => {
        const typed = around.map(([x, y, r]) => `${x},${y}${r === undefined ? '' : ` r${r}`}`).join(' ');
        corners.read(typed, { file: 'a', start: 0, end: typed.length });
        const written = template({
          outlines: [
            outline(
              around.map(([x, y, r]) => (r === undefined ? [x, y] : [x, y, r])),
              open,
            ),
          ],
          holes: holes.map(([x, y, d]) => hole(x, y, d)),
        });
        const { resolved, findings } = resolveTemplate(written, []);
        for (const { message } of findings) expect(message).not.toMatch(raw);
        expect(JSON.stringify(resolved.cuts)).not.toMatch(/null,"y"|"[xy]":null/);
      }),
      runs(300, 15_000),
    );
  }, 10_800_000);
});

describe('whatever stands in a maker’s drawing', () => {
  const folder = resolve(import.meta.dirname, '../cut/foreign');
  const names = ['lw-mirrored.dxf', 'r12-polyline-bulges.dxf', 'spline-closed.dxf', 'insert-nested.dxf'];
  const svg =
    '<svg xmlns="http://www.w3.org/2000/svg" width="120mm" height="40mm" viewBox="0 0 120 40"><defs><g id="g"><path d="M0 0h20v10a5 5 0 0 1-5 5h-15z"/></g></defs><g transform="translate(2,3) rotate(5)"><use href="#g"/><rect x="30" y="2" width="20" height="10" rx="2"/><circle cx="80" cy="20" r="8"/><path d="M100 5c4 0 8 4 8 8s-4 8-8 8z"/></g></svg>';
  const drawings = [...names.map((name) => [name, readFileSync(join(folder, name), 'utf8')]), ['a.svg', svg]];

  it('is read, or refused in words with its line', () => {
    fc.assert(
      fc.property(fc.constantFrom(...drawings), spoilings, ([name = '', drawing = ''], list) => {
        const outcome = readDrawing(name, spoilt(drawing, list), { layers: null, unit: 1 });
        if (outcome.ok) {
          const sizes = Object.values(outcome.bounds);
          expect(sizes.every((size) => typeof size !== 'number' || Number.isFinite(size))).toBe(true);
        } else {
          expect(outcome.message).not.toMatch(raw);
          expect(outcome.message).not.toContain('NaN');
          expect(outcome.line).toBeGreaterThanOrEqual(0);
        }
      }),
      runs(300, 15_000),
    );
  }, 10_800_000);
});

describe('whatever stands in a photograph', () => {
  it('is seen, or refused in words', async () => {
    const taken = sharp(await photo(64, 48));
    const kinds = await Promise.all(
      (['jpeg', 'png', 'webp', 'gif', 'tiff'] as const).map((kind) =>
        taken.clone().toFormat(kind).toBuffer(),
      ),
    );
    const damage = fc.record({
      places: fc.array(fc.tuple(fc.double({ min: 0, max: 1, noNaN: true }), fc.nat(255)), { maxLength: 12 }),
      keep: fc.oneof({ weight: 3, arbitrary: fc.constant(1) }, fc.double({ min: 0, max: 1, noNaN: true })),
    });
    await fc.assert(
      fc.asyncProperty(fc.constantFrom(...kinds), damage, async (whole, { places, keep }) => {
        const bytes = Buffer.from(whole.subarray(0, Math.floor(whole.length * keep)));
        for (const [at, value] of places) bytes[Math.floor(at * bytes.length)] = value;
        const seen = await inspectPicture(bytes, 'a.jpg');
        if (seen.ok) expect(seen.value.width * seen.value.height).toBeGreaterThan(0);
        else expect(seen.problems.map(({ message }) => message).join(' ')).not.toMatch(raw);
      }),
      runs(80, 5000),
    );
  }, 10_800_000);
});
