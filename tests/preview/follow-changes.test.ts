import { readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { expect, it, onTestFinished } from 'vitest';
import { followChanges } from '../../src/preview/follow-changes.ts';
import { diskFiles } from '../../src/shop/files/disk-files.ts';
import { bench } from '../driver.ts';

it('takes in the last of several saves, however soon it comes after another was taken in', async () => {
  const { folder } = await bench({ 'lamp/guide.md': 'as it was' });
  const root = join(folder, 'guides');
  const file = join(root, 'lamp/guide.md');
  const seen: [text: string, whole: boolean][] = [];
  const follower = followChanges(
    root,
    diskFiles(root),
    async (_, whole) => void seen.push([await readFile(file, 'utf8'), whole]),
    (line) => expect.unreachable(line),
  );
  onTestFinished(() => follower.close());
  await follower.ready;

  await writeFile(file, 'saved once');
  await expect.poll(() => seen, { interval: 2, timeout: 20_000 }).toContainEqual(['saved once', false]);
  await writeFile(file, 'saved again at once');
  await expect.poll(() => seen.at(-1), { timeout: 20_000 }).toEqual(['saved again at once', false]);

  await setTimeout(300);
  const taken = seen.length;
  await setTimeout(200);
  expect(seen, 'once all is taken in, it is quiet').toHaveLength(taken);
});
