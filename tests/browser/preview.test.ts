import type { Browser } from 'playwright-core';
import { beforeAll, expect, it, vi } from 'vitest';
import { openPreview } from '../preview/open-preview.ts';
import { long } from '../samples.ts';
import { chromiumOfWorker, firefoxOfWorker } from './browser.ts';

// A browser on a busy machine takes its time; nothing here is about speed.
vi.setConfig({ testTimeout: 240_000, hookTimeout: 240_000 });

let browser: Browser;
beforeAll(async () => {
  browser = await chromiumOfWorker();
});

it('reloads a page at the edited step with its build, and shows a fault over it until it is mended', async () => {
  const { preview, change } = await openPreview();
  const page = await browser.newPage({ viewport: { width: 800, height: 600 } });
  const faults: string[] = [];
  page.on('console', (message) => {
    if (message.type() === 'error' || message.type() === 'warning') faults.push(message.text());
  });
  page.on('pageerror', (error) => faults.push(String(error)));
  const address = `http://localhost:${preview.port}/guides/lamp-cradle/index.html`;
  const saved = async (from: string, to: string) => {
    const loaded = page.waitForEvent('load');
    await change('lamp-cradle/guide.md', from, to);
    await loaded;
  };
  await page.goto(`${address}#build=fog:no`, { waitUntil: 'load' });
  await page.waitForSelector('[data-plan="1"]');
  await saved('Hang the cradle', 'Hang the cradle square');
  await page.waitForSelector('#hang >> text=Hang the cradle square');
  const top = () => page.locator('#hang').evaluate((step) => Math.abs(step.getBoundingClientRect().top));
  await expect.poll(top, { timeout: 60_000 }).toBeLessThan(200);
  expect(page.url()).toBe(`${address}#build=fog:no&at=hang`);
  expect(await page.evaluate('document.querySelector("[data-plan=\'1\']") !== null')).toBe(true);

  await change('lamp-cradle/guide.md', ':start[m8-nut]', ':start[m8-nud]');
  const panel = page.locator('#baybook_preview .panel');
  await panel.waitFor();
  expect(await panel.textContent()).toContain('Below is the last good page');
  expect(await panel.textContent()).toContain('likely mend: write m8-nut');
  expect(await panel.evaluate((element) => getComputedStyle(element).position)).toBe('fixed');
  await change('lamp-cradle/guide.md', ':start[m8-nud]', ':start[m8-nut]');
  await panel.waitFor({ state: 'detached' });
  expect(faults).toEqual([]);
  await page.close();
});

it.runIf(long)('follows the pen in Firefox too', async () => {
  const { preview, change } = await openPreview();
  const page = await (await firefoxOfWorker()).newPage();
  try {
    await page.goto(`http://localhost:${preview.port}/guides/lamp-cradle/index.html`, { waitUntil: 'load' });
    const shows = (what: string) =>
      page.waitForFunction(`document.body.innerText.includes(${JSON.stringify(what)})`, { timeout: 120_000 });
    await change('lamp-cradle/guide.md', 'Hang the cradle', 'Hang the cradle level');
    await shows('Hang the cradle level');
    await change('lamp-cradle/guide.md', ':start[m8-nut]', ':start[m8-nud]');
    await page.waitForFunction(
      "document.querySelector('#baybook_preview')?.shadowRoot?.querySelector('.panel')?.textContent.includes('likely mend: write m8-nut')",
      { timeout: 120_000 },
    );
  } finally {
    await page.close();
  }
});
