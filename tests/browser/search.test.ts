import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { sampleOf, screens } from '../samples.ts';
import { referenceInspection } from '../site/reference-shop.ts';
import { files } from '../site/workspace.ts';
import { axeFaults } from './axe.ts';
import { open } from './browser.ts';
import { lowTargets } from './low-targets.ts';
import { siteForTests } from './site-for-tests.ts';

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

  it.each(['#find=%E0%A4%A&show=nonsense&vehicle=%00', '#find=&&&=', '#content'])(
    'takes a broken link for what can be read of it: %s',
    async (hash) => {
      const { page, faults } = await open(site.browser, site.folder, 'index.html', { hash });
      expect(await page.getByLabel('Show').inputValue()).toBe('');
      expect(await box(page).isVisible()).toBe(true);
      await page.context().close();
      expect(faults).toEqual([]);
    },
  );

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

  for (const [colorScheme, width] of screens(320, 390, 1280)) {
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
