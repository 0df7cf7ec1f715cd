import { mkdir, mkdtemp, rm, symlink, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, it, onTestFinished } from 'vitest';
import { diskFiles } from '../../src/shop/files/disk-files.ts';
import { memoryFiles } from '../../src/shop/files/memory-files.ts';
import { resolvePath } from '../../src/shop/files/resolve-path.ts';
import { inspect } from '../../src/shop/index.ts';

async function folder() {
  const top = await mkdtemp(join(tmpdir(), 'baybook files '));
  onTestFinished(() => rm(top, { recursive: true, force: true }));
  await mkdir(join(top, 'work/cradle'), { recursive: true });
  await writeFile(join(top, 'secret.txt'), 'not ours');
  await writeFile(join(top, 'work/shop.yaml'), 'name: A\n');
  await writeFile(join(top, 'work/cradle/guide.md'), '# G\n');
  return top;
}

it('lists files by path in one order, without hidden ones and installed packages', async () => {
  const top = await folder();
  await mkdir(join(top, 'work/.git'));
  await mkdir(join(top, 'work/node_modules/x'), { recursive: true });
  await writeFile(join(top, 'work/.git/config'), '');
  await writeFile(join(top, 'work/node_modules/x/guide.md'), '');
  const { files, links } = await diskFiles(join(top, 'work')).list();
  expect([...files]).toEqual([
    ['cradle/guide.md', 4],
    ['shop.yaml', 8],
  ]);
  expect(links).toEqual([]);
});

it('follows no symbolic link and reads nothing outside the workspace', async () => {
  const top = await folder();
  await symlink(join(top, 'secret.txt'), join(top, 'work/link.txt'));
  await symlink(top, join(top, 'work/up'));
  const files = diskFiles(join(top, 'work'));
  const listing = await files.list();
  expect(listing.links).toEqual(['link.txt', 'up']);
  expect([...listing.files.keys()]).toEqual(['cradle/guide.md', 'shop.yaml']);
  for (const path of [
    'link.txt',
    'up/secret.txt',
    '../secret.txt',
    'cradle/../../secret.txt',
    join(top, 'secret.txt'),
    '',
    'none',
  ])
    expect(await files.read(path), path).toBeNull();
  expect(Buffer.from((await files.read('shop.yaml')) ?? []).toString()).toBe('name: A\n');
});

it('tells of a folder that this user may not open', async () => {
  const files = memoryFiles({ 'shop.yaml': 'name: A' });
  const closed = async () => ({ ...(await files.list()), closed: ['cradle'] });
  const { findings } = await inspect({ ...files, list: closed });
  expect(findings.map(({ code, at, message }) => `${at.file} ${code}: ${message}`)).toContain(
    'cradle file-unreadable: this folder cannot be opened',
  );
});

it('reads a workspace that is itself reached through a link', async () => {
  const top = await folder();
  await symlink(join(top, 'work'), join(top, 'way'));
  expect(await diskFiles(join(top, 'way')).read('shop.yaml')).not.toBeNull();
});

it('holds a workspace in memory alike', async () => {
  const files = memoryFiles({ 'b.md': 'ß', 'a.yaml': new Uint8Array([1]) });
  expect([...(await files.list()).files]).toEqual([
    ['a.yaml', 1],
    ['b.md', 2],
  ]);
  expect(await files.read('none')).toBeNull();
});

it.each([
  ['cradle/guide.md', 'pictures/a.svg', 'cradle/pictures/a.svg'],
  ['cradle/guide.md', './a.svg', 'cradle/a.svg'],
  ['cradle/guide.md', '../platforms/van.md', 'platforms/van.md'],
  ['cradle/guide.md', '../../a.svg', null],
  ['cradle/guide.md', '/etc/passwd', null],
  ['cradle/guide.md', 'https://guides.example/a.svg', null],
  ['cradle/guide.md', 'C:\\a.svg', null],
  ['cradle/guide.md', 'pictures\\a.svg', null],
  ['cradle/guide.md', '', null],
])('resolves from %s the path %j', (from, written, expected) => {
  expect(resolvePath(from, written)).toBe(expected);
});
