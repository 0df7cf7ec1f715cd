import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { diskFiles } from '../../src/shop/files/disk-files.ts';
import { memoryFiles } from '../../src/shop/files/memory-files.ts';
import type { WorkspaceFiles } from '../../src/shop/files/workspace-files.ts';
import { buildSite } from '../../src/site/build-site.ts';
import { openOutputFolder } from '../../src/site/folder/output-folder.ts';
import type { Crew } from '../../src/site/guides/crew.ts';
import type { Work } from '../../src/site/work.ts';
import { fileHashes } from '../../src/store/file-hashes.ts';
import { memoryStore, noStore } from '../../src/store/store.ts';
import { corpus } from '../bench/corpus.ts';
import { bench } from '../driver.ts';
import { exampleWorkspace } from '../example-workspace.ts';
import { long, sampleOf } from '../samples.ts';
import { drawing, filesBelow, outputFolder } from './workspace.ts';

const work = (files: WorkspaceFiles, more: Partial<Work> = {}): Work => ({
  files,
  store: memoryStore(),
  openCrew: async () => null,
  ...more,
});

async function build(work: Work, folder: string) {
  const output = openOutputFolder(folder, 0);
  if ('heldBy' in output) throw new Error(output.heldBy);
  const hashes = fileHashes(folder, noStore, () => 0n);
  const refuse: Parameters<typeof buildSite>[2]['refuse'] = ({ findings }) =>
    findings.length > 0 ? findings.map(({ at, message }) => `${at.file}: ${message}`).join('; ') : null;
  try {
    return await buildSite(work, output, { keepGoing: false, refuse, hashes });
  } finally {
    output.close();
  }
}

describe('what was checked', () => {
  const text = `::tool{#trim-lever}

::procedure{of=rear #rear-work}

::step[Look around]{#look}

Look behind the edge with the :tool[trim-lever] as on [the sheet](sheet.txt).

:::figure[The edge]{src=edge.svg alt="An edge from above"}
:::
`;
  const sources: { readonly [path: string]: string } = {
    ...exampleWorkspace(text),
    'shop.yaml': 'name: Example Fitting\nlogo: logo.svg\n',
    'logo.svg': drawing,
    'tools.yaml': 'trim-lever: {name: Trim lever, picture: lever.svg}\n',
    'lever.svg': drawing,
    'templates/bay.css': 'p { color: #123 }\n',
    'procedures/rear.md': '---\ntitle: Rear\n---\n\n::step[Mind the rear]{#rear}\n\nMind it.\n',
    'example/sheet.txt': 'Mind the edge.',
    'example/edge.svg': drawing,
    'platforms/example-van.md': `${exampleWorkspace(text)['platforms/example-van.md']}\n![The van](van.svg)\n\nSee [the list](list.txt).\n`,
    'platforms/van.svg': drawing,
    'platforms/list.txt': 'One van.',
  };

  /** A text that is as sound and says something else. */
  const otherText = (text: string) =>
    text.replace(/M20 20|Mind|One van|A van|Fitting|Trim lever|Push clip|#123|Look behind/, (word) =>
      word === 'M20 20' ? 'M30 20' : word === '#123' ? '#321' : `${word} well`,
    );

  /** The workspace with one file changed, or without it. */
  const changedTo = (path: string, to: string | null) =>
    memoryFiles(
      Object.fromEntries(
        Object.entries(sources).flatMap(([one, text]) => {
          if (one !== path) return [[one, text]];
          return to === null ? [] : [[one, to]];
        }),
      ),
    );

  /** Files that are others from the nth time on that somebody looks at them. */
  function switching(before: WorkspaceFiles, after: WorkspaceFiles, from: number) {
    let looks = 0;
    const now = () => {
      looks += 1;
      return looks >= from ? after : before;
    };
    const files: WorkspaceFiles = {
      list: () => now().list(),
      read: (path) => now().read(path),
      hash: (path) => now().hash(path),
    };
    return { files, looks: () => looks };
  }

  /** What a build publishes into an empty folder; nothing where it stops. */
  async function published(one: Work) {
    const folder = await outputFolder();
    const { outcome } = await build(one, folder);
    return { outcome, site: await filesBelow(folder) };
  }

  function sameSite(one: ReadonlyMap<string, string>, other: ReadonlyMap<string, string>): boolean {
    return one.size === other.size && [...one].every(([path, text]) => other.get(path) === text);
  }

  const untouched = memoryFiles(sources);
  /** How often a build looks at files, and what is published of those that nobody touches. */
  let looks = 0;
  let whole: ReadonlyMap<string, string>;
  beforeAll(async () => {
    const top = await mkdtemp(join(tmpdir(), 'baybook steady '));
    const counted = switching(untouched, untouched, 0);
    expect((await build(work(counted.files), join(top, 'site'))).outcome).toMatchObject({ ok: true });
    looks = counted.looks();
    whole = await filesBelow(join(top, 'site'));
    await rm(top, { recursive: true });
  });

  const changes = Object.entries(sources).flatMap(([path, text]) =>
    [null, otherText(text), ''].map((to) => [path, to] as const),
  );
  /** Of 13 files, three changes each at nine moments of a build: 351. */
  const tried = changes.flatMap(([path, to], i) =>
    Array.from({ length: 9 }, (_, k) => ({ path, to, part: (k + i / changes.length) / 9 })),
  );

  /** What comes of the changed files, where nobody touches them any more. */
  const later = new Map<string, ReturnType<typeof published>>();
  function settled(path: string, to: string | null) {
    const key = JSON.stringify([path, to]);
    const known = later.get(key) ?? published(work(changedTo(path, to)));
    later.set(key, known);
    return known;
  }

  // A file that is changed before anybody has looked at it is checked, and published, as it is then.
  it.each(sampleOf(tried, 6))(
    'is what is published: the build stops where $path is changed or gone after $part of its work, or has it as checked',
    async ({ path, to, part }) => {
      const after = changedTo(path, to);
      const store = memoryStore();
      const { files } = switching(untouched, after, 2 + Math.floor(part * (looks - 1)));
      const { outcome, site } = await published(work(files, { store }));
      if (!outcome.ok) {
        expect(site).toEqual(new Map());
        const why = outcome.problems.join('\n');
        if (!why.includes(path)) expect(await settled(path, to)).toMatchObject({ outcome });
      } else if (!sameSite(site, whole)) expect(site).toEqual((await settled(path, to)).site);
      if (!long) return;
      // What the build has left in the store misleads no later one.
      expect((await published(work(after, { store }))).site).toEqual((await settled(path, to)).site);
    },
  );

  it('stops at least where a picture is read again to be shown', async () => {
    let readings = 0;
    const read = (path: string) => {
      if (path === 'example/edge.svg') readings += 1;
      return path === 'example/edge.svg' && readings > 1 ? null : untouched.read(path);
    };
    const { outcome } = await published(work({ ...untouched, read }));
    expect(outcome).toEqual({
      ok: false,
      problems: ['example/edge.svg was changed or taken away while the guides were being read; run it again'],
    });
  });
});

describe('threads', () => {
  it('that break off leave their guides to be done without them, and the build says so', async () => {
    const crew: Crew = { takeTurn: () => Promise.reject(new Error('gone')), close: async () => undefined };
    const files = memoryFiles(exampleWorkspace('::step[Look around]{#look}\n\nLook behind the edge.\n'));
    const [alone, helped] = [await outputFolder(), await outputFolder()];
    await build(work(files), alone);
    const { outcome, notices } = await build(work(files, { openCrew: async () => crew }), helped);
    expect(outcome).toMatchObject({ ok: true });
    expect(notices).toEqual(['a thread broke off; 1 guide was done again without it']);
    expect(await filesBelow(helped)).toEqual(await filesBelow(alone));
  });
});

describe('one guide', () => {
  it('is checked alone by its name, with what lies between it and others as far as that is known', async () => {
    const guide =
      exampleWorkspace('::step[Look around]{#look}\n\nLook behind the edge.\n')['example/guide.md'] ?? '';
    const one = await bench({
      ...exampleWorkspace('::step[Look around]{#look}\n\nLook as [there](../other/guide.md#gone).\n'),
      'other/guide.md': guide.replace('Look behind', 'Look with the :tool[lump] behind'),
    });
    const first = await one.check('example');
    expect(first.out).toBe('1 guide checked: no errors, no warnings\n');
    expect(first.err).toMatch(/^what lies between it and 1 other guide is not judged/);
    expect((await one.check()).out).toContain('tool-undeclared');
    const again = await one.check('example');
    expect(again.out).toContain('other/guide.md has no place "#gone"');
    expect(again.out).not.toContain('tool-undeclared');
    expect(again.err).toBe('');
    expect(await one.check('exampel')).toMatchObject({
      code: 2,
      err: 'baybook: there is no guide "exampel"; did you mean "example"?\n',
    });
  });
});

describe('the store', () => {
  it('on a disk that takes nothing costs the build nothing but time', async () => {
    const files = memoryFiles(Object.fromEntries(corpus(2)));
    const [kept, lost] = [await outputFolder(), await outputFolder()];
    await build(work(files), kept);
    expect((await build(work(files, { store: noStore }), lost)).outcome).toMatchObject({ ok: true });
    expect(await filesBelow(lost)).toEqual(await filesBelow(kept));
  });
});

describe('files on disk', () => {
  it('are hashed anew when they change within one tick of their clock', async () => {
    const root = (await bench({ 'a.txt': 'one' })).folder;
    const files = diskFiles(
      join(root, 'guides'),
      fileHashes(join(root, 'guides'), memoryStore(), () => BigInt(Date.now()) * 1_000_000n),
    );
    const before = files.hash('a.txt');
    await writeFile(join(root, 'guides/a.txt'), 'two');
    expect(files.hash('a.txt')).not.toBe(before);
  });
});
