import { copyFile, mkdir } from 'node:fs/promises';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { beforeAll, describe, expect, it } from 'vitest';
import { files, inspection } from '../site/workspace.ts';
import { firefoxSiteForTests } from './site-for-tests.ts';

const site = firefoxSiteForTests(() => [inspection(), files()]);

beforeAll(async () => {
  await mkdir(join(site.top, 'received files'));
  await copyFile(
    join(site.folder, 'guides/lamp-cradle/lamp-cradle.html'),
    join(site.top, 'received files/lamp-cradle.html'),
  );
});

describe('Firefox, from file://', () => {
  it.each(['a stick/our guides/guides/lamp-cradle/index.html', 'received files/lamp-cradle.html'])(
    'keeps ticks and readings through a reload, and shows the pictures: %s',
    async (path) => {
      // Whether two files share a store differs between Firefox's settings, so each has a profile of its own.
      const context = await site.browser.createBrowserContext();
      const page = await context.newPage();
      const asked: string[] = [];
      page.on('request', (request) => asked.push(request.url()));
      await page.goto(pathToFileURL(join(site.top, path)).href);
      await page.waitForSelector('#arch .bay-tick input');
      await page.click('#arch .bay-tick input');
      await page.type('.readings input', '212');
      await page.click('#need .bay-box input');
      await page.click('.prove .bay-box input');
      await page.click('.pick input[value="no"]');
      // The build is in the progress too: a link that names none leads back to it.
      await page.goto('about:blank');
      await page.goto(pathToFileURL(join(site.top, path)).href);
      await page.waitForSelector('#arch.step .bay-tick input:checked');
      expect(
        await page.evaluate(`({
          boxes: [...document.querySelectorAll('#arch .bay-tick input')].map((box) => box.checked),
          lines: document.querySelectorAll('.bay-box :checked').length,
          build: location.hash,
          reading: document.querySelector('.readings input').value,
          pictures: [...document.images].map((image) => image.naturalWidth > 0),
        })`),
      ).toEqual({
        boxes: [true, false],
        lines: 2,
        build: '#build=fog:no',
        reading: '212',
        pictures: expect.arrayContaining([true]),
      });
      expect(asked.filter((url) => !/^(?:file|data|about):/.test(url))).toEqual([]);
      if (path.startsWith('received')) {
        expect(new Set(asked.filter((url) => url.startsWith('file:'))).size).toBeLessThanOrEqual(1);
      }
      await context.close();
    },
  );
});
