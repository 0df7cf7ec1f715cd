import { rmSync } from 'node:fs';
import { mkdtemp } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { inject } from 'vitest';

let own: Promise<string> | null = null;

/** The folder that all workers of a run share; it is gone when the run is over. */
export async function sharedFolder(): Promise<string> {
  const given = inject('runFolder');
  if (given) return given;
  own ??= ownFolder();
  return own;
}

/** For a file that is run alone, without the suite's configuration. */
async function ownFolder(): Promise<string> {
  const folder = await mkdtemp(join(tmpdir(), 'baybook run '));
  process.once('exit', () => rmSync(folder, { recursive: true, force: true }));
  return folder;
}
