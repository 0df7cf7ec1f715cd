import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, vi } from 'vitest';
import type { WorkspaceFiles } from '../../src/shop/files/workspace-files.ts';
import type { Inspection } from '../../src/shop/inspect/inspection.ts';
import { buildSite } from '../site/build.ts';
import { demoSite } from '../site/demo-site.ts';
import { chromiumOfWorker, firefoxOfWorker } from './browser.ts';

/** A site in a nested folder with spaces, and a browser to look at it. */
export interface SiteForTests<Browser> {
  /** A folder for whatever a test adds; a site of its own is in it too. */
  readonly top: string;
  readonly folder: string;
  readonly browser: Browser;
}

type Made = readonly [Inspection, WorkspaceFiles];
type Make = () => Made | Promise<Made>;

/** Writes a site in the place of what stood there. */
export async function publish(inspection: Inspection, files: WorkspaceFiles, folder: string): Promise<void> {
  const outcome = await buildSite(inspection, files, folder);
  if (!outcome.ok) throw new Error(outcome.problems.join('\n'));
}

/** Builds a site before the tests of a file, opens Chromium, and clears the site up after them; to be read within tests. */
export const siteForTests = (make: Make) => siteIn(chromiumOfWorker, (top) => made(make, top));

/** The same with Firefox. */
export const firefoxSiteForTests = (make: Make) => siteIn(firefoxOfWorker, (top) => made(make, top));

/** The site of the demo shop, which other files look at too, and Chromium. */
export const demoForTests = () => siteIn(chromiumOfWorker, demoSite);

async function made(make: Make, top: string): Promise<string> {
  const folder = join(top, 'a stick', 'our guides');
  await publish(...(await make()), folder);
  return folder;
}

function siteIn<Browser>(
  start: () => Promise<Browser>,
  folderIn: (top: string) => Promise<string>,
): SiteForTests<Browser> {
  // A browser on a busy machine takes its time; nothing here is about speed.
  vi.setConfig({ testTimeout: 240_000, hookTimeout: 240_000 });
  let ready: SiteForTests<Browser> | null = null;
  const now = (): SiteForTests<Browser> => {
    if (!ready) throw new Error('the site is built before the first test, not before that');
    return ready;
  };
  beforeAll(async () => {
    const top = await mkdtemp(join(tmpdir(), 'baybook '));
    ready = { top, folder: await folderIn(top), browser: await start() };
  });
  afterAll(async () => {
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
