import { existsSync, readFileSync, statSync } from 'node:fs';
import { resolve } from 'node:path';
import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import { repository } from './driver.ts';

/** Made by `npm run pictures`. */
const readmePictures = ['page', 'bay', 'sheet'].map((name) => `handbook/pictures/${name}.webp`);

const read = (path: string) => readFileSync(resolve(repository, path), 'utf8');

it('gives exactly two commands in the README, and runs the second in .ci/run', () => {
  const commands = [...read('README.md').matchAll(/^```sh\n([\s\S]*?)^```/gm)].map((match) =>
    match[1]?.trim(),
  );
  expect(commands).toEqual(['npm run demo', 'npm test']);
  expect(read('.ci/run')).toContain(`exec ${commands[1]}\n`);
});

it('names every runtime dependency, and no other, in DEVELOPERS.md', () => {
  const [, table = ''] = read('DEVELOPERS.md').split('## Runtime dependencies');
  const named = [...table.matchAll(/^\| ([^|]+) \|/gm)].flatMap((match) => (match[1] ?? '').split(', '));
  const known = Object.keys(JSON.parse(read('package.json')).dependencies);
  expect(named.filter((name) => !/^package$|^-+$/.test(name)).sort()).toEqual(known.sort());
});

describe('the README', () => {
  const readme = read('README.md');

  it('stays one screen of text', () => {
    expect(readme.split('\n').length).toBeLessThan(60);
    expect(readme.length).toBeLessThan(4000);
  });

  it('shows a page, the bay and a sheet, each small, as large as people see it, and in words too', async () => {
    const shown = [...readme.matchAll(/<img src="([^"]+)" height="(\d+)" alt="([^"]+)">/g)];
    expect(shown.map(([, path]) => path)).toEqual(readmePictures);
    for (const [, path = '', height, alt = ''] of shown) {
      expect(alt.split(' ').length, path).toBeGreaterThan(8);
      expect(statSync(resolve(repository, path)).size, path).toBeLessThan(60_000);
      const { height: pixels } = await sharp(resolve(repository, path)).metadata();
      expect(pixels, path).toBe(2 * Number(height));
    }
  });

  it('leads to files that are there', () => {
    const links = [...readme.matchAll(/\]\(([^)]+)\)/g)].map(([, path = '']) => path);
    expect(links.length).toBeGreaterThan(8);
    expect(links.filter((path) => !existsSync(resolve(repository, path)))).toEqual([]);
  });
});
