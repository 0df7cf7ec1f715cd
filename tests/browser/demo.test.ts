import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { beforeAll, describe, expect, it } from 'vitest';
import { htmlFaults } from '../html-faults.ts';
import { long, sampleOf } from '../samples.ts';
import { axeFaults } from './axe.ts';
import { open } from './browser.ts';
import { dialogByKeys, partedNumbers, stopsByKeys } from './by-keys.ts';
import { firstScreens } from './first-screens.ts';
import { demoForTests } from './site-for-tests.ts';

const site = demoForTests();

let pages: readonly string[];

beforeAll(async () => {
  const all = await readdir(site.folder, { recursive: true });
  pages = all.filter((path) => path.endsWith('.html')).sort();
});

/** The pages of one kind are laid out alike: the first stands for all, and some guides for the guides. */
function sample(): readonly string[] {
  const kinds = ['tools/', 'fasteners/', 'platforms/', 'visits/'];
  const alike = (path: string) => kinds.find((kind) => path.startsWith(kind));
  const cards = pages.filter((path) => path.endsWith('/cards.html'));
  const firsts = kinds.map((kind) => pages.find((path) => path.startsWith(kind) && !cards.includes(path)));
  const inPages = pages.filter((path) => /^guides\/.+\/index\.html$/.test(path));
  const rehearsals = pages.filter((path) => path.endsWith('/rehearsal.html'));
  const inOneFile = pages.filter(
    (path) => path.startsWith('guides/') && ![...inPages, ...rehearsals, ...cards].includes(path),
  );
  // A guide in one file has the page's own content, and files of its own that look at it.
  const guides = [
    ...sampleOf(inPages, 1),
    ...sampleOf([...rehearsals, ...cards], 2),
    ...(long ? inOneFile : []),
  ];
  const handbook = pages.filter((path) => path.startsWith('handbook/'));
  const others = pages.filter((path) => !alike(path) && !/^(?:guides|handbook)\//.test(path));
  const once = firsts.flatMap((path) => path ?? []);
  return long ? pages : [...others, ...once, ...sampleOf(handbook, 1), ...guides];
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

/** Where each step begins, in whole pixels. */
const tops =
  '[...document.querySelectorAll(".step")].map((step) => Math.round(step.getBoundingClientRect().top))';

describe('the demo shop, every page of it', () => {
  it('has pages for its guides and platforms', () => {
    expect(pages.length).toBeGreaterThan(3);
  });

  it('moves by less than 0.05 while it loads, and the first page takes under three screens of a phone', async () => {
    const paths = ['index.html', 'guides/lamp-cradle/index.html'];
    const sizes = [
      { width: 390, height: 844 },
      { width: 1440, height: 900 },
    ];
    for (const viewport of sampleOf(sizes, 1)) {
      const context = await site.browser.newContext({ viewport });
      // How far a page moves is summed up as the Layout Instability specification (W3C) has it.
      await context.addInitScript(`window.moved = 0;
        new PerformanceObserver((list) => { for (const { value } of list.getEntries()) window.moved += value; })
          .observe({ type: 'layout-shift', buffered: true })`);
      for (const path of paths) {
        const page = await context.newPage();
        await page.goto(pathToFileURL(join(site.folder, path)).href);
        await page.waitForTimeout(500);
        expect(await page.evaluate<number>('window.moved'), `${path}, ${viewport.width} px`).toBeLessThan(
          0.05,
        );
        const screens = await page.evaluate<number>('document.documentElement.scrollHeight / innerHeight');
        if (path === 'index.html' && viewport.width === 390) expect(screens).toBeLessThan(3);
      }
      await context.close();
    }
  });

  it.runIf(long)('shows a job sheet that is clean by axe and leads back with a key', async () => {
    const { page } = await open(site.browser, site.folder, 'guides/crash-bar/index.html');
    await page.click('.paper-job');
    expect(await axeFaults(page, '.paper-view')).toEqual([]);
    await page.keyboard.press('Escape');
    expect(await page.locator('main').isVisible()).toBe(true);
    await page.context().close();
  });

  it('is valid HTML (html-validate, recommended and a11y)', async () => {
    expect(
      await on(sample(), async (path) => htmlFaults(await readFile(join(site.folder, path), 'utf8'))),
    ).toEqual([]);
  });

  it('says nothing to the console, asks no host, shows every picture, fits a phone of 320 px and the printed sheet', async () => {
    const found = await on(sample(), async (path) => {
      const { page, faults } = await open(site.browser, site.folder, path, {
        viewport: { width: 320, height: 640 },
      });
      const missing = await page.evaluate<string[]>(
        `(async () => {
          const images = [...document.images];
          for (const image of images) image.loading = 'eager';
          await Promise.all(images.map((image) => image.decode().catch(() => {})));
          return images.filter((image) => image.naturalWidth === 0).map((image) => image.src);
        })()`,
      );
      const wide = await page.evaluate<string[]>(overTheEdge);
      await page.setViewportSize({ width: 680, height: 1000 });
      await page.emulateMedia({ media: 'print' });
      const printed = await page.evaluate<string[]>(overTheEdge);
      await page.context().close();
      return [...faults, ...missing, ...wide, ...printed];
    });
    expect(found).toEqual([]);
  });

  it('is laid out, and can be worked with, before any picture has come', async () => {
    const all = pages.filter((path) => /^guides\/.*index\.html$/.test(path));
    const guides = sampleOf(all, 2);
    const shifts = await on(guides, async (path) => {
      const context = await site.browser.newContext({ viewport: { width: 390, height: 844 } });
      const page = await context.newPage();
      const held: (() => Promise<void>)[] = [];
      await page.route('**/pictures/**', (route) => {
        held.push(() => route.continue());
      });
      await page.goto(pathToFileURL(join(site.folder, path)).href, { waitUntil: 'domcontentloaded' });
      await page.locator('.bay-tick input').first().check();
      const before = await page.evaluate<number[]>(tops);
      for (const release of held) await release();
      await page.waitForLoadState('load');
      await page.waitForFunction('[...document.images].every((image) => image.complete)');
      const after = await page.evaluate<number[]>(tops);
      await context.close();
      if (held.length === 0) return ['no picture was held back'];
      return after.flatMap((top, index) => (top === before[index] ? [] : [`step ${index + 1} moved`]));
    });
    expect(shifts).toEqual([]);
  });

  const devices = [
    ['a phone', 390, 844, 2],
    ['a phone that lies', 844, 390, 1],
    ['a tablet', 820, 1180, 1],
  ] as const;
  it.each(sampleOf(devices, 2))(
    'shows on %s, %i by %i px, title, first action and Done of a step without scrolling',
    async (_, width, height, few) => {
      const all = pages.filter((path) => /^guides\/.*index\.html$/.test(path));
      const guides = long ? all : sampleOf(all, 2).slice(-few);
      const screens: (Awaited<ReturnType<typeof firstScreens>>[number] & { readonly path: string })[] = [];
      for (const path of guides) {
        const { page, faults } = await open(site.browser, site.folder, path, { viewport: { width, height } });
        const found = await firstScreens(page);
        await page.context().close();
        expect(faults).toEqual([]);
        screens.push(...found.map((screen) => ({ ...screen, path })));
      }
      expect(screens.length).toBeGreaterThan(10 * guides.length);
      const lacking = screens.filter(({ title, action, done }) => !title || !action || !done);
      expect(1 - lacking.length / screens.length, JSON.stringify(lacking, null, 1)).toBeGreaterThanOrEqual(
        0.95,
      );
      const alike = screens.filter(({ path, words }, index) => {
        const before = screens[index - 1];
        return before?.path === path && before.words === words;
      });
      expect(alike).toEqual([]);
    },
  );

  const looks = [
    ['light', 390],
    ['dark', 390],
    ['dark', 1280],
    ['light', 1280],
  ] as const;
  it.each(sampleOf(looks, 2))(
    'is clean by axe with everything unfolded, %s and %i px wide',
    async (colorScheme, width) => {
      // In each run those kinds that no other file looks at like this, in turn.
      const kind = width === 390 ? 'guides/' : 'handbook/f';
      const turn = pages.filter((path) => path.startsWith(kind)).slice(0, 1);
      // A guide in one file has the page's own content.
      const paths = long ? pages.filter((path) => !/^guides\/(.+)\/\1\.html$/.test(path)) : turn;
      expect(paths.length).toBeGreaterThan(0);
      expect(await on(paths, (path) => violations(path, colorScheme, width))).toEqual([]);
    },
  );
});

describe.runIf(long)('by keys alone', () => {
  const guide = 'guides/lamp-cradle/index.html';

  it.each([
    ['index.html', null],
    ['platforms/larkspur-dray/index.html', null],
    [guide, null],
    [guide, '.bay-one'],
    ['visits/vent-and-awning/index.html', null],
    ['guides/lamp-cradle/rehearsal.html', null],
    ['records.html', null],
  ] as const)(
    'nothing is out of sight at 1280 by 1024 px and four times the size: %s %s',
    async (path, first) => {
      const { page } = await open(site.browser, site.folder, path, { viewport: { width: 320, height: 256 } });
      if (first) await page.click(first);
      const { stops, lost } = await stopsByKeys(page);
      expect(lost).toEqual([]);
      expect(stops).toBeGreaterThan(2);
      expect(await page.evaluate('document.documentElement.scrollWidth - innerWidth')).toBeLessThanOrEqual(0);
      await page.context().close();
    },
  );

  it.each(['light', 'dark'] as const)(
    'each dialog is opened, gone through and left, %s',
    async (colorScheme) => {
      const { page } = await open(site.browser, site.folder, guide, { colorScheme });
      const found: string[] = [];
      const tryOut = async (opener: string) =>
        found.push(...(await dialogByKeys(page, opener, () => axeFaults(page, 'dialog[open]'))));
      await tryOut('.map-open');
      await tryOut('.step .place');
      await page.focus('.bay-one');
      await page.keyboard.press('Enter');
      await tryOut('.bay-all');
      // From anywhere any step is two keys away: the list, and its line.
      await page.keyboard.press('Enter');
      await page.locator('.bay-list .bay-line', { hasText: 'Get at the battery' }).press('Enter');
      expect(await page.locator('.step :focus').textContent()).toContain('Get at');
      await page.locator('.bay-next').press('Enter');
      await tryOut('.bay-where');
      await tryOut('.step:not(.elsewhere) a.item:visible');
      expect(found).toEqual([]);
      await page.context().close();
    },
  );
});

describe('what a technician meets first on a phone', () => {
  const templates = ['flush-sensors', 'side-awning', 'lamp-cradle', 'roof-vent', 'switch-panel'];
  it.each(sampleOf(templates, 1))(
    'every letter of a template is read, whole or enlarged by a touch: %s',
    async (id) => {
      const { page, faults } = await open(site.browser, site.folder, `guides/${id}/index.html`);
      const least = (drawing: Element) => {
        const letters = [...drawing.querySelectorAll('text')].map((text) =>
          Number(text.getAttribute('font-size')),
        );
        return Math.min(...letters) * (drawing.querySelector('svg')?.getScreenCTM()?.a ?? 0);
      };
      for (const drawing of await page.locator('.plate.drawing:visible').all()) {
        const turn = drawing.locator('+ .large-turn');
        if (await turn.isVisible()) await turn.click();
        expect(await drawing.evaluate(least)).toBeGreaterThan(9);
      }
      expect(await page.evaluate('document.documentElement.scrollWidth - innerWidth')).toBe(0);
      expect(faults).toEqual([]);
      if (long) expect(await axeFaults(page, '.template')).toEqual([]);
      await page.context().close();
    },
  );

  it.runIf(long)('no number stands apart from its unit, at any width', async () => {
    const guides = pages.filter((path) => /^guides\/.*index\.html$/.test(path));
    const parted = await on(guides, async (path) => {
      const { page } = await open(site.browser, site.folder, path);
      const found: string[] = [];
      for (const width of [360, 390, 430, 820]) {
        await page.setViewportSize({ width, height: 844 });
        found.push(...(await page.evaluate<string[]>(partedNumbers)));
      }
      await page.context().close();
      return found;
    });
    expect(parted).toEqual([]);
  });

  it.runIf(long)('the first step of the longest guide begins within five screens', async () => {
    const { page } = await open(site.browser, site.folder, 'guides/lamp-cradle/index.html');
    const [first = Number.NaN] = await page.evaluate<number[]>(tops);
    expect(first).toBeLessThan(5 * 844);
    await page.context().close();
  });
});

/** What axe-core finds on a page with everything unfolded. */
async function violations(
  path: string,
  colorScheme: 'light' | 'dark',
  width: number,
): Promise<readonly string[]> {
  const { page } = await open(site.browser, site.folder, path, {
    colorScheme,
    viewport: { width, height: 844 },
  });
  await page.evaluate("document.querySelectorAll('details').forEach((one) => { one.open = true; })");
  const found = await axeFaults(page);
  await page.context().close();
  return found;
}
