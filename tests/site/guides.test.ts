import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { diskFiles } from '../../src/shop/disk-files.ts';
import { memoryFiles } from '../../src/shop/memory-files.ts';
import type { WorkspaceFiles } from '../../src/shop/workspace-files.ts';
import { buildSite } from '../../src/site/build-site.ts';
import { openOutputFolder } from '../../src/site/folder/output-folder.ts';
import type { Crew } from '../../src/site/guides/crew.ts';
import type { Work } from '../../src/site/work.ts';
import { fileHashes } from '../../src/store/file-hashes.ts';
import { memoryStore, noStore } from '../../src/store/store.ts';
import { corpus } from '../bench/corpus.ts';
import { bench } from '../driver.ts';
import { exampleWorkspace } from '../example-workspace.ts';
import { sampleOf } from '../samples.ts';
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
    findings.length > 0 ? findings.map(({ message }) => message).join('; ') : null;
  try {
    return await buildSite(work, output, { keepGoing: false, refuse, hashes });
  } finally {
    output.close();
  }
}

describe('what was checked', () => {
  const text = `::step[Look around]{#look}

Look behind the edge as on [the sheet](sheet.txt).

:::figure[The edge]{src=edge.svg alt="An edge from above"}
:::
`;
  const sources = {
    ...exampleWorkspace(text),
    'example/sheet.txt': 'Mind the edge.',
    'example/edge.svg': drawing,
    'platforms/example-van.md': `${exampleWorkspace(text)['platforms/example-van.md']}\n![The van](van.svg)\n\nSee [the list](list.txt).\n`,
    'platforms/van.svg': drawing,
    'platforms/list.txt': 'One van.',
  };

  /** Files of which one changes, or is gone, from its nth reading on. */
  function unsteady(path: string, from: number, to: string | null): WorkspaceFiles {
    const files = memoryFiles(sources);
    const later = to === null ? null : new TextEncoder().encode(to);
    let readings = 0;
    return {
      ...files,
      read: (one) => {
        if (one !== path) return files.read(one);
        readings += 1;
        return readings >= from ? later : files.read(one);
      },
    };
  }

  /** What is published of the files that nobody touches. */
  let published: ReadonlyMap<string, string>;
  beforeAll(async () => {
    const top = await mkdtemp(join(tmpdir(), 'baybook steady '));
    const folder = join(top, 'site');
    expect((await build(work(memoryFiles(sources)), folder)).outcome).toMatchObject({ ok: true });
    published = await filesBelow(folder);
    await rm(top, { recursive: true });
  });

  const changes = [
    'example/edge.svg',
    'example/sheet.txt',
    'platforms/van.svg',
    'platforms/list.txt',
  ].flatMap((path) =>
    [null, drawing.replace('M20 20', 'M30 20'), ''].flatMap((to) =>
      [2, 3].map((from) => [path, to, from] as const),
    ),
  );
  // In each run each file is taken away, and changed, once.
  it.each(sampleOf(changes, 8))(
    'is what is published: the build stops where %s becomes %j at its reading %i',
    async (path, to, from) => {
      const folder = await outputFolder();
      const { outcome } = await build(work(unsteady(path, from, to)), folder);
      if (outcome.ok) expect(await filesBelow(folder)).toEqual(published);
      else {
        expect(outcome.problems.join('\n')).toContain(path);
        expect(await filesBelow(folder)).toEqual(new Map());
      }
    },
  );

  it('stops at least where a picture is read again to be shown', async () => {
    const { outcome } = await build(work(unsteady('example/edge.svg', 2, null)), await outputFolder());
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
