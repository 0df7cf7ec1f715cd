import { mkdtemp, readdir, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Browser, ElementHandle, Page } from 'puppeteer-core';
import { expect, it, onTestFinished, vi } from 'vitest';
import { long } from '../samples.ts';
import { firefoxOfWorker, startFirefox } from './browser.ts';
import { startHost } from './host.ts';
import { vehicleSite } from './vehicle-site.ts';

// A browser on a busy machine takes its time; nothing here is about speed.
vi.setConfig({ testTimeout: 240_000, hookTimeout: 240_000 });

/** What the page of the guide holds of a record. */
const HELD = `({
  name: document.querySelector('.vehicle-open-record h3').textContent,
  ticked: document.querySelector('#bolt .bay-tick input').checked,
  evidence: document.querySelector('#fit-modules .bay-box input').checked,
  reading: document.querySelector('[data-reading=charge]').value,
  problem: document.querySelector('.vehicle-problem').textContent,
})`;
const held = { name: 'RB 16', ticked: true, evidence: true, reading: '92 %', problem: '' };

/** The guide in a browser by itself, with what goes wrong on its page. */
async function opened(browser: Browser, address: string): Promise<{ page: Page; faults: string[] }> {
  const context = await browser.createBrowserContext();
  onTestFinished(() => context.close());
  const page = await context.newPage();
  const faults: string[] = [];
  page.on('pageerror', (error) => faults.push(String(error)));
  await page.goto(address);
  await page.click('.vehicle-ask');
  await page.waitForSelector('.vehicle-body button');
  return { page, faults };
}

async function choose(page: Page, selector: string, file: string): Promise<void> {
  const input = await page.waitForSelector(selector);
  await (input as ElementHandle<HTMLInputElement>).uploadFile(file);
  await page.waitForSelector('#fit-modules canvas[data-drawn]');
}

it.runIf(long).each(['file', 'http'] as const)(
  'the record of a vehicle outlives a reload in Firefox and goes to another device, over %s',
  async (scheme) => {
    const top = await mkdtemp(join(tmpdir(), 'baybook '));
    onTestFinished(() => rm(top, { recursive: true, force: true }));
    const { folder, photograph } = await vehicleSite(top);
    const host = await startHost(folder);
    onTestFinished(() => host.stop());
    const path = 'guides/module/index.html';
    const address = scheme === 'file' ? pathToFileURL(join(folder, path)).href : host.address + path;
    const downloads = await mkdtemp(join(top, 'downloads '));
    const one = await startFirefox(downloads);
    onTestFinished(() => one.close());
    const { page, faults } = await opened(one, address);
    await page.click('.vehicle-body button');
    await page.waitForSelector('.vehicle-line input');
    await page.type('.vehicle-line input', 'RB 16');
    await choose(page, '#fit-modules .vehicle-take input', photograph);
    await page.click('#bolt .bay-tick input');
    await page.type('[data-reading=charge]', '92 %');
    await page.reload();
    await page.waitForSelector('#fit-modules canvas[data-drawn]');
    expect(await page.evaluate(HELD)).toEqual(held);
    await page.evaluate(
      `[...document.querySelectorAll('.vehicle-open-record button')].find((one) => one.textContent === 'Save as a file').click()`,
    );
    const saved = await vi.waitUntil(
      async () => {
        const names = await readdir(downloads);
        return names.length === 1 && names.find((name) => /^RB-16_module_.*\.json$/.test(name));
      },
      { timeout: 60_000 },
    );

    const other = await opened(await firefoxOfWorker(), address);
    await choose(other.page, '.vehicle-body .vehicle-take input', join(downloads, saved));
    expect(await other.page.evaluate(HELD)).toEqual(held);
    expect([...faults, ...other.faults]).toEqual([]);
  },
);
