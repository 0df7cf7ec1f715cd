import { resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { diskFiles, inspect } from '../../src/shop/index.ts';
import { noStore } from '../../src/store/store.ts';
import { open } from './browser.ts';
import { siteForTests } from './site-for-tests.ts';

const folder = resolve(import.meta.dirname, '../cases/trade-says');
const site = siteForTests(async () => {
  const files = await diskFiles(folder);
  return [await inspect(files, noStore), files];
});
const guide = () =>
  open(site.browser, site.folder, 'guides/evidence/index.html', { hash: '#build=camera:no' });

describe('the evidence of a job', () => {
  it('has a line on the print for each photograph, setting and reading of the build', async () => {
    const { page, faults } = await guide();
    await page.emulateMedia({ media: 'print' });
    const lines = await page.locator('.evidence-log tbody tr:visible').allInnerTexts();
    expect(lines.map((line) => line.replace(/\s+/g, ' ').trim())).toEqual([
      '1 Photograph: The trailer module with both catches closed left right',
      '2 Reading: Charge of the battery 80–\u2060100 % written in the step',
      '3 Setting: Coding of the trailer module from “not fitted” to “13-pin socket”',
      'Photograph: The lamps lit, from behind',
      'Reading: Lamp on the module green or amber written under “Prove it”',
    ]);
    expect(faults).toEqual([]);
    await page.context().close();
  });

  it('stands in the way of the sign-off until all of it is seen to', async () => {
    const { page, faults } = await guide();
    const told = page.locator('.bay-evidence');
    const signs = page.locator('[data-signs]');
    const shut = () => signs.evaluateAll((rows) => rows.map((row) => row.classList.contains('shut')));
    // A print on which nothing is ticked yet is left for the pen.
    expect(await shut()).toEqual([false, false]);
    await page.getByLabel(/^Left side done/).check();
    expect(await page.locator('#fit-modules .bay-open').textContent()).toContain('Evidence still open');
    expect(await shut()).toEqual([true, true]);
    for (const box of await page.locator('[data-evidence]:visible input').all()) await box.check();
    await page.locator('[data-reading=charge]').fill('60 %');
    await page.locator('[data-reading=lamp]').fill('Amber');
    expect(await shut()).toEqual([false, true]);
    expect(await told.textContent()).toBe('Before the sign-off: Reading: Charge of the battery.');
    await page.locator('[data-reading=charge]').fill('90 %');
    expect(await shut()).toEqual([false, false]);
    expect(await told.textContent()).toBe('');
    await page.reload();
    expect(await shut()).toEqual([false, false]);
    expect(faults).toEqual([]);
    await page.context().close();
  });
});
