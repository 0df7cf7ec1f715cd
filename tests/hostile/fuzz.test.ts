import { readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readDrawing } from '../../src/cut/read/read-drawing.ts';
import { renderText } from '../../src/diagnostics/render-text.ts';
import { inspect, memoryFiles } from '../../src/shop/index.ts';
import { files as lightBar } from '../rehearsal/workspace.ts';
import { runs } from '../samples.ts';

/**
 * Sound files, spoilt by chance in a few places, as a slip of the keyboard, a torn save or ill will would do it. No
 * outcome is stated: whatever is found is found as a finding with a place, and nothing is thrown.
 */

/** What slips in: pieces of the formats, numbers beyond all sense, and names that every object has. */
const scraps = [
  ...[
    '',
    ' ',
    '\n',
    '\n\n',
    '\t',
    '\0',
    '\u00a0',
    '\uFEFF',
    '\u202e',
    '🔧',
    '"',
    "'",
    '\\',
    '`',
    '<',
    '>',
    '&',
  ],
  ...[
    '::',
    ':::',
    '[',
    ']',
    '{',
    '}',
    '#',
    '=',
    ',',
    ':',
    '---',
    '- ',
    '> ',
    '|',
    '*',
    '!',
    '?',
    '%',
    '@',
    '~',
  ],
  ...['-1', '0', '1e999', 'NaN', '99999999999999999999', '0x10', '1/0', '10..-10 mm', '2026-13-45', '1.5.2'],
  ...[
    '__proto__',
    'constructor',
    'toString',
    'null',
    'true',
    '[]',
    '{}',
    '&a [*a]',
    '!!js/function',
    '<<: *a',
  ],
  ...[
    'side=each',
    'side=left',
    'count=0',
    'when="not (a)"',
    'holds=cover',
    'needs=lock',
    '{#cover}',
    '{of=off}',
  ],
  ...[
    '::reverse{of=off}',
    '::procedure{of=x}',
    ':remove[cover]',
    ':tighten[bar-bolt]{with=wrench}',
    ':::prove',
  ],
];

interface Spoiling {
  readonly at: number;
  readonly length: number;
  readonly put: string;
}

const spoilings = fc.array(
  fc.record({
    at: fc.double({ min: 0, max: 1, noNaN: true }),
    length: fc.oneof({ weight: 3, arbitrary: fc.constant(0) }, fc.nat({ max: 12 }), fc.nat({ max: 400 })),
    put: fc.oneof(
      { weight: 4, arbitrary: fc.constantFrom(...scraps) },
      fc.string({ unit: 'binary', maxLength: 6 }),
    ),
  }),
  { minLength: 1, maxLength: 4 },
);

function spoilt(text: string, list: readonly Spoiling[]): string {
  return list.reduce((now, { at, length, put }) => {
    const place = Math.floor(at * now.length);
    return now.slice(0, place) + put + now.slice(place + length);
  }, text);
}

const paths = [
  'light-bar/guide.md',
  'shop.yaml',
  'tools.yaml',
  'fasteners.yaml',
  'platforms/test-van.md',
] as const;
const text = (path: string) => new TextDecoder().decode(lightBar.read(path) ?? new Uint8Array());
const sound: { readonly [path: string]: string } = {
  ...Object.fromEntries(paths.map((path) => [path, text(path)])),
  'tools.yaml': 'lever: {name: Trim lever, synonyms: [lever]}\nsocket-8: {name: 8 mm socket, drive: hex 8}\n',
  'fasteners.yaml': 'clip: {name: Push clip, drive: push-in, reuse: no, release: Lift it.}\n',
};

describe('whatever stands in a workspace', () => {
  it('is told of in findings with places, or published', async () => {
    // The guide is by far the largest, and most of what can go wrong stands in it.
    const which = fc.oneof({ weight: 5, arbitrary: fc.constant(paths[0]) }, fc.constantFrom(...paths));
    await fc.assert(
      fc.asyncProperty(which, spoilings, async (path, list) => {
        const spoiltFiles = { ...sound, [path]: spoilt(sound[path] ?? '', list) };
        const { findings, sources } = await inspect(memoryFiles(spoiltFiles));
        for (const { at, message, notes } of findings) {
          expect(message).not.toMatch(/\bundefined\b|\[object |TypeError|is not a function|\n/);
          const length = sources.get(at.file)?.text.length ?? 0;
          expect(at.start >= 0 && at.start <= at.end && at.end <= length, message).toBe(true);
          for (const note of notes) expect(note.message).not.toMatch(/\bundefined\b|\[object /);
        }
        renderText(findings, { sources, prefix: '' }, { colour: false, width: 100 });
      }),
      runs(25, 60_000),
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
          expect(outcome.message).not.toMatch(/\bundefined\b|\bNaN\b|\[object |TypeError/);
          expect(outcome.line).toBeGreaterThanOrEqual(0);
        }
      }),
      runs(400, 40_000),
    );
  }, 10_800_000);
});
