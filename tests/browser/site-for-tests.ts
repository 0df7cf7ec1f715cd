import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, vi } from 'vitest';
import type { Inspection } from '../../src/shop/inspection.ts';
import type { WorkspaceFiles } from '../../src/shop/workspace-files.ts';
import { buildSite } from '../../src/site/build-site.ts';
import { startChromium } from './browser.ts';

/** A site in a nested folder with spaces, and a browser to look at it. */
export interface SiteForTests {
  /** The folder that `folder` and whatever a test adds are in. */
  readonly top: string;
  readonly folder: string;
  readonly browser: Browser;
}

/** Writes a site in the place of what stood there. */
export async function publish(inspection: Inspection, files: WorkspaceFiles, folder: string): Promise<void> {
  const outcome = await buildSite(inspection, files, folder);
  if (!outcome.ok) throw new Error(outcome.problems.join('\n'));
}

/** Builds a site before the tests of a file, and takes it away after them; to be read within tests alone. */
export function siteForTests(
  make: () => readonly [Inspection, WorkspaceFiles] | Promise<readonly [Inspection, WorkspaceFiles]>,
): SiteForTests {
  // A browser on a busy machine takes its time; nothing here is about speed.
  vi.setConfig({ testTimeout: 240_000, hookTimeout: 240_000 });
  let ready: SiteForTests | null = null;
  const now = (): SiteForTests => {
    if (!ready) throw new Error('the site is built before the first test, not before that');
    return ready;
  };
  beforeAll(async () => {
    const top = await mkdtemp(join(tmpdir(), 'baybook '));
    const folder = join(top, 'a stick', 'our guides');
    await publish(...(await make()), folder);
    ready = { top, folder, browser: await startChromium() };
  });
  afterAll(async () => {
    await ready?.browser.close();
    if (ready) await rm(ready.top, { recursive: true, force: true });
  });
  return {
    get top() {
      return now().top;
    },
    get folder() {
      return now().folder;
    },
    get browser() {
      return now().browser;
    },
  };
}
