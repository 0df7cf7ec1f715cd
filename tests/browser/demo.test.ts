import { mkdtemp, readdir, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { AxeBuilder } from '@axe-core/playwright';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { diskFiles, inspect } from '../../src/shop/index.ts';
import { buildSite } from '../../src/site/build-site.ts';
import { open, startChromium } from './browser.ts';

// A browser on a busy machine takes its time; nothing here is about speed.
vi.setConfig({ testTimeout: 240_000, hookTimeout: 240_000 });

let browser: Browser;
let folder: string;
let pages: readonly string[];

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'baybook demo '));
  const files = diskFiles(resolve(import.meta.dirname, '../../guides'));
  const outcome = await buildSite(await inspect(files), files, folder);
  if (!outcome.ok) throw new Error(outcome.problems.join('\n'));
  pages = (await readdir(folder, { recursive: true })).filter((path) => path.endsWith('.html')).sort();
  browser = await startChromium();
});

afterAll(async () => {
  await browser.close();
  await rm(folder, { recursive: true, force: true });
});

/** The pages of one kind are laid out alike: of tools and of fasteners, the first stands for all. */
function sample(): readonly string[] {
  const kinds = ['tools/', 'fasteners/'];
  const firsts = kinds.map((kind) => pages.find((path) => path.startsWith(kind)));
  return pages.filter((path) => !kinds.some((kind) => path.startsWith(kind)) || firsts.includes(path));
}

/** What a test finds wrong with some pages of the demo. */
async function on(
  paths: readonly string[],
  look: (path: string) => Promise<readonly string[]>,
): Promise<string[]> {
  const found: string[] = [];
  for (const path of paths) found.push(...(await look(path)).map((fault) => `${path}: ${fault}`));
  return found;
}

const overTheEdge = `[...document.querySelectorAll('body *')]
  .filter((element) => element.getBoundingClientRect().right > innerWidth + 0.5)
  .map((element) => element.outerHTML.slice(0, 60))`;

describe('the demo shop, every page of it', () => {
  it('has pages for its guides and platforms', () => {
    expect(pages.length).toBeGreaterThan(3);
  });

  it('says nothing to the console, asks no host, and shows every picture', async () => {
    const faults = await on(pages, async (path) => {
      const { page, faults } = await open(browser, folder, path);
      const missing = await page.evaluate<string[]>(
        '[...document.images].filter((image) => image.naturalWidth === 0).map((image) => image.src)',
      );
      await page.context().close();
      return [...faults, ...missing];
    });
    expect(faults).toEqual([]);
  });

  it('fits a phone of 320 px and the printed sheet', async () => {
    const faults = await on(sample(), async (path) => {
      const phone = await open(browser, folder, path, { viewport: { width: 320, height: 640 } });
      const wide = await phone.page.evaluate<string[]>(overTheEdge);
      await phone.page.context().close();
      const sheet = await open(browser, folder, path, { viewport: { width: 680, height: 1000 } });
      await sheet.page.emulateMedia({ media: 'print' });
      const printed = await sheet.page.evaluate<string[]>(overTheEdge);
      await sheet.page.context().close();
      return [...wide, ...printed];
    });
    expect(faults).toEqual([]);
  });

  it('is clean by axe with everything unfolded', async () => {
    const faults = await on(sample(), async (path) => {
      const { page } = await open(browser, folder, path);
      await page.evaluate("document.querySelectorAll('details').forEach((one) => { one.open = true; })");
      const { violations } = await new AxeBuilder({ page }).analyze();
      await page.context().close();
      return violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html}`);
    });
    expect(faults).toEqual([]);
  });
});
