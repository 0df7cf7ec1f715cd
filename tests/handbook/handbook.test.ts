import { mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it, onTestFinished } from 'vitest';
import { parse } from 'yaml';
import { directives } from '../../src/directives/index.ts';
import { directiveEntries, directiveWords } from '../../src/handbook/directive-entries.ts';
import { fileEntries } from '../../src/handbook/file-entries.ts';
import { pageOf } from '../../src/handbook/handbook.ts';
import { wants } from '../../src/handbook/wants.ts';
import { ruleCards } from '../../src/shop/index.ts';
import { readChapters } from '../../src/site/chapters.ts';
import { baybook, bench, repository } from '../driver.ts';
import { exampleWorkspace } from '../example-workspace.ts';

const guides = join(repository, 'guides');
const chapters = await readChapters();
const clean = /^\d+ guides? checked: no errors, no warnings\n$/;

describe('every word is explained', () => {
  const rows = [...directiveEntries, ...fileEntries].flatMap(({ title, rows: own }) =>
    own.map((row) => [`${title}: ${row.name}`, row] as const),
  );

  it('every attribute and key says what is written there and what it means', () => {
    const poor = rows.filter(
      ([, { expects, means }]) => expects.trim() === '' || !/^[A-Z`].{12,}[.]$/.test(means),
    );
    expect(poor.map(([title]) => title)).toEqual([]);
    expect(rows.length).toBeGreaterThan(300);
  });

  it('every attribute that a directive reads is among them', () => {
    const told = new Set(rows.map(([title]) => title));
    const silent = directives.flatMap(({ name, form, attributes }) =>
      Object.keys(attributes).filter((attribute) => {
        const own = directiveEntries.find((entry) => entry.id === `${form}-${name}`);
        return !told.has(`${own?.title}: ${attribute === 'id' ? '#id' : attribute}`);
      }),
    );
    expect(silent).toEqual([]);
  });

  it('every key that the demo shop writes in any of its files is among them', async () => {
    const files = (await readdir(guides, { recursive: true })).filter((path) => /\.(?:md|yaml)$/.test(path));
    const silent: string[] = [];
    for (const path of files) {
      const text = await readFile(join(guides, path), 'utf8');
      const front = path.endsWith('.md') ? /^---\n([\s\S]*?)^---$/m.exec(text)?.[1] : text;
      const written: object = parse(front ?? '');
      const name = path.replace(/^(platform|procedure|visit)s\/.*/, '$1.md').replace(/^.*\//, '');
      const told = fileEntries.find((entry) => entry.name === name)?.rows.map((row) => row.name) ?? [];
      // In a list of the shop, and of releases, each value has keys of its own.
      const maps = /^(?:tools|fasteners|supplies|releases)\.yaml$/.test(name)
        ? Object.values(written)
        : [written];
      const keys = maps.flatMap((map) => Object.keys(map));
      silent.push(...keys.filter((key) => !told.includes(key)).map((key) => `${path}: ${key}`));
    }
    expect(silent).toEqual([]);
    expect(files.length).toBeGreaterThan(12);
  });

  it('an example of what is written there is read as such', () => {
    const at = { file: 'guide.md', start: 0, end: 0 };
    const wrong = directives.flatMap(({ name, attributes }) =>
      Object.entries(attributes).flatMap(([attribute, { expects, read }]) =>
        [...expects.matchAll(/`([^`]+)`/g)].flatMap(([, example = '']) =>
          read(example, { ...at, end: example.length }).ok ? [] : [`${name} ${attribute}: ${example}`],
        ),
      ),
    );
    expect(wrong).toEqual([]);
  });

  it('every directive, file and chapter stands under what it is wanted for, once', () => {
    const led = wants.flatMap(({ names }) => names);
    const all = [
      ...directiveWords,
      ...fileEntries.map(({ name }) => name),
      ...chapters.map(({ name }) => name),
    ];
    expect([...led].sort()).toEqual(all.sort());
  });

  it('no word has two pages', () => {
    const names = [
      ...directiveWords,
      ...fileEntries.map(({ name }) => name),
      ...chapters.map(({ name }) => name),
      ...ruleCards.map(({ code }) => code),
    ];
    expect(names.filter((name, index) => names.indexOf(name) !== index)).toEqual([]);
    expect(names.filter((name) => pageOf(name, chapters) === null)).toEqual([]);
  });
});

/** A block of code in a chapter: its language, and the file that it is the whole of. */
interface Fence {
  readonly language: string;
  readonly path: string;
  readonly text: string;
}

function fencesOf(text: string): readonly Fence[] {
  return [...text.matchAll(/^```(\w+)(?: (\S+))?\n([\s\S]*?)^```$/gm)].map(
    ([, language = '', path = '', body = '']) => ({ language, path, text: body }),
  );
}

/** A picture that the chapters speak of. */
const arch =
  '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 400 300"><path d="M40 260 A160 160 0 0 1 360 260"/></svg>';

describe('every example holds', () => {
  it.each(fileEntries.map(({ name, example }) => [name, example] as const))('of %s', async (_, example) => {
    const { check } = await bench(exampleWorkspace(typeof example === 'string' ? {} : example));
    expect((await check()).out).toMatch(clean);
  });

  const snippets = chapters.flatMap(({ name, text }) =>
    fencesOf(text)
      .filter(({ language, path }) => language === 'markdown' && path === '')
      .map((fence, index) => [`${name}, ${index + 1}`, fence] as const),
  );

  it.each(snippets)('in the chapter %s', async (_, { text }) => {
    const blurred = text.includes('blur=');
    // A drawing cannot be blurred: there the example is of a photograph, which the demo has.
    const files = exampleWorkspace({
      'tools.yaml':
        'bit-t25: {name: T25 bit, drive: T25}\ntorque-60: {name: "Torque wrench, 10–60 N·m", range: 10..60 N·m}\n',
      'example/guide.md': blurred ? text : text.replaceAll('.jpg', '.svg'),
      'example/pictures/arch.svg': arch,
    });
    const made = await bench(files);
    if (blurred) await made.write('example/pictures/arch.jpg', await photograph());
    const { out } = await made.check();
    expect(out).toMatch(clean);
  });

  it('the first guide comes out clean, by its own commands and files', async () => {
    const folder = await mkdtemp(join(tmpdir(), 'baybook-'));
    onTestFinished(() => rm(folder, { recursive: true, force: true }));
    const chapter = chapters.find(({ name }) => name === 'first-guide');
    let last = '';
    for (const { language, path, text } of fencesOf(chapter?.text ?? '')) {
      if (path !== '') await writeFile(join(folder, path), text);
      for (const line of language === 'sh' ? text.trim().split('\n') : []) {
        const [, ...words] = [...line.matchAll(/"([^"]*)"|(\S+)/g)].map(
          ([, quoted, word]) => quoted ?? word ?? '',
        );
        const answer = await baybook(folder, ...words);
        expect(answer.err).toBe('');
        last = answer.out;
      }
    }
    expect(last).toBe('1 guide checked: no errors, no warnings\n');
  });
});

async function photograph(): Promise<Uint8Array> {
  const { default: sharp } = await import('sharp');
  return sharp({ create: { width: 800, height: 600, channels: 3, background: '#777' } })
    .jpeg()
    .toBuffer();
}

describe('explain', () => {
  const explain = async (...words: string[]) => (await baybook(repository, 'explain', ...words)).out;

  it('lists what one may want to do', async () => {
    const out = await explain();
    for (const { want } of wants) expect(out).toContain(`\n${want}\n`);
    expect(out).toMatch(/\n {2}shop\.yaml +What holds for all guides of the shop\n/);
    expect(Math.max(...out.split('\n').map((line) => line.length))).toBeLessThanOrEqual(80);
  });

  it('tells what an attribute means wherever it may stand', async () => {
    expect(await explain('free-when')).toContain('What it holds comes free when it is only loosened');
    expect(await explain('trial')).toContain('The step in which the fit was tried.');
    expect(await explain('open-time')).toMatch(
      /From putting it on until what it is for must be in\s+place\./,
    );
    expect(await explain('impossible')).toContain('Combinations that no vehicle has.');
  });

  it('leads from a word that has no page to the nearest', async () => {
    expect(await explain('tool-undecleared')).toMatch(
      /^There is no page "tool-undecleared"; this is the nearest, "tool-undeclared"\.\n\nA tool/,
    );
    expect(await explain('fastner')).toContain('this is the nearest, "fastener"');
    expect(await explain('starboard')).toContain('this is the nearest, "right"');
    expect(await explain('airbag')).toContain('this is the nearest, "work"');
  });

  it('has the pages that a new workspace names', async () => {
    for (const word of ['shop.yaml', 'tools.yaml', 'fasteners.yaml'])
      expect((await explain(word)).startsWith(word)).toBe(true);
  });
});
