import { resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { diskFiles, inspect } from '../../src/shop/index.ts';
import { noStore } from '../../src/store/store.ts';
import { long } from '../samples.ts';
import { firefoxOfWorker, open } from './browser.ts';
import { siteForTests } from './site-for-tests.ts';

const folder = resolve(import.meta.dirname, '../cases/trade-says');
const site = siteForTests(async () => {
  const files = await diskFiles(folder);
  return [await inspect(files, noStore), files];
});
const path = 'guides/look-then-decide/index.html';
const hash = '#build=camera:no,heater:no,hook:no,ramp:no';

/** What stands on the page: the ids of its steps, and how many builds it lists. Runs in the browser. */
const seen = () => ({
  steps: [...document.querySelectorAll<HTMLElement>('article.step')]
    .filter((step) => !step.hidden)
    .map((step) => step.id),
  builds: document.querySelectorAll('.plans > li').length,
  tap: [...document.querySelectorAll<HTMLElement>('table.gather tr')].some(
    (row) => row.textContent?.includes('Thread tap') && !row.hidden,
  ),
  found: document.querySelector('[data-evidence-of="look inspection thread"] .found')?.textContent,
});
const find = (outcome: string) =>
  document.querySelector<HTMLInputElement>(`input[data-inspection=thread][value=${outcome}]`)?.click();

const everyWay = ['bolt-out', 'look', 'ask', 'clean-thread', 'bolt-in'];

describe('an inspection with three outcomes in a guide of four options', () => {
  it('leaves the builds as many, shows every way until it is found, and then that one, also on the print', async () => {
    const { page, faults } = await open(site.browser, site.folder, path, { hash });
    expect(await page.evaluate(seen)).toEqual({ steps: everyWay, builds: 16, tap: true, found: '' });
    await page.evaluate(find, 'clean');
    expect(await page.evaluate(seen)).toMatchObject({ steps: ['bolt-out', 'look', 'bolt-in'], tap: false });
    await page.getByLabel(/^Done: Look at the thread/).check();
    await page.evaluate(find, 'worn-out');
    expect((await page.evaluate(seen)).steps).toEqual(['bolt-out', 'look', 'ask']);
    await page.reload();
    expect(await page.evaluate(seen)).toEqual({
      steps: ['bolt-out', 'look', 'ask'],
      builds: 16,
      tap: false,
      found: 'worn out',
    });
    await page.emulateMedia({ media: 'print' });
    expect(await page.locator('#clean-thread').isVisible()).toBe(false);
    expect(await page.locator('#ask').textContent()).toContain('The job ends here.');
    expect(faults).toEqual([]);
    await page.context().close();
  });

  it.runIf(long)('does the same in Firefox', async () => {
    const firefox = await firefoxOfWorker();
    const page = await firefox.newPage();
    await page.goto(new URL(`file://${resolve(site.folder, path)}`).href + hash);
    expect(await page.evaluate(seen)).toEqual({ steps: everyWay, builds: 16, tap: true, found: '' });
    await page.evaluate(find, 'rusty');
    expect(await page.evaluate(seen)).toEqual({
      steps: ['bolt-out', 'look', 'clean-thread', 'bolt-in'],
      builds: 16,
      tap: true,
      found: 'rusty',
    });
    await page.close();
  });
});
