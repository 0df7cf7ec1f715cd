import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { long } from '../samples.ts';
import { files, inspection } from '../site/workspace.ts';
import { open } from './browser.ts';
import { siteForTests } from './site-for-tests.ts';

const site = siteForTests(() => [inspection(), files()]);
const path = 'guides/lamp-cradle/index.html';
const guide = (hash = '') => open(site.browser, site.folder, path, { hash });

const clearance = (page: Page) => page.getByLabel('Ground clearance under the cradle, value found');
const nuts = (page: Page) => page.getByLabel(/^Torque set: 4 M8 flange nuts/);
const news = (page: Page) => page.locator('.bay-news').textContent();

/** Opens the list of what is laid out, which stands folded before the work. */
const openList = (page: Page) => page.locator('#need .bay-fold').click();

/** Opens the same page again, in another tab of the same device. */
async function again(page: Page, hash = ''): Promise<Page> {
  const other = await page.context().newPage();
  await other.goto(page.url().replace(/#.*$/, '') + hash);
  return other;
}

describe('the gather list and the proof', () => {
  it('are ticked line by line, and the ticks are there after a reload', async () => {
    const { page, faults } = await guide();
    const [laid, proved] = [page.getByLabel('Laid out: Trim lever'), page.getByLabel(/^Proved: /).first()];
    await openList(page);
    await laid.check();
    await proved.check();
    await page.reload();
    expect([await laid.isChecked(), await proved.isChecked()]).toEqual([true, true]);
    expect(await page.getByLabel('Laid out: Eye protection').isChecked()).toBe(false);
    await openList(page);
    await laid.uncheck();
    await page.reload();
    expect([await laid.isChecked(), await proved.isChecked()]).toEqual([false, true]);
    // Each row and line has a box, a target of 56 px.
    await openList(page);
    const rows = await page.locator('#need .gather tr[id], #need .gather tr:has(.size)').count();
    expect(await page.locator('#need .bay-box').count()).toBe(rows);
    const sizes = await page.locator('.bay-box').evaluateAll((all) =>
      all.map((one) => {
        const { width, height } = one.getBoundingClientRect();
        return Math.min(width, height);
      }),
    );
    expect(Math.min(...sizes)).toBeGreaterThanOrEqual(56);
    expect(faults).toEqual([]);
    await page.context().close();
  });
});

describe('a value found, on a page that many are typed into', () => {
  let page: Page;
  let faults: string[];
  beforeAll(async () => {
    ({ page, faults } = await guide());
  });
  afterAll(() => page.context().close());

  it.each([
    ['212', ''],
    ['212 mm', ''],
    ['212,5 mm', ''],
    ['8 1/2 in', ''],
    ['180', ''],
    ['240 mm', ''],
    ['241', 'Outside 180–240 mm'],
    ['7 in', 'Outside 180–240 mm'],
    ['-200', 'Not compared'],
    ['enough', 'Not compared: give a number, in mm'],
    ['25 N·m', 'Not compared'],
  ])('as a reading: %s against 180 to 240 mm is told: "%s"', async (text, said) => {
    await clearance(page).fill(text);
    await clearance(page).blur();
    const verdict = page.locator('.bay-verdict').last();
    const told = async () => (await verdict.textContent())?.replaceAll('\u00a0', ' ');
    expect(await told()).toMatch(said === '' ? /^$/ : said);
    // What is read back is judged by the same code: one of each kind is enough in each run.
    if (long || ['212 mm', '7 in', '-200'].includes(text)) {
      await page.reload();
      expect(await told()).toMatch(said === '' ? /^$/ : said);
    }
    expect(faults).toEqual([]);
  });

  it.each([
    ['25', ''],
    ['25 N·m', ''],
    ['18.4 lbf·ft', ''],
    ['26.4', ''],
    ['250', 'Not the stated torque, 25 N·m (18.4 lbf·ft).'],
    ['18.4', 'Not the stated torque'],
    ['by hand', 'Not compared: give a number, in N·m'],
  ])('as a torque: %s where 25 N·m is stated is told: "%s"', async (text, said) => {
    await nuts(page).fill(text);
    await nuts(page).blur();
    const told = await page.locator('#hang .bay-verdict').first().textContent();
    if (said === '') expect(told).toBe('');
    else expect(told?.replaceAll('\u00a0', ' ')).toContain(said);
    expect(faults).toEqual([]);
  });
});

describe('the printed sheets', () => {
  it('carry the torques and readings that were typed in, and a mark in the box of what is ticked', async () => {
    const { page } = await guide();
    const mark = (place: string, pseudo: string) =>
      page.evaluate(`getComputedStyle(document.querySelector('${place}'), '${pseudo}').content`);
    await nuts(page).fill('25 N·m');
    await clearance(page).fill('212 mm');
    await openList(page);
    await page.getByLabel('Laid out: Trim lever').check();
    await page
      .getByLabel(/^Proved: /)
      .first()
      .check();
    await page.emulateMedia({ media: 'print' });
    const log = page.locator('tr', { hasText: 'M8 flange nuts' }).locator('[data-torque-log]');
    expect([await log.isVisible(), await log.textContent()]).toEqual([true, '25 N·m']);
    const found = page.locator('.hand-over tr', { hasText: 'Ground clearance' }).locator('.write');
    expect([await found.isVisible(), await found.textContent()]).toEqual([true, '212 mm']);
    expect(await mark('#item_trim-lever .tick', '::after')).toBe('"✓"');
    expect(await mark('#item_eye-protection .tick', '::after')).toBe('none');
    expect(await mark('.prove li', '::before')).toBe('"✓"');
    await page.context().close();
  });
});

describe('the build that was picked', () => {
  it('is kept with the ticks, and shown again by a link that names none', async () => {
    const { page } = await guide();
    await page.getByRole('radio', { name: 'No' }).check();
    const plain = await again(page);
    expect(plain.url()).toMatch(/#build=fog:no$/);
    expect(await plain.locator('#fog-aim').isVisible()).toBe(false);
    const step = await again(page, '#hang');
    expect(step.url()).toMatch(/#build=fog:no&at=hang$/);
    await page.context().close();
  });

  it('leaves a line ticked in which the number of a step is that of the build', async () => {
    const { page } = await guide('#build=fog:yes');
    const line = page.getByLabel(/^Proved: Headlamps aim as before/);
    await line.check();
    await expect.poll(() => page.locator('.prove a[href="#hang"]').textContent()).toMatch(/5$/);
    await page.getByRole('radio', { name: 'No' }).check();
    await page.reload();
    expect(await page.locator('.prove a[href="#hang"]').textContent()).toMatch(/4$/);
    expect(await line.isChecked()).toBe(true);
    await page.context().close();
  });

  it('gives way to a link that names another, and asks whose the ticks are', async () => {
    const { page, faults } = await guide('#build=fog:no');
    await page.getByLabel('Done: Cut the notch').check();
    expect(await news(page)).toBe('');
    const other = await again(page, '#build=fog:yes');
    expect(await other.locator('#fog-aim').isVisible()).toBe(true);
    expect(await news(other)).toContain('What is ticked here belongs to another build (');
    await other.getByRole('radio', { name: 'No' }).check();
    expect(await news(other)).toBe('');
    await other.getByRole('radio', { name: 'Yes' }).check();
    await other.getByRole('button', { name: 'The same: keep the ticks' }).click();
    expect(await news(other)).toBe('');
    expect(await other.getByLabel('Done: Cut the notch').isChecked()).toBe(true);
    await other.getByRole('radio', { name: 'No' }).check();
    await other.getByRole('button', { name: 'Another vehicle: start again' }).click();
    expect(await news(other)).toBe('');
    expect(await other.getByLabel('Done: Cut the notch').isChecked()).toBe(false);
    expect(faults).toEqual([]);
    await page.context().close();
  });
});

describe('two tabs with one guide', () => {
  it('follow each other, and neither wipes out what the other ticked', async () => {
    const { page } = await guide();
    const other = await again(page);
    await page.getByLabel('Left side done: Free the arch edge').check();
    await expect.poll(() => other.getByLabel('Left side done: Free the arch edge').isChecked()).toBe(true);
    await other.getByLabel('Right side done: Free the arch edge').check();
    await nuts(other).fill('25');
    await expect.poll(() => nuts(page).inputValue()).toBe('25');
    await page.reload();
    expect(await page.getByLabel('Left side done: Free the arch edge').isChecked()).toBe(true);
    expect(await page.getByLabel('Right side done: Free the arch edge').isChecked()).toBe(true);
    await page.context().close();
  });
});
