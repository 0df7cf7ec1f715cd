import { existsSync } from 'node:fs';
import { link, mkdir, readdir, readFile, stat, symlink, utimes, writeFile } from 'node:fs/promises';
import { hostname } from 'node:os';
import { join, relative } from 'node:path';
import { describe, expect, it } from 'vitest';
import { workerScript } from '../../src/site/device/worker.ts';
import { type Disk, realDisk } from '../../src/site/folder/disk.ts';
import { openOutputFolder } from '../../src/site/folder/output-folder.ts';
import { sha256 } from '../../src/store/content-hash.ts';
import { fileHashes } from '../../src/store/file-hashes.ts';
import { noStore } from '../../src/store/store.ts';
import { filesBelow, outputFolder } from './workspace.ts';

type Contents = { readonly [path: string]: string };

function open(folder: string, disk: Disk = realDisk) {
  const opened = openOutputFolder(folder, Date.now(), disk);
  if ('heldBy' in opened) throw new Error(opened.heldBy);
  return opened;
}

async function publish(folder: string, files: Contents, disk: Disk = realDisk) {
  const opened = open(folder, disk);
  const site = Object.entries(files).map(
    ([path, text]) => [path, { hash: sha256(text), bytes: () => Buffer.from(text) }] as const,
  );
  const published = await opened.publish(
    new Map(site),
    fileHashes(folder, noStore, () => 0n),
  );
  opened.close();
  return published;
}

describe('the output folder', () => {
  it('gets new and changed files, and loses those that are no longer written', async () => {
    const folder = await outputFolder();
    await publish(folder, { 'index.html': 'one', 'a/b.html': 'two', 'c/d/e.css': 'three' });
    const second = await publish(folder, { 'index.html': 'one', 'a/b.html': 'changed' });
    expect(second).toMatchObject({ written: ['a/b.html'], removed: ['c/d/e.css'] });
    expect([...(await filesBelow(folder)).keys()]).toEqual(['.baybook-files.json', 'a/b.html', 'index.html']);
    expect(await readdir(folder)).not.toContain('c');
  });

  it('does not write what has not changed', async () => {
    const folder = await outputFolder();
    await publish(folder, { 'index.html': 'one' });
    const before = await stat(join(folder, 'index.html'));
    expect(await publish(folder, { 'index.html': 'one' })).toMatchObject({ written: [], removed: [] });
    const after = await stat(join(folder, 'index.html'));
    expect([after.ino, after.mtimeMs]).toEqual([before.ino, before.mtimeMs]);
  });

  it('keeps every file that Baybook has not written', async () => {
    const folder = await outputFolder();
    await mkdir(join(folder, 'a'), { recursive: true });
    await writeFile(join(folder, '.gitignore'), '*');
    await writeFile(join(folder, 'a', 'mine.txt'), 'mine');
    await publish(folder, { 'a/b.html': 'two' });
    await publish(folder, {});
    expect([...(await filesBelow(folder)).keys()]).toEqual([
      '.baybook-files.json',
      '.gitignore',
      'a/mine.txt',
    ]);
  });

  it('stops before it touches anything where a file of someone else is in the way', async () => {
    const folder = await outputFolder();
    await publish(folder, { 'index.html': 'one' });
    await writeFile(join(folder, 'notes.html'), 'mine');
    await mkdir(join(folder, 'page.html'));
    const before = await filesBelow(folder);
    const published = await publish(folder, {
      'index.html': 'two',
      'notes.html': 'ours',
      'page.html': 'x',
      'a.html': 'y',
    });
    expect(published).toEqual({ inTheWay: ['notes.html', 'page.html'], notices: [] });
    expect(await filesBelow(folder)).toEqual(before);
  });

  // A second name for one file stands in for a disk that takes large and small letters for the same.
  it('keeps a file that was written under a name with other letters, where both are one file', async () => {
    const folder = await outputFolder();
    await publish(folder, { 'files/Parts.pdf': 'one', 'files/Gone.pdf': 'two' });
    await link(join(folder, 'files/Parts.pdf'), join(folder, 'files/parts.pdf'));
    expect(await publish(folder, { 'files/parts.pdf': 'one' })).toMatchObject({
      removed: ['files/Gone.pdf'],
    });
    expect(await readFile(join(folder, 'files/parts.pdf'), 'utf8')).toBe('one');
  });

  it('removes a file whose name had other letters, where the two are two', async () => {
    const folder = await outputFolder();
    await publish(folder, { 'files/Parts.pdf': 'one' });
    expect(await publish(folder, { 'files/parts.pdf': 'two' })).toMatchObject({
      removed: ['files/Parts.pdf'],
      written: ['files/parts.pdf'],
    });
  });

  it('takes over a file of someone else that is the same anyway', async () => {
    const folder = await outputFolder();
    await mkdir(folder, { recursive: true });
    await writeFile(join(folder, 'index.html'), 'one');
    expect(await publish(folder, { 'index.html': 'one' })).toMatchObject({ written: [] });
  });

  it('never follows a link out of the folder', async () => {
    const folder = await outputFolder();
    const elsewhere = await outputFolder();
    await mkdir(folder, { recursive: true });
    await mkdir(elsewhere, { recursive: true });
    await symlink(elsewhere, join(folder, 'guides'));
    expect(await publish(folder, { 'guides/index.html': 'one' })).toMatchObject({
      inTheWay: ['guides/index.html'],
    });
    expect(await readdir(elsewhere)).toEqual([]);
  });

  it.each([
    [
      'names what lies outside',
      (list: string) => list.replace('"a.html"', '"a.html", "../kept.txt", "a//b"'),
    ],
    ['names a file of someone else', (list: string) => list.replace('"a.html"', '"a.html", "mine.txt"')],
    ['leaves out one of Baybook', (list: string) => list.replace('"a.html",', '')],
    ['is a bare list, with what is no path', () => JSON.stringify(['a.html', 'mine.txt', '../kept.txt', 7])],
  ])('touches nothing of someone else where its list has been edited and %s', async (_, edit) => {
    const folder = await outputFolder();
    const worker = workerScript(new Map([['a.html', sha256('one')]]), new Map(), '');
    await publish(folder, { 'a.html': 'one', 'worker.js': worker });
    const [list, mine, outside] = ['.baybook-files.json', 'mine.txt', '../kept.txt'].map((name) =>
      join(folder, name),
    ) as [string, string, string];
    const before = await readFile(list, 'utf8');
    expect(edit(before)).not.toBe(before);
    for (const path of [mine, outside]) await writeFile(path, 'mine');
    await writeFile(list, edit(before));
    expect(await publish(folder, { 'b.html': 'new', 'mine.txt': 'ours' })).toMatchObject({
      inTheWay: ['mine.txt'],
    });
    expect(await publish(folder, { 'b.html': 'new' })).toMatchObject({
      written: ['b.html'],
      removed: ['a.html', 'worker.js'],
      notices: [
        '.baybook-files.json in the output folder is not as Baybook wrote it; only what worker.js there names, and is unchanged, counts as written by Baybook',
      ],
    });
    for (const path of [mine, outside]) expect(await readFile(path, 'utf8')).toBe('mine');
    expect([...(await filesBelow(folder)).keys()]).toEqual(['.baybook-files.json', 'b.html', 'mine.txt']);
    expect(await publish(folder, { 'b.html': 'new' })).toMatchObject({ written: [], notices: [] });
  });

  it('clears what a build left behind that was cut short', async () => {
    const folder = await outputFolder();
    await mkdir(join(folder, '.baybook-staging'), { recursive: true });
    await writeFile(join(folder, '.baybook-staging', 'half.html'), 'half');
    await publish(folder, { 'index.html': 'one' });
    expect([...(await filesBelow(folder)).keys()]).toEqual(['.baybook-files.json', 'index.html']);
  });

  it('clears away a file, and a link, in the place of what a build left behind', async () => {
    const [folder, elsewhere] = [await outputFolder(), await outputFolder()];
    await mkdir(join(elsewhere, 'guides'), { recursive: true });
    await mkdir(join(folder, 'guides'), { recursive: true });
    await writeFile(join(folder, '.baybook-staging'), 'half');
    await publish(folder, { 'index.html': 'one' });
    await symlink(elsewhere, join(folder, '.baybook-staging'));
    await publish(folder, { 'index.html': 'two' });
    expect(await readdir(folder)).toEqual(['.baybook-files.json', 'guides', 'index.html']);
    expect(await readdir(elsewhere)).toEqual(['guides']);
  });

  it.each(['', '["index.ht', '{}'])('knows its files again where its list reads %j', async (list) => {
    const folder = await outputFolder();
    const worker = workerScript(new Map([['index.html', sha256('one')]]), new Map(), '');
    await publish(folder, { 'index.html': 'one', 'worker.js': worker });
    await writeFile(join(folder, '.baybook-files.json'), list);
    await writeFile(join(folder, 'mine.txt'), 'mine');
    expect(await publish(folder, { 'a.html': 'new' })).toMatchObject({
      written: ['a.html'],
      removed: ['index.html', 'worker.js'],
    });
    expect([...(await filesBelow(folder)).keys()]).toEqual(['.baybook-files.json', 'a.html', 'mine.txt']);
  });
});

/** A disk that breaks off before its nth change, and takes no more after that, as when the power goes. */
function breakingDisk(changes: number): { readonly disk: Disk; readonly broke: () => boolean } {
  let left = changes;
  const guarded =
    <Args extends readonly unknown[]>(act: (...args: Args) => void) =>
    (...args: Args) => {
      if (left === 0) throw new Error('the power went');
      left -= 1;
      act(...args);
    };
  return {
    broke: () => left === 0,
    disk: {
      makeFolder: guarded(realDisk.makeFolder),
      write: guarded(realDisk.write),
      create: guarded(realDisk.create),
      rename: guarded(realDisk.rename),
      remove: guarded(realDisk.remove),
      removeFolder: guarded(realDisk.removeFolder),
    },
  };
}

describe('a build that is cut short', () => {
  const old = { 'index.html': 'one', 'a/b.html': 'two', 'c/d/e.css': 'three', 'assets/page.css': 'same' };
  const wanted = { 'index.html': 'new', 'a/b.html': 'two', 'f/g.html': 'four', 'assets/page.css': 'same' };
  const inSite = async (folder: string) => {
    const files = [...(await filesBelow(folder))].filter(([path]) => !path.startsWith('.baybook'));
    return Object.fromEntries(files);
  };

  const foldersBelow = async (folder: string) => {
    const entries = await readdir(folder, { recursive: true, withFileTypes: true }).catch(() => []);
    const folders = entries.filter((entry) => entry.isDirectory());
    return folders.map((entry) => relative(folder, join(entry.parentPath, entry.name))).sort();
  };
  const foldersOf = (files: Contents) =>
    [
      ...new Set(
        Object.keys(files).flatMap((path) => {
          const parts = path.split('/').slice(0, -1);
          return parts.map((_, depth) => parts.slice(0, depth + 1).join('/'));
        }),
      ),
    ].sort();

  it.each([
    ['an update', old, wanted],
    ['a first build', {}, wanted],
  ])(
    'at any point of %s leaves, after the next command, the whole old or the whole new site',
    async (_, from, to) => {
      let points = 0;
      for (let changes = 0; ; changes += 1) {
        const folder = await outputFolder();
        if (Object.keys(from).length > 0) await publish(folder, from);
        const { disk, broke } = breakingDisk(changes);
        await publish(folder, to, disk).catch(() => undefined);
        if (!broke()) break;
        points += 1;
        // The process of the broken build is gone, and so is its hold on the folder.
        await writeFile(join(folder, '.baybook-lock'), goneLock).catch(() => undefined);
        if (existsSync(folder)) open(folder).close();
        const left = await inSite(folder);
        expect([from, to], `after ${changes} changes`).toContainEqual(left);
        const folders = await foldersBelow(folder);
        expect(folders, `after ${changes} changes`).toEqual(foldersOf(left));
        expect(
          (await readdir(folder).catch(() => [])).filter((name) => /staging|switch|lock/.test(name)),
        ).toEqual([]);
        await publish(folder, to);
        expect(await inSite(folder)).toEqual(to);
      }
      expect(points).toBeGreaterThan(8);
    },
  );

  /** A lock of a process that cannot be there: ids end at 2^22 on Linux. */
  const goneLock = JSON.stringify({ process: 2 ** 30, host: hostname() });

  it('lets the next build in, and one that goes on keeps it out with its age', async () => {
    const folder = await outputFolder();
    await publish(folder, old);
    await writeFile(join(folder, '.baybook-lock'), goneLock);
    expect(await publish(folder, wanted)).toMatchObject({ removed: ['c/d/e.css'] });

    const lock = join(folder, '.baybook-lock');
    await writeFile(lock, JSON.stringify({ process: process.ppid, host: hostname() }));
    const since = new Date(Date.now() - 300_000);
    await utimes(lock, since, since);
    await expect(publish(folder, old)).rejects.toThrow(
      /^another build \(process \d+ on .+\) has been writing to the output folder for 5 min; wait until it is done, or delete \.baybook-lock there if it no longer runs$/,
    );
    expect(await inSite(folder)).toEqual(wanted);
  });

  it('clears a lock away whose build was killed before it had put its name in, once it is older than a moment', async () => {
    const folder = await outputFolder();
    await publish(folder, old);
    const lock = join(folder, '.baybook-lock');
    await writeFile(lock, '');
    await expect(publish(folder, wanted)).rejects.toThrow(/^another build has been writing/);
    const since = new Date(Date.now() - 11_000);
    await utimes(lock, since, since);
    await publish(folder, wanted);
    expect(await inSite(folder)).toEqual(wanted);
  });

  it('leaves no lock that nobody holds where the disk was too full for a name in it', async () => {
    const folder = await outputFolder();
    await publish(folder, old);
    const full: Disk = {
      ...realDisk,
      create: (path) => {
        realDisk.create(path, '');
        throw Object.assign(new Error('ENOSPC'), { code: 'ENOSPC', syscall: 'write' });
      },
    };
    expect(() => open(folder, full)).toThrow('ENOSPC');
    await publish(folder, wanted);
    expect(await inSite(folder)).toEqual(wanted);
  });

  it('has, once the switch is decided on, nothing left to write that a full disk could refuse', async () => {
    const folder = await outputFolder();
    await publish(folder, old);
    const told: string[] = [];
    const watching: Disk = {
      ...realDisk,
      write: (path, content) => {
        told.push('write');
        realDisk.write(path, content);
      },
      makeFolder: (path) => {
        if (!existsSync(path)) told.push('folder');
        realDisk.makeFolder(path);
      },
      rename: (from, to) => {
        told.push(to.endsWith('.baybook-switch.json') ? 'decided' : 'rename');
        realDisk.rename(from, to);
      },
    };
    await publish(folder, wanted, watching);
    const decided = told.indexOf('decided');
    expect(told.slice(0, decided)).toEqual(expect.arrayContaining(['write', 'folder']));
    expect(new Set(told.slice(decided))).toEqual(new Set(['decided', 'rename']));
  });

  it.each([
    ['moves something over a file of someone else', '"index.html"', '"mine.txt"'],
    ['removes one', '"c/d/e.css"', '"mine.txt"'],
    ['leads out of the folder', '"c/d/e.css"', '"../kept.txt"'],
    ['is no decision', '{', '['],
  ])('whose decision has been edited and %s, touches nothing, and says so', async (_, from, to) => {
    const folder = await outputFolder();
    await publish(folder, old);
    for (const name of ['mine.txt', '../kept.txt']) await writeFile(join(folder, name), 'mine');
    // Cut as soon as it is decided on.
    const disk: Disk = {
      ...realDisk,
      rename: (from, to) => {
        realDisk.rename(from, to);
        if (to.endsWith('.baybook-switch.json')) throw new Error('the power went');
      },
    };
    await expect(publish(folder, wanted, disk)).rejects.toThrow('the power went');
    await writeFile(join(folder, '.baybook-lock'), goneLock);
    const decision = join(folder, '.baybook-switch.json');
    const edited = (await readFile(decision, 'utf8')).replace(from, to);
    await writeFile(decision, edited);
    await writeFile(join(folder, '.baybook-staging', 'mine.txt'), 'not mine');
    const before = await inSite(folder);
    const { notices } = await publish(folder, old);
    expect(notices).toEqual([
      '.baybook-switch.json in the output folder, which a build left that was cut short, is not as Baybook wrote it; nothing that it names was moved or removed',
    ]);
    expect(await inSite(folder)).toEqual(before);
    expect(await readFile(join(folder, '../kept.txt'), 'utf8')).toBe('mine');
    expect(await publish(folder, wanted)).toMatchObject({ notices: [], removed: ['c/d/e.css'] });
  });

  it('leaves no empty folder behind', async () => {
    const folder = await outputFolder();
    open(folder).close();
    expect(existsSync(folder)).toBe(false);
  });
});
