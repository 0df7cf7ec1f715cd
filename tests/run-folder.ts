import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { TestProject } from 'vitest/node';

declare module 'vitest' {
  interface ProvidedContext {
    /** A folder that all workers of a run share; a file that is run without the suite's configuration has none. */
    runFolder: string;
  }
}

/** Makes the folder that the workers of a run share, and removes it when the run is over. */
export default async function runFolder(project: TestProject): Promise<() => Promise<void>> {
  const folder = await mkdtemp(join(tmpdir(), 'baybook run '));
  project.provide('runFolder', folder);
  return () => rm(folder, { recursive: true, force: true });
}
