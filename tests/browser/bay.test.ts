import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { computeJob } from '../../src/job/compute-job.ts';
import type { Guide } from '../../src/model/guide.ts';
import * as fixture from '../pages/fixture.ts';
import { sampleOf } from '../samples.ts';
import { files, inspection } from '../site/workspace.ts';
import { axeFaults } from './axe.ts';
import { open } from './browser.ts';
import { publish, siteForTests } from './site-for-tests.ts';

const path = 'guides/lamp-cradle/index.html';

const site = siteForTests(() => [inspection(), files()]);
const guide = (options: Parameters<typeof open>[3] = {}) => open(site.browser, site.folder, path, options);

/** The fixture with a later edition, in which the notch is cut otherwise. */
const later: Guide = {
  ...fixture.guide,
  revision: { value: '4', at: fixture.guide.title.at },
  sections: fixture.guide.sections.map((section) => ({
    ...section,
    steps: section.steps.map((step) => (step.id === 'cut-notch' ? { ...step, people: 2 } : step)),
  })),
};

const publishGuide = (edition: Guide) =>
  publish(inspection(edition, {}, computeJob(edition)), files(), site.folder);

const boxes = (page: Page, step: string) => page.locator(`#${step} .bay-tick input`);
const words = async (page: Page, name: string) => (await page.locator(name).textContent()) ?? '';
const stored = '[...Object.entries(localStorage)]';

describe('ticks, readings and torques', () => {
  it('are kept by step and side, under the guide and its fingerprint, and are there after a reload', async () => {
    const { page, faults } = await guide();
    expect(await boxes(page, 'arch').count()).toBe(2);
    await page.getByLabel('Left side done: Free the arch edge').check();
    await boxes(page, 'cover-off').check();
    await page.getByLabel('Ground clearance under the cradle, value found').fill('212 mm');
    await page.getByLabel(/^Torque set: 4 M8 flange nuts/).fill('25');
    await page.reload();
    expect(await boxes(page, 'arch').first().isChecked()).toBe(true);
    expect(await boxes(page, 'arch').last().isChecked()).toBe(false);
    expect(await boxes(page, 'cover-off').isChecked()).toBe(true);
    expect(await page.getByLabel('Ground clearance under the cradle, value found').inputValue()).toBe(
      '212 mm',
    );
    expect(await page.getByLabel(/^Torque set: 4 M8/).inputValue()).toBe('25');
    const keys = await page.evaluate<[string, string][]>(stored);
    expect(keys.map(([key]) => key)).toEqual([`baybook progress lamp-cradle ${fixture.job.fingerprint}`]);
    await boxes(page, 'arch').first().uncheck();
    await page.reload();
    expect(await boxes(page, 'arch').first().isChecked()).toBe(false);
    expect(faults).toEqual([]);
    await page.context().close();
  });

  it('go with the guide: a changed step is named and loses its tick, the rest keeps it', async () => {
    const { page, faults } = await guide();
    await boxes(page, 'arch').first().check();
    await boxes(page, 'cut-notch').check();
    await publishGuide(later);
    await page.reload();
    await publishGuide(fixture.guide);
    const news = await words(page, '.bay-news');
    expect(news).toContain('This guide has changed since you began (then revision 3');
    expect(news).toContain('now revision 4');
    expect(news).toContain('Changed: Cut the notch');
    expect(news).not.toContain('Free the arch edge');
    expect(await boxes(page, 'arch').first().isChecked()).toBe(true);
    expect(await boxes(page, 'cut-notch').isChecked()).toBe(false);
    expect(await words(page, '#cut-notch .bay-changed')).toContain('not as it was when you began');
    await page.getByRole('button', { name: 'I have read the changes' }).click();
    expect(await page.locator('.bay-news').textContent()).toBe('');
    expect(faults).toEqual([]);
    await page.context().close();
  });

  it('are taken to another device as text, with the build that was picked', async () => {
    const one = await guide({ hash: '#build=fog:no' });
    await boxes(one.page, 'arch').last().check();
    await one.page.locator('.bay-move summary').click();
    await one.page.getByRole('button', { name: 'Copy as text' }).click();
    const text = await one.page.getByLabel('The job as text').inputValue();
    await one.page.context().close();

    const other = await guide();
    await other.page.locator('.bay-move summary').click();
    await other.page.getByLabel('The job as text').fill(text);
    await other.page.getByRole('button', { name: 'Take over' }).click();
    expect(await words(other.page, '.bay-said')).toContain('Taken over');
    expect(other.page.url()).toMatch(/#build=fog:no$/);
    expect(await words(other.page, '.bay-news')).toBe('');
    expect(await boxes(other.page, 'arch').last().isChecked()).toBe(true);
    await other.page.getByRole('button', { name: 'Start again' }).click();
    expect(await boxes(other.page, 'arch').last().isChecked()).toBe(true);
    await other.page.getByRole('button', { name: 'Yes, drop all' }).click();
    expect(await boxes(other.page, 'arch').last().isChecked()).toBe(false);
    await other.page.context().close();
  });

  it('say what is wrong with the text of something else, and keep what was ticked', async () => {
    const { page, faults } = await guide();
    await boxes(page, 'arch').first().check();
    await page.locator('.bay-move summary').click();
    for (const [text, said] of [
      ['', 'Put the text of the other device into the field first'],
      ['dinner at 10:30', 'not the text of a job'],
      ['{"form":"Baybook progress 1"}', 'not the text of a job'],
      ['[[[', 'not the text of a job'],
    ] as const) {
      await page.getByLabel('The job as text').fill(text);
      await page.getByRole('button', { name: 'Take over' }).click();
      expect(await words(page, '.bay-said')).toContain(said);
    }
    expect(await boxes(page, 'arch').first().isChecked()).toBe(true);
    expect(faults).toEqual([]);
    await page.context().close();
  });

  it('refuse the text of another guide by its title', async () => {
    const { page } = await guide();
    await page.locator('.bay-move summary').click();
    await page.getByRole('button', { name: 'Copy as text' }).click();
    const own = await page.getByLabel('The job as text').inputValue();
    await page
      .getByLabel('The job as text')
      .fill(own.replace('"guide":"lamp-cradle","title":"Aux', '"guide":"tow-bar","title":"Tow bar, aux'));
    await page.getByRole('button', { name: 'Take over' }).click();
    expect(await words(page, '.bay-said')).toContain('another guide: “Tow bar, aux');
    await page.context().close();
  });
});

describe('a device that keeps nothing', () => {
  const key = `baybook progress lamp-cradle ${fixture.job.fingerprint}`;
  const full =
    'Storage.prototype.setItem = () => { throw new DOMException("no room", "QuotaExceededError"); };';
  const denied =
    'Object.defineProperty(window, "localStorage", { get() { throw new DOMException("no", "SecurityError"); } });';
  const foreign = (text: string) => `localStorage.setItem(${JSON.stringify(key)}, ${JSON.stringify(text)});`;

  const states = [
    ['full', full, 'has no room left', true],
    ['switched off', denied, 'keeps nothing for this page', true],
    ['holding something corrupt', foreign('{"form":"Bayb'), 'cannot be read, so nothing is ticked', false],
    ['holding data of another program', foreign('{"ticks":{"arch":true}}'), 'cannot be read', false],
  ] as const;

  it.each(sampleOf(states, 2))(
    'says so where its storage is %s, and the page works',
    async (_, script, said, stays) => {
      const context = await site.browser.newContext({ viewport: { width: 390, height: 844 } });
      const page = await context.newPage();
      const faults: string[] = [];
      page.on('pageerror', (error) => faults.push(String(error)));
      await page.addInitScript(script);
      await page.goto(`file://${encodeURI(`${site.folder}/${path}`)}`);
      if (!stays) expect(await words(page, '.bay-news')).toContain(said);
      await boxes(page, 'arch').first().check();
      expect(await boxes(page, 'arch').first().isChecked()).toBe(true);
      expect((await words(page, '.bay-news')).includes(said)).toBe(stays);
      await page.getByRole('radio', { name: 'No' }).check();
      expect(await page.locator('#fog-aim').isVisible()).toBe(false);
      expect(faults).toEqual([]);
      await context.close();
    },
  );
});

const namesAndWords = (all: readonly Element[]) => all.map((one) => `${one.tagName} ${one.textContent}`);

describe('the bay screen', () => {
  const next = (page: Page) => page.locator('.bay-next');
  const enter = (page: Page) => page.getByRole('button', { name: 'One step at a time' }).click();

  it('shows each step alone, in order, ticks what is done, and is at the step when the page is opened again', async () => {
    const { page, faults } = await guide({ hash: '#build=fog:no' });
    await enter(page);
    const steps: string[] = [];
    while (await next(page).isEnabled()) {
      const seen = await page.locator('.step:visible').evaluateAll((all) => all.map(({ id }) => id));
      expect(seen.length).toBeLessThanOrEqual(1);
      if (seen[0] !== steps.at(-1)) steps.push(...seen);
      if (steps.at(-1) === 'cut-notch') break;
      await next(page).click();
    }
    expect(steps).toEqual(['arch', 'cover-off', 'cut-notch']);
    const [head, bar] = [await words(page, '.bay-head'), page.locator('.bay-turn')];
    expect(head.replace(/\s+/g, ' ')).toContain('3of 4');
    expect(await bar.getByRole('button').allInnerTexts()).toEqual([
      'Back to Cut',
      'All 4 steps',
      expect.stringMatching(/^Done\. To step 4\s+Hang the cradle$/),
    ]);
    // Whoever listens hears the guide and the section before the step.
    expect(await page.locator('main :is(h1, h2, h3, h4):visible').evaluateAll(namesAndWords)).toEqual([
      `H1 ${fixture.guide.title.value}`,
      'H2 Cut',
      'H3 Cut the notch',
    ]);
    // Another tab, without a place in its link.
    const again = await page.context().newPage();
    await again.goto(page.url().replace(/#.*$/, ''));
    expect(await again.locator('.step:visible').getAttribute('id')).toBe('cut-notch');
    expect(await again.locator('#fog-aim').isVisible()).toBe(false);
    await again.getByRole('button', { name: 'All 4 steps' }).click();
    const lines = await again.locator('.bay-list .bay-line:not(.section)').allInnerTexts();
    expect(lines.map((line) => line.replace(/\s+/g, ' '))).toEqual([
      '1 Free the arch edge ✓ done',
      '2 Draw the cover forward ✓ done',
      '3 Cut the notch you are here',
      '4 Hang the cradle',
    ]);
    await again.locator('.bay-list .bay-line', { hasText: 'Hang the cradle' }).click();
    expect(await again.locator('.step:visible').getAttribute('id')).toBe('hang');
    await again.getByRole('button', { name: 'All 4 steps' }).click();
    await again.getByRole('button', { name: 'The whole guide' }).click();
    expect(await again.locator('.step:visible').count()).toBe(4);
    expect(faults).toEqual([]);
    await page.context().close();
  });

  it('ticks the left side, then the right, before it goes on', async () => {
    const { page } = await guide({ hash: '#arch' });
    await enter(page);
    expect(await next(page).textContent()).toContain('Left side done');
    await next(page).click();
    expect(await page.locator('.step:visible').getAttribute('id')).toBe('arch');
    expect(await next(page).textContent()).toMatch(/^Right side done\. To step 2/);
    await next(page).click();
    expect(await page.locator('.step:visible').getAttribute('id')).toBe('cover-off');
    await page.locator('.bay-back').click();
    expect(await next(page).textContent()).toMatch(/^To step 2/);
    expect(
      await boxes(page, 'arch').evaluateAll((all) => all.map((one) => (one as HTMLInputElement).checked)),
    ).toEqual([true, true]);
    await page.context().close();
  });

  it('opens the facts of an item over the step', async () => {
    const { page } = await guide({ hash: '#arch' });
    await enter(page);
    await page.locator('#arch a.item').first().click();
    const facts = page.locator('.bay-facts');
    expect(await facts.textContent()).toContain('Trim lever');
    await facts.getByRole('button', { name: 'Back to the step' }).click();
    expect(await facts.isVisible()).toBe(false);
    expect(await page.locator('.step:visible').getAttribute('id')).toBe('arch');
    await page.context().close();
  });

  it('follows a link to another step, and prints the whole job', async () => {
    const { page } = await guide();
    await enter(page);
    await page.evaluate('location.hash = "#hang"');
    await page.locator('#hang').waitFor();
    await page.locator('#hang a[href="#cut-notch"]').click();
    await page.locator('#cut-notch').waitFor();
    expect(await page.locator('.step:visible').count()).toBe(1);
    await page.emulateMedia({ media: 'print' });
    expect(await page.locator('.step:visible').count()).toBe(5);
    expect(await page.locator(':is(.bay, .bay-turn, .bay-ticks, .bay-wait):visible').count()).toBe(0);
    await page.context().close();
  });

  it('shows a wait that runs above the other steps', async () => {
    const { page } = await guide({ hash: '#cut-notch' });
    await enter(page);
    await page.getByRole('button', { name: 'Begin the wait' }).click();
    await page.evaluate('location.hash = "#hang"');
    await page.locator('#hang').waitFor();
    expect(await page.locator('.bay-running').textContent()).toMatch(/^Cut the notch: 30\smin left/);
    await page.locator('.bay-running').click();
    expect(await page.locator('.step:visible').getAttribute('id')).toBe('cut-notch');
    await page.context().close();
  });
});

describe('the map of the guide', () => {
  const insight = (page: Page, step: string) =>
    page.locator(`#${step}`).evaluate((element) => {
      const { top } = element.getBoundingClientRect();
      return top >= 0 && top < innerHeight / 2;
    });

  const sizes = [
    ['a phone', 390, 2],
    ['a wide screen', 1024, 1],
  ] as const;
  it.each(sampleOf(sizes, 1))(
    'brings any step into sight on %s (%i px) by %i touches, wherever one is',
    async (_, width, most) => {
      const { page, faults } = await guide({ hash: '#build=fog:no', viewport: { width, height: 844 } });
      await boxes(page, 'cover-off').check();
      const map = page.locator(width < 1024 ? '.map-list' : '.map');
      for (const step of ['hang', 'arch', 'cut-notch', 'cover-off']) {
        let touches = 0;
        const touch = async (name: string) => {
          await (name === 'open' ? page.locator('.map-open') : map.locator(`a[href="#${step}"]`)).click();
          touches += 1;
        };
        if (width < 1024) await touch('open');
        await touch('step');
        expect(touches).toBe(most);
        await expect.poll(() => insight(page, step), { message: step }).toBe(true);
        expect(page.url()).toContain('build=fog:no');
      }
      expect(await map.locator('a[href="#cover-off"]').textContent()).toContain('✓ done');
      expect(await map.locator('a[href="#fog-aim"]').count()).toBe(0);
      expect(await page.evaluate('document.documentElement.scrollWidth - innerWidth')).toBeLessThanOrEqual(0);
      expect(faults).toEqual([]);
      await page.context().close();
    },
  );

  it('has the lists before the work folded to a line each, which a touch or a link opens, and all of them on paper', async () => {
    const { page, faults } = await guide({ hash: '#build=fog:no' });
    const need = page.locator('#need .gather');
    const line = page.locator('#need .bay-fold');
    expect(await need.isVisible()).toBe(false);
    expect(await page.locator('.safety .message').first().isVisible()).toBe(true);
    const things = await page.locator('#need .box input').evaluateAll((all) => {
      return all.filter((box) => box.closest('[hidden=""]') === null).length;
    });
    expect(await line.textContent()).toBe(`${things} things to lay out`);
    await line.click();
    expect(await line.getAttribute('aria-expanded')).toBe('true');
    await page.locator('#need .box input').first().check();
    expect(await line.textContent()).toBe(`${things} things, 1 laid out`);
    await line.click();
    expect(await need.isVisible()).toBe(false);
    // The browser's own search looks in a folded list and opens it, as here for the words of an address.
    const found = await guide({ hash: '#:~:text=Torque%20wrench' });
    await expect.poll(() => found.page.locator('#need .gather').isVisible()).toBe(true);
    expect(await found.page.locator('#need .bay-fold').getAttribute('aria-expanded')).toBe('true');
    await found.page.context().close();
    // A link to a row opens its list; so does an address.
    await page.locator('#arch a.item').first().click();
    expect(await need.isVisible()).toBe(true);
    await page.emulateMedia({ media: 'print' });
    expect(await page.locator('.bay-fold:visible').count()).toBe(0);
    expect(await page.locator('.signal-key').isVisible()).toBe(true);
    expect(faults).toEqual([]);
    await page.context().close();
  });

  it('leads to the next step that is not done from the foot of a phone', async () => {
    const { page } = await guide({ hash: '#build=fog:no' });
    const next = page.locator('.map-next');
    expect(await next.getAttribute('href')).toBe('#arch');
    for (const box of await boxes(page, 'arch').all()) await box.check();
    expect(await next.getAttribute('href')).toBe('#cover-off');
    expect(await next.textContent()).toMatch(/^To step 2Draw the cover forward$/);
    await next.click();
    await expect.poll(() => insight(page, 'cover-off')).toBe(true);
    await page.context().close();
  });

  it('is skipped to by keys: the second leads past all that comes before the work', async () => {
    const { page } = await guide();
    await page.keyboard.press('Tab');
    await page.keyboard.press('Tab');
    expect(await page.locator(':focus').textContent()).toBe('To the steps');
    await page.keyboard.press('Enter');
    await expect.poll(() => insight(page, 'arch')).toBe(true);
    await page.context().close();
  });
});

describe('a wait', () => {
  it('is timed by the clock, through a reload, and told when it is over', async () => {
    const context = await site.browser.newContext();
    const page = await context.newPage();
    await page.clock.install({ time: new Date('2026-10-05T09:00:00') });
    await page.goto(`file://${encodeURI(`${site.folder}/${path}`)}`);
    const wait = page.locator('#cut-notch .bay-wait');
    await wait.getByRole('button', { name: 'Begin the wait' }).click();
    expect(await wait.textContent()).toMatch(/Wait until 0?9:30.*: 30\smin left/);
    await page.reload();
    await page.clock.fastForward('20:00');
    expect(await wait.textContent()).toMatch(/: 10\smin left/);
    await page.clock.fastForward('10:00');
    expect(await wait.textContent()).toContain('The wait is over.');
    await wait.getByRole('button', { name: 'Clear' }).click();
    expect(await wait.textContent()).toBe('Begin the wait');
    await context.close();
  });
});

describe('the screen', () => {
  const lock = `Object.defineProperty(navigator, 'wakeLock', { configurable: true, value: {
    request: async () => Object.assign(new EventTarget(), { release() { this.dispatchEvent(new Event('release')); } }),
  } });`;
  const refused = `Object.defineProperty(navigator, 'wakeLock', { value: { request: async () => { throw new Error('no'); } } });`;
  const missing = 'delete Navigator.prototype.wakeLock;';

  const devices = [
    ['stays on', lock, 'The screen stays on.'],
    ['is left alone where the device refuses', refused, 'does not let this page keep it on'],
  ] as const;
  it.each(sampleOf(devices, 1))('%s', async (_, script, said) => {
    const context = await site.browser.newContext();
    const page = await context.newPage();
    await page.addInitScript(script);
    await page.goto(`file://${encodeURI(`${site.folder}/${path}`)}`);
    const state = page.locator('.bay .bay-awake-state');
    expect(await state.textContent()).toBe('The screen may go dark.');
    await page.getByRole('button', { name: 'Keep the screen on' }).click();
    await page.waitForFunction('document.querySelector(".bay-awake-state").textContent.length > 0');
    await expect.poll(() => state.textContent()).toContain(said);
    await page.getByRole('button', { name: 'Keep the screen on' }).click();
    await expect.poll(() => state.textContent()).toBe('The screen may go dark.');
    await context.close();
  });

  it('is told of in a plain line where no browser could keep it on', async () => {
    const context = await site.browser.newContext();
    const page = await context.newPage();
    await page.addInitScript(missing);
    await page.goto(`file://${encodeURI(`${site.folder}/${path}`)}`);
    expect(await words(page, '.bay .bay-awake-state')).toContain('this browser lets no page keep it on');
    expect(await page.getByRole('button', { name: 'Keep the screen on' }).count()).toBe(0);
    await context.close();
  });
});

describe('a link that is older than the guide', () => {
  it('is told in a clear line, and the page works', async () => {
    const { page, faults } = await guide();
    const address = page.url();
    const links = [
      ['#build=fog:purple', 'names a build that this guide no longer has'],
      ['#build=doors:four', 'names a build that this guide no longer has'],
      ['#build=fog:no&at=gone', 'names a place that is no longer on this page'],
      ['#gone', 'names a place that is no longer on this page'],
      ['#build=fog:no&at=hang', /^$/],
      ['#hang', /^$/],
    ] as const;
    for (const [hash, said] of sampleOf(links, 3)) {
      await page.goto('about:blank');
      await page.goto(address + hash);
      expect(await words(page, '.bay-link'), hash).toMatch(said);
      expect(await page.locator('#cut-notch').isVisible()).toBe(true);
    }
    expect(faults.filter((fault) => fault !== 'asked about:blank')).toEqual([]);
    await page.context().close();
  });
});

describe('the controls', () => {
  const looks = [
    ['dark', 'one step at a time', ['.bay-one', '.bay-next', '.bay-next', '.bay-next', '.bay-all']],
    ['light', 'all steps', []],
  ] as const;
  it.each(sampleOf(looks, 1))(
    'are 56 px high, fit a phone of 320 px, and are clean by axe: %s, %s',
    async (colorScheme, _, presses) => {
      const { page } = await guide({ colorScheme, viewport: { width: 320, height: 640 } });
      await page.locator('.bay-move summary').click();
      await boxes(page, 'arch').first().check();
      for (const press of presses) await page.locator(press).click();
      expect(await page.evaluate('document.documentElement.scrollWidth - innerWidth')).toBe(0);
      const heights = await page
        .locator(
          ':is(.bay, .bay-ticks, .bay-wait, .bay-turn, .bay-list) :is(button, label.bay-tick, summary, textarea):visible',
        )
        .evaluateAll((all) => all.map((one) => one.getBoundingClientRect().height));
      expect(heights.length).toBeGreaterThan(3);
      expect(Math.min(...heights)).toBeGreaterThanOrEqual(56);
      expect(await axeFaults(page)).toEqual([]);
      await page.context().close();
    },
  );
});
