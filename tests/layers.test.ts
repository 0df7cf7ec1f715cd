import { readdirSync, readFileSync } from 'node:fs';
import { dirname, posix, resolve } from 'node:path';
import { describe, expect, it } from 'vitest';

/**
 * The rooms of `src/`, from the bottom up. A file imports from its own room and from rows below it; rooms of
 * one row do not import each other.
 */
const rows: readonly (readonly string[])[] = [
  ['source'],
  ['diagnostics'],
  ['units'],
  ['html', 'geometry', 'trade', 'store', 'vehicle'],
  ['model'],
  ['cut', 'job', 'drawings', 'pictures', 'syntax'],
  ['directives'],
  ['guide', 'checks', 'release'],
  ['visit'],
  ['pages', 'shop'],
  ['handbook'],
  ['site'],
  ['preview', 'editor', 'desk'],
  ['adopt'],
  ['cli'],
];

/** Rows say too little here: a rule judges finished guides and must not know how one is written. */
const forbidden: readonly (readonly [string, string])[] = [['checks', 'directives']];

const top = resolve(import.meta.dirname, '..');

interface Import {
  readonly from: string;
  readonly to: string;
  readonly typeOnly: boolean;
}

function filesUnder(folder: string): string[] {
  return readdirSync(resolve(top, folder), { recursive: true, encoding: 'utf8' })
    .map((name) => posix.join(folder, name.replaceAll('\\', '/')))
    .filter((name) => name.endsWith('.ts'))
    .sort();
}

function importsOf(file: string): Import[] {
  const text = readFileSync(resolve(top, file), 'utf8').replace(/\/\*[\s\S]*?\*\/|^\s*\/\/.*$/gm, '');
  const statement =
    /\b(?:import|export)\s+(type\s+)?(?:[\w*{}\s,$]*?\sfrom\s+)?['"]([^'"]+)['"]|\bimport\(\s*['"]([^'"]+)['"]/g;
  return [...text.matchAll(statement)].map(([, type, still, dynamic]) => {
    const to = still ?? dynamic ?? '';
    const own = to.startsWith('.') ? posix.join(dirname(file), to) : to;
    return { from: file, to: own, typeOnly: type !== undefined };
  });
}

const files = filesUnder('src');
const imports = files.flatMap(importsOf);
const roomOf = (file: string) => /^src\/([^/]+)\//.exec(file)?.[1] ?? '';
const rowOf = (room: string) => rows.findIndex((row) => row.includes(room));
const told = (list: readonly Import[]) => list.map(({ from, to }) => `${from} imports ${to}`);

describe('the house', () => {
  it('reads imports as they are written', () => {
    expect(imports.length).toBeGreaterThan(files.length);
    expect(imports).toContainEqual({
      from: 'src/diagnostics/report.ts',
      to: 'src/diagnostics/finding.ts',
      typeOnly: true,
    });
  });

  it('has no file outside a known room', () => {
    expect(files.filter((file) => rowOf(roomOf(file)) < 0)).toEqual([]);
  });

  it('has at most twenty files in a folder, but where each is one directive or one rule', () => {
    const onePerRule = /^src\/(?:directives|checks|checks\/(?:dry-run|trade))$/;
    const counts = new Map<string, number>();
    for (const file of [...files, ...filesUnder('templates')])
      counts.set(dirname(file), (counts.get(dirname(file)) ?? 0) + 1);
    const full = [...counts].filter(([folder, count]) => count > 20 && !onePerRule.test(folder));
    expect(full).toEqual([]);
  });

  it('imports downwards only', () => {
    const wrong = imports.filter(({ from, to }) => {
      if (!to.startsWith('src/')) return false;
      const [here, there] = [roomOf(from), roomOf(to)];
      return here !== there && rowOf(there) >= rowOf(here);
    });
    expect(told(wrong)).toEqual([]);
  });

  it('keeps apart what must not know each other', () => {
    const wrong = imports.filter(({ from, to }) =>
      forbidden.some(([here, there]) => roomOf(from) === here && roomOf(to) === there),
    );
    expect(told(wrong)).toEqual([]);
  });

  it('reaches no file of the project outside src', () => {
    expect(
      told(imports.filter(({ to }) => to.startsWith('..') || /^(tests|templates|guides)\//.test(to))),
    ).toEqual([]);
  });

  it('has no circle of imports', () => {
    const ways = new Map<string, string[]>();
    for (const { from, to, typeOnly } of imports)
      if (to.startsWith('src/') && !typeOnly) ways.set(from, [...(ways.get(from) ?? []), to]);
    const done = new Set<string>();
    const circles: string[] = [];
    const visit = (file: string, trail: readonly string[]) => {
      if (trail.includes(file)) circles.push([...trail.slice(trail.indexOf(file)), file].join(' → '));
      else if (!done.has(file)) for (const next of ways.get(file) ?? []) visit(next, [...trail, file]);
      done.add(file);
    };
    for (const file of files) visit(file, []);
    expect(circles).toEqual([]);
  });

  it.each([
    ['Markdown is read', /^(remark-|micromark|mdast-)/, ['syntax']],
    ['HTML is written', /^rehype-stringify$/, ['html']],
    ['unified is used', /^unified$/, ['syntax', 'html']],
    ['YAML is read', /^yaml$/, ['syntax']],
    [
      'the disk is touched',
      /^(node:)?fs(\/promises)?$/,
      ['shop', 'store', 'site', 'preview', 'editor', 'cli'],
    ],
    ['flags are read', /^commander$/, ['cli']],
  ])('knows where %s', (_, pattern, rooms) => {
    const wrong = imports.filter(({ from, to }) => pattern.test(to) && !rooms.includes(roomOf(from)));
    expect(told(wrong)).toEqual([]);
  });

  it('keeps clock, chance and locale out of what is computed', () => {
    const unsteady = /\bDate\.now\(|\bnew Date\(\)|\bMath\.random\(|\.localeCompare\(|\.toLocale\w*\(/;
    const rooms = rows.flat().filter((room) => !['cli', 'preview', 'editor'].includes(room));
    const wrong = files.filter(
      (file) => rooms.includes(roomOf(file)) && unsteady.test(readFileSync(resolve(top, file), 'utf8')),
    );
    expect(wrong).toEqual([]);
  });
});

describe('browser scripts', () => {
  it('share only units, the print check, the judge of the dry run, the file of a vehicle record and types with the rest', () => {
    const scripts = filesUnder('templates').flatMap(importsOf);
    const wrong = scripts.filter(
      ({ to, typeOnly }) =>
        to.startsWith('src/') &&
        !typeOnly &&
        !to.startsWith('src/units/') &&
        !to.startsWith('src/job/dry-run/') &&
        !to.startsWith('src/vehicle/') &&
        to !== 'src/trade/print-check.ts',
    );
    expect(told(wrong)).toEqual([]);
  });
});
