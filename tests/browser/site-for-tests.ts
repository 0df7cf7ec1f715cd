import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, vi } from 'vitest';
import type { Inspection } from '../../src/shop/inspection.ts';
import type { WorkspaceFiles } from '../../src/shop/workspace-files.ts';
import { buildSite } from '../site/build.ts';
import { startChromium, startFirefox } from './browser.ts';

/** A site in a nested folder with spaces, and a browser to look at it. */
export interface SiteForTests<Browser> {
  /** The folder that `folder` and whatever a test adds are in. */
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

/** Builds a site before the tests of a file, opens Chromium, and clears up after them; to be read within tests. */
export const siteForTests = (make: Make) => siteIn(startChromium, make);

/** The same with Firefox. */
export const firefoxSiteForTests = (make: Make) => siteIn(startFirefox, make);

function siteIn<Browser extends { close(): Promise<void> }>(
  start: () => Promise<Browser>,
  make: Make,
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
    const folder = join(top, 'a stick', 'our guides');
    await publish(...(await make()), folder);
    ready = { top, folder, browser: await start() };
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
