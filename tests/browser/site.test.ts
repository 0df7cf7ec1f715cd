import { execFileSync } from 'node:child_process';
import { join } from 'node:path';
import type { Locator } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { long, sampleOf, screens } from '../samples.ts';
import { files, inspection } from '../site/workspace.ts';
import { axeFaults } from './axe.ts';
import { open } from './browser.ts';
import { lowTargets } from './low-targets.ts';
import { siteForTests } from './site-for-tests.ts';

const guide = 'guides/lamp-cradle/index.html';
const pages = ['index.html', 'platforms/larkspur-dray/index.html', guide];

/** What can be read of an element now, without what is hidden. */
const words = async (locator: Locator) => (await locator.allInnerTexts()).join('\n');

const site = siteForTests(() => [inspection(), files()]);

describe('every page, from file:// in a nested folder with spaces', () => {
  // The others' like is looked at on the demo.
  it.each(long ? pages : [guide])(
    '%s asks no host, breaks no policy, says nothing to the console and does not scroll sideways at 320 px',
    async (path) => {
      const viewport = { width: 320, height: 640 };
      const { page, faults } = await open(site.browser, site.folder, path, { viewport });
      expect(await page.locator('h1').count()).toBe(1);
      expect(await page.evaluate('document.documentElement.scrollWidth - innerWidth')).toBe(0);
      await page.context().close();
      expect(faults).toEqual([]);
    },
  );

  for (const path of pages) {
    const looks = screens(390, 1280);
    // In each run a page has its turn in one scheme; in the other one the guide is seen in the bay.
    const at = Math.min(pages.indexOf(path), 1);
    const turn = long ? looks : looks.slice(at, at + 1);
    for (const [colorScheme, width] of turn) {
      it(`${path} is clean by axe, ${colorScheme}, ${width} px`, async () => {
        const viewport = { width, height: 844 };
        const { page } = await open(site.browser, site.folder, path, { colorScheme, viewport });
        const faults = await axeFaults(page);
        await page.context().close();
        expect(faults).toEqual([]);
      });
    }
  }
});

describe('the pick of a build', () => {
  it('hides what is for other builds, renumbers the steps and keeps the pick in the link', async () => {
    const { page, faults } = await open(site.browser, site.folder, guide);
    const step = page.locator('#fog-aim');
    const number = page.locator('#cut-notch .step-number');
    await page.locator('.bay-fold', { hasText: 'Hands-on' }).click();
    expect(await step.isVisible()).toBe(true);
    expect(await words(number)).toMatch(/4$/);

    await page.getByRole('radio', { name: 'No' }).check();
    expect(await step.isVisible()).toBe(false);
    expect(await words(number)).toMatch(/3$/);
    expect(await page.locator('a[href="#cut-notch"] [data-step]').allInnerTexts()).toEqual(
      expect.arrayContaining(['3']),
    );
    expect(await words(page.locator('#at_a_glance ~ table tr').first())).toMatch(
      /24–\u206045\smin, likely 32\smin/,
    );
    expect(await page.locator('.only:visible').count()).toBe(0);
    expect(page.url()).toMatch(/#build=fog:no$/);

    await page.getByRole('radio', { name: 'Yes' }).check();
    expect(await step.isVisible()).toBe(true);
    expect(await words(page.locator('#at_a_glance ~ table tr').first())).toMatch(
      /26–\u206047\smin, likely 34\smin/,
    );

    await page.getByRole('button', { name: 'Show every build' }).click();
    expect(await page.locator('.only:visible').count()).toBeGreaterThan(3);
    expect(page.url()).not.toContain('build=');
    await page.context().close();
    expect(faults).toEqual([]);
  });

  it('comes back with the link, and stays when a link on the page is followed', async () => {
    const { page } = await open(site.browser, site.folder, guide, { hash: '#build=fog:no&at=hang' });
    expect(await page.locator('#fog-aim').isVisible()).toBe(false);
    expect(await page.getByRole('radio', { name: 'No' }).isChecked()).toBe(true);
    expect((await page.locator('#hang').boundingBox())?.y).toBeLessThan(844);
    await page.locator('#hang a[href="#cut-notch"]').click();
    await page.waitForURL(/build=fog:no&at=cut-notch$/);
    expect(await page.locator('#fog-aim').isVisible()).toBe(false);
    await page.context().close();
  });

  const links = [
    ['#build=fog:purple', 'knows no vehicle that is built like this'],
    ['#build=', 'All builds are shown'],
    ['#build=%E0%A4%A,:::,fog', 'All builds are shown'],
    ['#build=doors:four', 'Make a choice in each line'],
  ] as const;
  it.each(sampleOf(links, 2))(
    'says so where the link names no build of this guide: %s',
    async (hash, said) => {
      const { page, faults } = await open(site.browser, site.folder, guide, { hash });
      expect(await words(page.locator('.pick-state'))).toContain(said);
      expect(await page.locator('#fog-aim').isVisible()).toBe(true);
      await page.context().close();
      expect(faults).toEqual([]);
    },
  );

  it('can be made with the keyboard alone, with the focus in sight', async () => {
    const { page } = await open(site.browser, site.folder, guide);
    await page.keyboard.press('Tab');
    expect(await words(page.locator(':focus'))).toBe('To the content');
    await page.locator('.choices input').first().focus();
    await page.keyboard.press('Space');
    await page.waitForURL(/#build=fog:yes$/);
    const outline = await page.evaluate(
      'getComputedStyle(document.querySelector(".choices label")).outlineWidth',
    );
    expect(outline).toBe('3px');
    await page.context().close();
  });

  it('gives every control a target of at least 56 px', async () => {
    const { page } = await open(site.browser, site.folder, guide);
    for (const fold of await page.locator('.bay-fold').all()) await fold.click();
    const controls = page.locator(
      'label:visible, button:visible, summary:visible, .gather a, .files a, .home, .reading',
    );
    expect(await controls.count()).toBeGreaterThan(10);
    expect(await lowTargets(controls)).toEqual([]);
    await page.context().close();
  });
});

describe('with scripts off', () => {
  it('the page shows every build, says in words what is for which, and offers no dead control', async () => {
    const { page } = await open(site.browser, site.folder, guide, { javaScriptEnabled: false });
    expect(await page.locator('.pick').isVisible()).toBe(false);
    expect(await page.locator(':is(.bay, .bay-turn, .bay-ticks):visible').count()).toBe(0);
    expect(await page.locator('#fog-aim').isVisible()).toBe(true);
    expect(await words(page.locator('#fog-aim .only'))).toBe('Only with front fog lamps');
    expect(await words(page.locator('#cover-off'))).toContain('[with front fog lamps: Reach behind');
    expect(await words(page.locator('.plans'))).toMatch(/with front fog lamps\s+without front fog lamps/i);
    await page.context().close();
  });
});

describe('the print', () => {
  it('holds the chosen build alone, without notes for trainees, and names guide and page at each foot', async () => {
    const { page } = await open(site.browser, site.folder, guide, {
      hash: '#build=fog:no',
      colorScheme: 'dark',
    });
    const file = join(site.top, 'job.pdf');
    await page.pdf({ path: file, format: 'A4', preferCSSPageSize: true });
    await page.context().close();
    const text = execFileSync('pdftotext', ['-layout', file, '-'], { encoding: 'utf8' });
    const sheets = text.split('\f').slice(0, -1);
    expect(text).toMatch(/without front fog lamps/i);
    expect(text).not.toContain('Note where the fog lamps point');
    expect(text).not.toContain('the one that gets forgotten');
    for (const sheet of ['Torque log', 'Count sheet', 'Done and checked', 'Bag labels'])
      expect(text).toContain(sheet);
    sheets.forEach((sheet, index) => {
      expect(sheet).toContain(`Page ${index + 1} of ${sheets.length}`);
      expect(sheet).toContain('revision 3');
    });
  });

  it('prints on white, dark theme or not', async () => {
    const { page } = await open(site.browser, site.folder, guide, { colorScheme: 'dark' });
    await page.emulateMedia({ media: 'print', colorScheme: 'dark' });
    const colours = await page.evaluate(
      '(({ backgroundColor, color }) => ({ backgroundColor, color }))(getComputedStyle(document.body))',
    );
    await page.context().close();
    expect(colours).toEqual({ backgroundColor: 'rgb(255, 255, 255)', color: 'rgb(0, 0, 0)' });
  });

  const papers = [
    ['A4', 210],
    ['Letter', 215.9],
  ] as const;
  it.each(sampleOf(papers, 1))(
    'has nothing wider than the sheet, so that no browser shrinks it, and does not tear a step from its picture: %s',
    async (format, millimetres) => {
      // The page's content width: the sheet less 15 mm margins, at 96 px an inch.
      const width = Math.floor(((millimetres - 30) / 25.4) * 96);
      const { page } = await open(site.browser, site.folder, guide, { viewport: { width, height: 1000 } });
      await page.emulateMedia({ media: 'print' });
      const wide = await page.evaluate(`[...document.querySelectorAll('body *')]
        .filter((element) => element.getBoundingClientRect().right > innerWidth + 0.5)
        .map((element) => element.outerHTML.slice(0, 80))`);
      expect(wide).toEqual([]);
      const file = join(site.top, `${format}.pdf`);
      await page.emulateMedia({ media: null });
      await page.pdf({ path: file, format, preferCSSPageSize: false });
      await page.context().close();
      // Shrunk pages have smaller letters: the title is set at 10.5 pt × 1.9.
      const boxes = execFileSync('pdftotext', ['-bbox-layout', '-f', '1', '-l', '1', file, '-'], {
        encoding: 'utf8',
      });
      const line =
        /<line xMin="([\d.]+)" yMin="([\d.]+)" xMax="([\d.]+)" yMax="([\d.]+)">\s*<word[^>]*>Auxiliary</.exec(
          boxes,
        );
      const height = Number(line?.[4]) - Number(line?.[2]);
      expect(height / (10.5 * 1.9)).toBeGreaterThan(0.9);
      expect(Number(line?.[3])).toBeLessThanOrEqual((millimetres / 25.4) * 72 - 40);
      const sheets = execFileSync('pdftotext', ['-layout', file, '-'], { encoding: 'utf8' }).split('\f');
      const sheetOf = (words: RegExp) => sheets.findIndex((sheet) => words.test(sheet));
      // The contents name it too, behind the name of its section.
      const step = sheetOf(/^\s*1\s+Free the arch edge/m);
      expect(step).toBeGreaterThan(0);
      expect(sheetOf(/Where the lever goes in/)).toBe(step);
    },
  );
});
