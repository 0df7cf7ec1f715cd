import { mkdir, stat, writeFile } from 'node:fs/promises';
import { join, resolve } from 'node:path';
import { vi } from 'vitest';
import { diskFiles, inspect } from '../../src/shop/index.ts';
import { pictureStore } from '../picture-store.ts';
import { sharedFolder } from '../shared-folder.ts';
import { buildSite } from './build.ts';

let built: Promise<string> | null = null;

/**
 * The folder of the demo shop's site, nested and with spaces in its name; others read it too: it is not to be changed.
 * `tests/run.sh` has built it; for a file that is run alone it is built by the worker that asks first.
 */
export async function demoSite(): Promise<string> {
  if (process.env.COMPILED) return resolve(import.meta.dirname, '../../compiled/a stick/our guides');
  built ??= builtOnce();
  return built;
}

async function builtOnce(): Promise<string> {
  const top = join(await sharedFolder(), 'demo');
  const [folder, done] = [join(top, 'a stick', 'our guides'), join(top, 'done')];
  const first = await mkdir(top).then(
    () => true,
    () => false,
  );
  if (first) await build(folder).finally(() => writeFile(done, ''));
  else await vi.waitUntil(() => stat(done).catch(() => null), { timeout: 240_000, interval: 200 });
  return folder;
}

async function build(folder: string): Promise<void> {
  const files = diskFiles(resolve(import.meta.dirname, '../../guides'));
  const outcome = await buildSite(await inspect(files, await pictureStore()), files, folder);
  if (!outcome.ok) throw new Error(outcome.problems.join('\n'));
}
