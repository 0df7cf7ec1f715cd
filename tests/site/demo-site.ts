import { mkdir, stat, writeFile } from 'node:fs/promises';
import { join, resolve } from 'node:path';
import { vi } from 'vitest';
import { diskFiles, inspect } from '../../src/shop/index.ts';
import { sharedFolder } from '../shared-folder.ts';
import { buildSite } from './build.ts';

let built: Promise<string> | null = null;

/**
 * The folder of the demo shop's site, nested and with spaces in its name. It is built once in a run, by the worker that
 * asks first, and others read it: it is not to be changed.
 */
export function demoSite(): Promise<string> {
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
  const outcome = await buildSite(await inspect(files), files, folder);
  if (!outcome.ok) throw new Error(outcome.problems.join('\n'));
}
