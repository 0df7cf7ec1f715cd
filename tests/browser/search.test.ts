import { readdirSync, readFileSync, renameSync, statSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { beforeAll, describe, expect, it } from 'vitest';
import { long, sampleOf, screens } from '../samples.ts';
import { crib, referenceInspection } from '../site/reference-shop.ts';
import { files } from '../site/workspace.ts';
import { axeFaults } from './axe.ts';
import { open } from './browser.ts';
import { lowTargets } from './low-targets.ts';
import { publish, siteForTests } from './site-for-tests.ts';

const site = siteForTests(() => [referenceInspection(), files()]);

const box = (page: Page) => page.getByRole('searchbox', { name: 'Find a guide, tool, size or torque' });
const found = (page: Page) => page.locator('.found .entry').allInnerTexts();

describe('the search, from file:// in a nested folder with spaces', () => {
  it('finds while the technician types, and leads to the page', async () => {
    const { page, faults } = await open(site.browser, site.folder, 'index.html');
    await box(page).pressSequentially('panel poper');
    expect((await found(page))[0]).toBe('Trim lever');
    expect(await page.locator('.shelves').isVisible()).toBe(false);
    await page.locator('.found .entry').first().click();
    expect(await page.locator('h1').textContent()).toBe('Trim lever');
    await page.context().close();
    expect(faults).toEqual([]);
  });

  it('leads from a torque to the step that tightens', async () => {
    const { page } = await open(site.browser, site.folder, 'index.html', { hash: '#find=25nm' });
    await page.getByRole('link', { name: /M8 flange nut/ }).click();
    expect(page.url()).toMatch(/guides\/lamp-cradle\/index\.html#hang$/);
    await page.goBack();
    expect(await box(page).inputValue()).toBe('25nm');
    expect(await found(page)).toContain('Auxiliary lamp cradle, behind the front bumper cover');
    await page.context().close();
  });

  it('is worked by keyboard alone', async () => {
    const { page } = await open(site.browser, site.folder, 'index.html');
    await box(page).focus();
    await page.keyboard.type('hexagon');
    await page.keyboard.press('Enter');
    const focused = () => page.evaluate<string>('document.activeElement.className');
    expect(await focused()).toBe('entry');
    const first = await page.evaluate<string>('document.activeElement.textContent');
    await page.keyboard.press('Tab');
    expect(await page.evaluate('document.activeElement.textContent')).not.toBe(first);
    await page.keyboard.press('Shift+Tab');
    await page.keyboard.press('Enter');
    await page.waitForURL(/\/(?:tools|fasteners|glossary)\//);
    await page.context().close();
  });

  it('is narrowed, keeps that in the link, and shows the shelves again when it is emptied', async () => {
    const { page } = await open(site.browser, site.folder, 'index.html');
    await page.getByLabel('Show').selectOption({ label: 'Fasteners' });
    expect(await found(page)).toEqual(['Hexagon-head screw', 'Panel screw']);
    await page.getByLabel('Vehicle').selectOption({ label: 'Larkspur Dray, panel van' });
    expect(await found(page)).toEqual(['Hexagon-head screw']);
    expect(page.url()).toMatch(/#show=fastener&vehicle=larkspur-dray$/);
    await page.getByLabel('Show').selectOption('');
    await page.getByLabel('Vehicle').selectOption('');
    expect(await page.locator('.shelves').isVisible()).toBe(true);
    expect(page.url()).not.toContain('#');
    await page.context().close();
  });

  it('says politely how much was found, once the typing pauses', async () => {
    const { page } = await open(site.browser, site.folder, 'index.html');
    await box(page).fill('hex screw');
    await page
      .getByRole('status')
      .filter({ hasText: /^\d+ pages?\.$/ })
      .waitFor();
    await box(page).fill('xyzzy');
    await page.getByRole('status').filter({ hasText: 'Nothing found' }).waitFor();
    await box(page).fill('lever xyzzy');
    await page.getByRole('status').filter({ hasText: 'No page has all of these words.' }).waitFor();
    await page.context().close();
  });

  const broken = ['#find=%E0%A4%A&show=nonsense&vehicle=%00', '#find=&&&=', '#content'];
  it.each(sampleOf(broken, 1))('takes a broken link for what can be read of it: %s', async (hash) => {
    const { page, faults } = await open(site.browser, site.folder, 'index.html', { hash });
    expect(await page.getByLabel('Show').inputValue()).toBe('');
    expect(await box(page).isVisible()).toBe(true);
    await page.context().close();
    expect(faults).toEqual([]);
  });

  it('prints what a page is called as text, whatever is typed', async () => {
    const { page, faults } = await open(site.browser, site.folder, 'index.html');
    await box(page).fill('<img src=x onerror=alert(1)> lever');
    expect(await page.locator('.found img').count()).toBe(0);
    await page.context().close();
    expect(faults).toEqual([]);
  });

  it('lists everything where scripts are off', async () => {
    const { page } = await open(site.browser, site.folder, 'index.html', { javaScriptEnabled: false });
    expect(await page.getByRole('search').count()).toBe(0);
    for (const summary of await page.locator('.shelf summary').all()) await summary.click();
    for (const name of ['Trim lever', 'Eye protection', 'Panel screw', /Drives, kinds of fastener/]) {
      expect(await page.getByRole('link', { name }).isVisible()).toBe(true);
    }
    await page.context().close();
  });

  for (const [colorScheme, width] of sampleOf(screens(320, 390, 1280), 1)) {
    it(`has targets of 56 px and is clean by axe, ${colorScheme}, ${width} px`, async () => {
      const viewport = { width, height: 844 };
      const { page } = await open(site.browser, site.folder, 'index.html', {
        colorScheme,
        viewport,
        hash: '#find=25nm',
      });
      const targets = page.locator('.find :is(a, input, select)');
      expect(await targets.count()).toBeGreaterThan(4);
      expect(await lowTargets(targets)).toEqual([]);
      expect(await page.evaluate('document.documentElement.scrollWidth - innerWidth')).toBe(0);
      const axe = await axeFaults(page);
      await page.context().close();
      expect(axe).toEqual([]);
    });
  }
});

describe.runIf(long)('a search of more than 2 MB, from file://', () => {
  const assets = () => join(site.folder, '..', 'many guides', 'assets');
  const parts = () => readdirSync(assets()).filter((name) => name.startsWith('search-index-'));
  const openMany = (hash: string) => open(site.browser, join(assets(), '..'), 'index.html', { hash });

  beforeAll(() => publish(withLongNames(), files(), join(assets(), '..')));

  it('is published in parts, each of less, which the worker keeps for use without a network', () => {
    expect(parts().length).toBeGreaterThan(2);
    const worker = readFileSync(join(assets(), '..', 'worker.js'), 'utf8');
    for (const name of ['search-index.js', ...parts()]) {
      expect(statSync(join(assets(), name)).size).toBeLessThan(2_000_000);
      expect(worker).toContain(`"assets/${name}":"`);
    }
  });

  it('is loaded when the technician turns to it, and finds what was typed meanwhile', async () => {
    const { page, faults } = await openMany('');
    const loaded = () => page.locator('script[src*="search-index-"]').count();
    expect(await loaded()).toBe(0);
    await box(page).pressSequentially('panel poper');
    await page.locator('.found .entry').first().waitFor();
    expect((await found(page))[0]).toBe('Trim lever');
    expect(await loaded()).toBe(parts().length);
    expect(page.url()).toMatch(/#find=panel\+poper$/);
    await page.context().close();
    expect(faults).toEqual([]);
  });

  it('is loaded for a link with a search, and lists all pages where a part is missing until it is there', async () => {
    const [part = ''] = parts();
    renameSync(join(assets(), part), join(assets(), 'away.js'));
    const { page } = await openMany('#find=25nm');
    await page.getByRole('status').filter({ hasText: 'could not be loaded' }).waitFor();
    expect(await page.locator('.shelves').isVisible()).toBe(true);
    renameSync(join(assets(), 'away.js'), join(assets(), part));
    await box(page).focus();
    await page.getByRole('link', { name: /M8 flange nut/ }).waitFor();
    expect(await box(page).inputValue()).toBe('25nm');
    await page.context().close();
  });

  /** One tool goes by names of 3 MB, of which the index holds each word once. */
  function withLongNames(): ReturnType<typeof referenceInspection> {
    const inspection = referenceInspection();
    const socket = crib.get('socket-13');
    if (!socket) throw new Error('the crib has its socket');
    const synonyms = Array.from({ length: 60 }, (_, index) => `the ${index} \\ 'key' `.repeat(3_500));
    const many = new Map([...crib, [socket.id, { ...socket, synonyms }]]);
    return { ...inspection, shop: { ...inspection.shop, crib: many } };
  }
});

describe('the pages of tools, fasteners and terms', () => {
  const pages = [
    'tools/torque-60/index.html',
    'tools/eye-protection/index.html',
    'fasteners/hex-head-screw/index.html',
    'glossary/index.html',
  ];
  const looks = pages.flatMap((path, index) => {
    const schemes = ['light', 'dark'] as const;
    return (index % 2 === 0 ? schemes : schemes.toReversed()).map((scheme) => [path, scheme] as const);
  });
  for (const [path, colorScheme] of sampleOf(looks, 2)) {
    it(`${path} has targets of 56 px and is clean by axe with everything unfolded, ${colorScheme}`, async () => {
      const { page, faults } = await open(site.browser, site.folder, path, { colorScheme });
      await page.evaluate("document.querySelectorAll('details').forEach((one) => { one.open = true; })");
      expect(await lowTargets(page.locator('main :is(a, summary)'))).toEqual([]);
      // Axe itself breaks the policy of the page when it reads the styles.
      expect(faults).toEqual([]);
      const axe = await axeFaults(page);
      await page.context().close();
      expect(axe).toEqual([]);
    });
  }
});
