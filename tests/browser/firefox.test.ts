import { execFileSync } from 'node:child_process';
import { copyFile, mkdir } from 'node:fs/promises';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { beforeAll, describe, expect, it } from 'vitest';
import { shortFingerprint } from '../../src/pages/frame/identity.ts';
import { long, sampleOf } from '../samples.ts';
import { files, inspection } from '../site/workspace.ts';
import { expectFeet, expectSound, jobSheetOf, printInFirefox } from './job-sheet.ts';
import { guideData } from './printing.ts';
import { papers, textOf } from './sheets.ts';
import { demoForTests, firefoxSiteForTests } from './site-for-tests.ts';

/** What a page tells of itself, worked out in the page. */
const facts = `({
  paper: getComputedStyle(document.body).backgroundColor,
  fog: getComputedStyle(document.getElementById('fog-aim')).display,
  pictures: [...document.images].map((image) => image.naturalWidth > 0),
  over: document.documentElement.scrollWidth - document.documentElement.clientWidth,
})`;

const site = firefoxSiteForTests(() => [inspection(), files()]);
beforeAll(async () => {
  await mkdir(join(site.top, 'received files'));
  await copyFile(
    join(site.folder, 'guides/lamp-cradle/lamp-cradle.html'),
    join(site.top, 'received files/lamp-cradle.html'),
  );
});

describe('a guide in Firefox, from file://', () => {
  it('has its styles, pictures and script under its own policy, and keeps the pick in the link', async () => {
    const page = await site.browser.newPage();
    await page.setViewport({ width: 390, height: 844 });
    const address = pathToFileURL(join(site.folder, 'guides', 'lamp-cradle', 'index.html')).href;
    await page.goto(`${address}#build=fog:no`);
    await page.waitForSelector('[data-plan="1"]');
    expect(await page.evaluate(facts)).toEqual({
      paper: 'rgb(252, 251, 248)',
      fog: 'none',
      pictures: [true],
      over: 0,
    });
    await page.click('input[value="yes"]');
    await page.waitForSelector('[data-plan="0"]');
    expect(await page.evaluate('location.hash')).toBe('#build=fog:yes');
    expect(await page.evaluate(facts)).toMatchObject({ fog: 'block' });
    await page.close();
  });
});

describe('Firefox, from file://', () => {
  const places = ['received files/lamp-cradle.html', 'a stick/our guides/guides/lamp-cradle/index.html'];
  it.each(sampleOf(places, 1))(
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
      await page.click('#need .bay-fold');
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

/** The heads within the list of what is laid out first, which is longer than a sheet. */
const groups = ['To wear', 'Tools', 'Supplies', 'From the box'];

describe.runIf(long)('the job sheet', () => {
  const press = demoForTests();

  it.each(papers)(
    'prints as it was filled on the paper that is asked for, each sheet with its foot, as in Chromium: $format',
    async (paper) => {
      const name = 'lamp-cradle';
      const data = await guideData(press, name);
      const file = join(press.top, `job ${name}.pdf`);
      const { count } = await jobSheetOf(press, press, name, paper, file);
      expect(expectFeet(file, data)).toBe(count);
      const size = paper.format === 'A4' ? /59[45]\S* x 84\S* pts/ : /612 x 792 pts/;
      expect(execFileSync('pdfinfo', [file], { encoding: 'utf8' })).toMatch(size);
      const { sheet, job, whole } = await printInFirefox(site.browser, press, name, paper);
      expectSound(sheet, name);
      expect(expectFeet(job, data)).toBe(sheet.count);
      expect(sheet.count).toBe(count);
      const identity = new RegExp(
        `${data.title}.*Revision ${data.revision}.*Fingerprint ${shortFingerprint(data.fingerprint).replace(/\s/g, ' ')}.*Build: \\S.*(?:Vehicle registration or VIN|Hull number): _+`,
      );
      const sheets = textOf(whole).map((text) => text.replace(/\s+/g, ' ').trim());
      expect(sheets.length).toBeGreaterThan(5);
      for (const text of sheets) expect(text.slice(-300)).toMatch(identity);
      // The last thing above the foot is never the heading of what follows.
      const headings = new Set([...data.sections.map(({ title }) => title), ...groups]);
      const last = sheets.map((text) => text.replace(identity, '').trim());
      // Nor does the key of the signal words stand on a sheet alone: the messages are above it, or the list below.
      const key = last.find((text) => text.includes('NOTICE could damage'));
      expect(key).toMatch(/Safety first|What you need/);
      for (const text of last)
        for (const title of headings) expect(text.endsWith(title), text.slice(-80)).toBe(false);
    },
  );
});
