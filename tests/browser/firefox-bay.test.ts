import { existsSync } from 'node:fs';
import { copyFile, mkdir, mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import puppeteer, { type Browser } from 'puppeteer-core';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { buildSite } from '../../src/site/build-site.ts';
import { files, inspection } from '../site/workspace.ts';

// A browser on a busy machine takes its time; nothing here is about speed.
vi.setConfig({ testTimeout: 120_000, hookTimeout: 120_000 });

let browser: Browser;
let top: string;

beforeAll(async () => {
  top = await mkdtemp(join(tmpdir(), 'baybook '));
  const outcome = await buildSite(inspection(), files(), join(top, 'a stick'));
  if (!outcome.ok) throw new Error(outcome.problems.join('\n'));
  await mkdir(join(top, 'received files'));
  await copyFile(
    join(top, 'a stick/guides/lamp-cradle/lamp-cradle.html'),
    join(top, 'received files/lamp-cradle.html'),
  );
  const executablePath = process.env.FIREFOX ?? '/usr/bin/firefox-esr';
  if (!existsSync(executablePath)) {
    throw new Error('no Firefox: install the Debian package "firefox-esr" or set FIREFOX');
  }
  browser = await puppeteer.launch({ browser: 'firefox', executablePath, headless: true });
});

afterAll(async () => {
  await browser.close();
  await rm(top, { recursive: true, force: true });
});

describe('Firefox, from file://', () => {
  it.each(['a stick/guides/lamp-cradle/index.html', 'received files/lamp-cradle.html'])(
    'keeps ticks and readings through a reload, and shows the pictures: %s',
    async (path) => {
      // Whether two files share a store differs between Firefox's settings, so each has a profile of its own.
      const context = await browser.createBrowserContext();
      const page = await context.newPage();
      const asked: string[] = [];
      page.on('request', (request) => asked.push(request.url()));
      await page.goto(pathToFileURL(join(top, path)).href);
      await page.waitForSelector('#arch .bay-tick input');
      await page.click('#arch .bay-tick input');
      await page.type('.readings input', '212');
      await page.reload();
      await page.waitForSelector('#arch.step .bay-tick input:checked');
      expect(
        await page.evaluate(`({
          boxes: [...document.querySelectorAll('#arch .bay-tick input')].map((box) => box.checked),
          reading: document.querySelector('.readings input').value,
          pictures: [...document.images].map((image) => image.naturalWidth > 0),
        })`),
      ).toEqual({
        boxes: [true, false],
        reading: '212',
        pictures: expect.arrayContaining([true]),
      });
      expect(asked.filter((url) => !/^(?:file|data):/.test(url))).toEqual([]);
      if (path.startsWith('received')) {
        expect(new Set(asked.filter((url) => url.startsWith('file:'))).size).toBeLessThanOrEqual(1);
      }
      await context.close();
    },
  );
});
