import { mkdtempSync, rmSync } from 'node:fs';
import { cp, mkdir, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import fc from 'fast-check';
import { afterAll, expect, it } from 'vitest';
import { run } from '../../src/cli/run.ts';
import { sha256 } from '../../src/store/content-hash.ts';
import { folderStore, noStore, type Store } from '../../src/store/store.ts';
import { filesBelow } from './workspace.ts';

/**
 * Whatever is edited, in whatever order: what a build makes of what it knows already is, byte for byte, what a
 * clean build makes elsewhere, and it finds the same.
 */

const top = mkdtempSync(join(tmpdir(), 'baybook incremental '));
afterAll(() => rm(top, { recursive: true, force: true }));

const drawing = (size: number) =>
  `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${size} 40"><path d="M2 2H${size - 2}V38H2Z" fill="none" stroke="#000"/></svg>`;

const slot = `:::cut-template[Slot]{#slot panel=lid face=outside}
::datum[Left edge]{axis=vertical at="0 mm"}
::datum[Lower edge]{axis=horizontal at="0 mm"}
::outline{points="20,20 r4 60,20 r4 60,40 r4 20,40 r4" unit=mm}
:::

::step[Cut the slot]{#cut-slot time="4 min"}

:::warning[Flying chips]
Chips can injure an eye. Wear :wear[eyes], and feel behind the panel for wires first.
:::

Lay the :cut-template[slot] on the lid, then :cut[slot]{with=cutter trial=look}.

`;

const start: Readonly<Record<string, string>> = {
  'shop.yaml': 'name: Small Shop\npapers: [A4]\n',
  'tools.yaml':
    'lamp: {name: Lamp}\nsocket: {name: 10 mm socket, drive: hex 10}\nsaw: {name: Saw}\ncutter: {name: Rotary cutter, cutter-radius: 3 mm}\neyes: {name: Eye protection, wear: yes}\n',
  'supplies.yaml': 'oil: {name: Oil, quantity: 20 ml}\ngrease: {name: Grease}\n',
  'fasteners.yaml': 'bolt: {name: Flange bolt, drive: hex 10}\n',
  'platforms/van.md':
    '---\ntitle: Small van\noptions: {fog: Fog lamps}\n---\n\n## Know {#know}\n\nA van.\n\n::part[Lid]{#lid}\n',
  'procedures/lid-off.md':
    '---\ntitle: Lid off\n---\n\n::tool{#socket}\n::fastener{#lid-bolt type=bolt count=2 holds=lid}\n\n::step[Lift the lid]{#lift time="3 min"}\n\nUndo: :remove[lid-bolt]{with=socket}. Then :remove[lid].\n',
  'one/guide.md': guide(
    'one',
    'See [the other](../two/guide.md#look) and [the van](../platforms/van.md#know).',
  ),
  'one/pictures/a.svg': drawing(60),
  'two/guide.md': guide('two', 'See [the sheet](sheet.txt).', slot)
    .replace('::tool{#lamp}', '::tool{#lamp}\n::tool{#cutter}')
    .replace('::none{of=wear}', '::wear{#eyes}')
    .replace('::none{of=supplies}', '::supply{#oil}')
    .replace('Shine the', ':apply[oil]{amount="10 ml"}. Shine the'),
  'two/sheet.txt': 'Mind the edge.\n',
  'two/pictures/a.svg': drawing(80),
};

function guide(name: string, text: string, more = ''): string {
  return `---
title: Look at ${name}
platform: van
---

## Need {#need}

::none{of=wear}
::tool{#lamp}
::none{of=supplies}
::none{of=kit}
::none{of=conditions}
::part{#lid}

## Off {#off}

::procedure{of=lid-off #lid-work}

## Work {#work}

::step[Look around]{#look time="2 min"}

${text} Shine the :tool[lamp] behind the edge.

:::figure[The edge]{src=pictures/a.svg alt="An edge from above"}
:::

${more}## Back {#back}

::reverse{of=lid-work}
`;
}

type Files = Map<string, string>;

/** Replaces a text in a file, if both are there. */
const swap = (path: string, from: RegExp, to: string) => (files: Files) => {
  const text = files.get(path);
  if (text !== undefined) files.set(path, text.replace(from, to));
};

/** Takes a file away, or puts it back as it was at the start. */
const toggle = (path: string) => (files: Files) => {
  const text = start[path] ?? '';
  if (!files.delete(path)) files.set(path, text);
};

const edits: readonly (readonly [string, (files: Files, word: string) => void])[] = [
  ['a text', (files, word) => swap('one/guide.md', /behind the [a-z]+\b/, `behind the ${word}`)(files)],
  ['the other text', (files, word) => swap('two/guide.md', /title: .*/, `title: Look at ${word}`)(files)],
  [
    'a tool',
    (files, word) =>
      swap(
        'tools.yaml',
        /name: (Lamp|[A-Z][a-z]+ light)/,
        `name: ${word[0]?.toUpperCase()}${word.slice(1)} light`,
      )(files),
  ],
  [
    'a tool that nobody uses',
    (files, word) => swap('tools.yaml', /saw: .*/, `saw: {name: Saw ${word}}`)(files),
  ],
  ['a supply', (files, word) => swap('supplies.yaml', /name: Oil[a-z ]*/, `name: Oil of ${word}`)(files)],
  [
    'a supply that nobody uses',
    (files, word) => swap('supplies.yaml', /grease: .*/, `grease: {name: Grease ${word}}`)(files),
  ],
  ['the list of supplies taken away', toggle('supplies.yaml')],
  [
    'a kind of fastener',
    (files, word) => swap('fasteners.yaml', /name: .*, drive/, `name: ${word} bolt, drive`)(files),
  ],
  ['the platform', (files, word) => swap('platforms/van.md', /A [a-z ]+\./, `A ${word} van.`)(files)],
  [
    'an anchor of the platform',
    (files, word) =>
      swap('platforms/van.md', /\{#[a-z]+\}\n\nA/, `{#${word.length % 2 ? 'know' : 'seen'}}\n\nA`)(files),
  ],
  [
    'a procedure',
    (files, word) => swap('procedures/lid-off.md', /time="\d+ min"/, `time="${word.length} min"`)(files),
  ],
  ['the shop', (files, word) => swap('shop.yaml', /name: .*/, `name: ${word}`)(files)],
  ['a picture', (files, word) => void files.set('one/pictures/a.svg', drawing(50 + word.length))],
  ['a picture taken away', toggle('two/pictures/a.svg')],
  ['a linked file', toggle('two/sheet.txt')],
  ['a linked text', (files, word) => void (files.has('two/sheet.txt') && files.set('two/sheet.txt', word))],
  [
    'a template',
    (files, word) =>
      swap(
        'two/guide.md',
        /points="20,20 \d+,20 \d+,40/,
        `points="20,20 ${60 + word.length},20 ${60 + word.length},40`,
      )(files),
  ],
  ['a layout', toggleLayout],
  [
    'a style',
    (files, word) => void files.set('templates/page.css', `body { color: #${word.length}${word.length}4 }`),
  ],
  ['a guide deleted', toggle('two/guide.md')],
  ['a guide renamed', rename],
  [
    'a step renamed',
    (files, word) => swap('two/guide.md', /\{#(look|seek)/, `{#${word.length % 2 ? 'look' : 'seek'}`)(files),
  ],
  ['a fault', swap('one/guide.md', /the :tool\[lamp\]/, 'the :tool[lump]')],
  ['its mend', swap('one/guide.md', /the :tool\[lump\]/, 'the :tool[lamp]')],
  ['a broken list', swap('tools.yaml', /^lamp: \{/m, 'lamp: {{')],
  ['its mend', swap('tools.yaml', /^lamp: \{\{/m, 'lamp: {')],
  ['a procedure taken away', toggle('procedures/lid-off.md')],
];

function toggleLayout(files: Files): void {
  const path = 'templates/step-links.liquid';
  if (!files.delete(path)) files.set(path, '<em>see the steps</em>');
}

function rename(files: Files): void {
  for (const [path, text] of [...files]) {
    const to = /^(?:two|three)\//.test(path)
      ? path.replace(/^[a-z]+/, (id) => (id === 'two' ? 'three' : 'two'))
      : path;
    if (to === path || files.has(to)) continue;
    files.delete(path);
    files.set(to, text);
  }
}

/** What may befall the store between two builds. */
const mishaps: readonly (readonly [string, (folder: string) => Promise<void>])[] = [
  ['the store removed', (folder) => rm(folder, { recursive: true, force: true })],
  ['half of each entry lost', (folder) => damage(folder, (bytes) => bytes.subarray(0, bytes.length / 2))],
  [
    'a byte of each entry changed',
    (folder) =>
      damage(folder, (bytes) => {
        const other = Buffer.from(bytes);
        const at = Math.floor(other.length / 2);
        if (other.length > 0) other[at] = (other[at] ?? 0) ^ 1;
        return other;
      }),
  ],
  ['entries of every third name lost', lose],
];

async function damage(folder: string, change: (bytes: Buffer) => Uint8Array): Promise<void> {
  for (const name of await readdir(folder).catch(() => [])) {
    const path = join(folder, name);
    await writeFile(path, change(await readFile(path)));
  }
}

async function lose(folder: string): Promise<void> {
  const names = (await readdir(folder).catch(() => [])).sort();
  for (const name of names.filter((_, index) => index % 3 === 0)) await rm(join(folder, name));
}

interface Answer {
  readonly code: number;
  readonly out: string;
}

async function build(folder: string, store: Store, flags: readonly string[]): Promise<Answer> {
  let out = '';
  const code = await run(['build', ...flags], {
    out: (text) => {
      out += text;
    },
    err: (text) => {
      out += text;
    },
    cwd: folder,
    width: 100,
    colour: false,
    watched: false,
    ask: null,
    threads: 1,
    store,
  });
  return { code, out: out.replace(/^site: .*\n/m, '') };
}

async function write(folder: string, files: ReadonlyMap<string, string>): Promise<void> {
  await rm(join(folder, 'guides'), { recursive: true, force: true });
  for (const [path, text] of files) {
    const full = join(folder, 'guides', path);
    await mkdir(dirname(full), { recursive: true });
    await writeFile(full, text);
  }
}

/** SHA-256 of every file below a folder, by path. */
async function hashesBelow(folder: string): Promise<ReadonlyMap<string, string>> {
  const found = await filesBelow(folder);
  return new Map([...found].map(([path, bytes]) => [path, sha256(Buffer.from(bytes, 'latin1'))]));
}

interface Built {
  readonly answer: Answer;
  /** Of the site that it published; empty where it published none. */
  readonly site: ReadonlyMap<string, string>;
}

/** Clean builds so far: the same files give the same, so that a state that comes again is built once. */
const cleanBuilds = new Map<string, Built>();

/** What a build makes of some files where nothing was before. */
async function cleanBuild(files: ReadonlyMap<string, string>, flags: readonly string[]): Promise<Built> {
  const key = sha256(JSON.stringify([[...files].sort(([a], [b]) => (a < b ? -1 : 1)), flags]));
  const known = cleanBuilds.get(key);
  if (known) return known;
  const folder = join(top, 'clean');
  await rm(folder, { recursive: true, force: true });
  await write(folder, files);
  const answer = await build(folder, noStore, flags);
  const built = { answer, site: await hashesBelow(join(folder, 'site')) };
  cleanBuilds.set(key, built);
  return built;
}

const word = fc.constantFrom('edge', 'rim', 'corner', 'seam', 'lip', 'flange');
const step = fc.record({
  edits: fc.array(fc.tuple(fc.nat(edits.length - 1), word), { minLength: 1, maxLength: 2 }),
  mishap: fc.option(fc.nat(mishaps.length - 1), { freq: 4 }),
  keepGoing: fc.boolean(),
});

// The long suite runs 500 series of edits, or as many as are asked for; each run a fixed sample.
const series = process.env.LONG ? Number(process.env.SERIES ?? 500) : 2;

it('is a clean build, whatever is edited', { timeout: process.env.LONG ? 3_600_000 : 240_000 }, async () => {
  // Every series begins with the same build.
  const first = join(top, 'first');
  await write(first, new Map(Object.entries(start)));
  expect(await build(first, folderStore(join(first, 'store'), new Date()), [])).toMatchObject({ code: 0 });
  let number = 0;
  await fc.assert(
    fc.asyncProperty(fc.array(step, { minLength: 2, maxLength: process.env.LONG ? 6 : 3 }), async (steps) => {
      number += 1;
      const here = join(top, `edited ${number}`);
      const store = join(here, 'store');
      const files = new Map(Object.entries(start));
      await cp(first, here, { recursive: true });
      let published = await hashesBelow(join(here, 'site'));
      for (const { edits: made, mishap, keepGoing } of steps) {
        for (const [edit, text] of made) edits[edit]?.[1](files, text);
        const befalls = mishap === null ? null : mishaps[mishap];
        await befalls?.[1](store);
        await write(here, files);
        const flags = keepGoing ? ['--keep-going'] : [];
        const again = await build(here, folderStore(store, new Date()), flags);
        const clean = await cleanBuild(files, flags);
        const told = `${made.map(([edit]) => edits[edit]?.[0]).join(', ')}; ${befalls?.[0] ?? 'no mishap'}`;
        expect(again, told).toEqual(clean.answer);
        // A build that publishes nothing leaves the last site.
        if (clean.site.size > 0) published = clean.site;
        expect(await hashesBelow(join(here, 'site')), told).toEqual(published);
      }
      rmSync(here, { recursive: true, force: true });
    }),
    process.env.LONG ? { numRuns: series } : { numRuns: series, seed: 20261129 },
  );
});
