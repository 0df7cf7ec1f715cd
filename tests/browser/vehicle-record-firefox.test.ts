import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { ElementHandle } from 'puppeteer-core';
import { expect, it, onTestFinished, vi } from 'vitest';
import { long } from '../samples.ts';
import { firefoxOfWorker } from './browser.ts';
import { startHost } from './host.ts';
import { vehicleSite } from './vehicle-site.ts';

// A browser on a busy machine takes its time; nothing here is about speed.
vi.setConfig({ testTimeout: 240_000, hookTimeout: 240_000 });

it.runIf(long).each(['file', 'http'] as const)(
  'the record of a vehicle keeps photographs and readings through a reload in Firefox, over %s',
  async (scheme) => {
    const top = await mkdtemp(join(tmpdir(), 'baybook '));
    onTestFinished(() => rm(top, { recursive: true, force: true }));
    const { folder, photograph } = await vehicleSite(top);
    const host = await startHost(folder);
    onTestFinished(() => host.stop());
    const path = 'guides/module/index.html';
    const address = scheme === 'file' ? pathToFileURL(join(folder, path)).href : host.address + path;
    const context = await (await firefoxOfWorker()).createBrowserContext();
    onTestFinished(() => context.close());
    const page = await context.newPage();
    const faults: string[] = [];
    page.on('pageerror', (error) => faults.push(String(error)));
    await page.goto(address);
    await page.click('.vehicle-ask');
    await page.waitForSelector('.vehicle-body button');
    await page.click('.vehicle-body button');
    const name = '.vehicle-line input';
    await page.waitForSelector(name);
    await page.type(name, 'RB 16');
    const input = await page.waitForSelector('#fit-modules .vehicle-take input');
    await (input as ElementHandle<HTMLInputElement>).uploadFile(photograph);
    await page.waitForSelector('#fit-modules canvas[data-drawn]');
    await page.click('#bolt .bay-tick input');
    await page.reload();
    await page.waitForSelector('#fit-modules canvas[data-drawn]');
    expect(
      await page.evaluate(`({
        name: document.querySelector('.vehicle-open-record h3').textContent,
        ticked: document.querySelector('#bolt .bay-tick input').checked,
        evidence: document.querySelector('#fit-modules .bay-box input').checked,
        problem: document.querySelector('.vehicle-problem').textContent,
      })`),
    ).toEqual({ name: 'RB 16', ticked: true, evidence: true, problem: '' });
    expect(faults).toEqual([]);
  },
);
