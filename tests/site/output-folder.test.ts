import { mkdir, readdir, readFile, stat, symlink, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { openStaging } from '../../src/site/output-folder.ts';
import { filesBelow, outputFolder } from './workspace.ts';

async function publish(folder: string, files: { readonly [path: string]: string }) {
  const staging = await openStaging(folder);
  for (const [path, content] of Object.entries(files)) await staging.add(path, content);
  const published = await staging.publish();
  await staging.discard();
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
    expect(published).toEqual({ inTheWay: ['notes.html', 'page.html'] });
    expect(await filesBelow(folder)).toEqual(before);
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
    expect(await publish(folder, { 'guides/index.html': 'one' })).toEqual({
      inTheWay: ['guides/index.html'],
    });
    expect(await readdir(elsewhere)).toEqual([]);
  });

  it('removes nothing outside the folder, whatever its list has been made to say', async () => {
    const folder = await outputFolder();
    await publish(folder, { 'index.html': 'one' });
    const outside = join(folder, '..', 'kept.txt');
    await writeFile(outside, 'kept');
    await writeFile(
      join(folder, '.baybook-files.json'),
      JSON.stringify(['index.html', '../kept.txt', 'a//b', 7]),
    );
    await publish(folder, { 'index.html': 'two' });
    expect(await readFile(outside, 'utf8')).toBe('kept');
  });

  it('clears what a build left behind that was cut short', async () => {
    const folder = await outputFolder();
    const staging = await openStaging(folder);
    await staging.add('half.html', 'half');
    await publish(folder, { 'index.html': 'one' });
    expect([...(await filesBelow(folder)).keys()]).toEqual(['.baybook-files.json', 'index.html']);
  });

  it('refuses two different files for one place', async () => {
    const staging = await openStaging(await outputFolder());
    await staging.add('a.html', 'one');
    await staging.add('a.html', 'one');
    await expect(staging.add('a.html', 'two')).rejects.toThrow('two different files want the place a.html');
  });
});
