import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { correctionCommand } from '../../src/trade/print-check.ts';
import { hole } from '../cut/fixtures.ts';
import * as fixture from '../pages/fixture.ts';
import { sampleOf } from '../samples.ts';
import { files, inspection } from '../site/workspace.ts';
import { axeFaults } from './axe.ts';
import { open } from './browser.ts';
import { lowTargets } from './low-targets.ts';
import { siteForTests } from './site-for-tests.ts';

const guide = 'guides/lamp-cradle/index.html';

const site = siteForTests(() => {
  const [notch] = fixture.guide.templates.values();
  if (!notch) throw new Error('the fixture has no template');
  const templates = new Map([[notch.id, { ...notch, holes: [hole(30, 40, 8)] }]]);
  return [inspection({ ...fixture.guide, templates }), files()];
});

/** Opens the print check of the notch, as a technician with a sheet in hand does. */
async function opened(options: Parameters<typeof open>[3] = {}): Promise<{ page: Page; faults: string[] }> {
  const found = await open(site.browser, site.folder, guide, options);
  await found.page.locator('#notch .print-check summary').click();
  return found;
}

async function measured(page: Page, across: string, up: string): Promise<string> {
  await page.getByLabel('Across, left to right').fill(across);
  await page.getByLabel('Up, bottom to top').fill(up);
  await page.getByRole('button', { name: 'Check the print' }).click();
  return (await page.locator('#notch .verdict').textContent()) ?? '';
}

describe('what is measured, from file://', () => {
  let page: Page;
  let faults: string[];
  beforeAll(async () => {
    ({ page, faults } = await opened());
  });
  afterAll(() => page.context().close());

  // What settings make of 100 mm was measured with two browsers and the usual print filter.
  it.each([
    ['67', '67', ['67 × 67 mm: do not use these sheets', 'Open the PDF file itself and print that.']],
    ['85.5', '85.5', ['The A4 file was fitted to Letter paper', 'Print the Letter file']],
    ['91,4', '91,2', ['91.4 × 91.2 mm: do not use', 'fitted to the printer’s margins', '“actual size”']],
    ['94', '94', ['scaled to fill the printable area', 'The A4 file was fitted to Letter paper']],
    ['97.3', '97.3', ['Switch “fit” off', 'The Letter file was fitted to A4 paper. Print the A4 file']],
    ['99.6', '100.2', ['do not use', 'baybook cut lamp-cradle notch --measured 99.6,100.2']],
    ['99,6 mm', ' 100,2', ['baybook cut lamp-cradle notch --measured 99.6,100.2']],
    ['99.9', '100,1', ['99.9 × 100.1 mm: true to size', 'Both diagonals must measure 141.4 mm']],
    ['3.94', '3 15/16 in', ['100.08 × 100.01 mm: true to size']],
    ['80', '120', ['80 × 120 mm: do not use', 'No known setting fits both sides']],
    ['103.1', '100', ['do not use', 'a printer is never off by more than 3 %']],
    ['0', '0', ['do not use', 'Give both sides of the 100 mm square']],
    ['', '', ['Give both sides of the 100 mm square as numbers']],
    ['-94', '94', ['Give both sides']],
    ['wide', '<b>94</b>', ['Give both sides']],
    ['100 kg', '99.6.2', ['Give both sides']],
    ['1e999', '١٠٠', ['Give both sides']],
  ])('%s and %s', async (across, up, said) => {
    const verdict = await measured(page, across, up);
    for (const words of said) expect(verdict).toContain(words);
    expect(faults).toEqual([]);
  });
});

describe('the print check, from file://', () => {
  it('gives the command in step with the one that is run', async () => {
    const { page } = await opened();
    await measured(page, '99.2', '100.05');
    const command = await page.locator('#notch .verdict code').textContent();
    await page.context().close();
    expect(command).toBe(correctionCommand('lamp-cradle', 'notch', 99.2, 100.05));
  });

  it('takes its word back as soon as a number is changed, and is used with the keyboard alone', async () => {
    const { page } = await opened();
    expect(await measured(page, '100', '100')).toContain('true to size');
    await page.getByLabel('Up, bottom to top').fill('94');
    expect(await page.locator('#notch .verdict').textContent()).toBe('');
    await page.getByLabel('Across, left to right').fill('94');
    await page.keyboard.press('Enter');
    expect(await page.locator('#notch .verdict').textContent()).toContain('do not use these sheets');
    await page.context().close();
  });

  it('has targets of 56 px, says its verdict aloud, and is clean by axe, in light and dark', async () => {
    for (const colorScheme of sampleOf(['dark', 'light'] as const, 1)) {
      const { page } = await opened({ colorScheme, viewport: { width: 320, height: 640 } });
      await measured(page, '99.6', '100.2');
      expect(await page.evaluate('document.documentElement.scrollWidth - innerWidth')).toBe(0);
      const controls = page.locator('.print-check :is(summary, input, button)').filter({ visible: true });
      expect(await controls.count()).toBeGreaterThan(3);
      expect(await lowTargets(controls)).toEqual([]);
      expect(await page.getByRole('status').filter({ hasText: 'do not use' }).getAttribute('aria-live')).toBe(
        'polite',
      );
      // What a button at the foot of the screen lies over at the moment can be scrolled free.
      await page.evaluate(
        'document.querySelector(".print-check input[type=file]").scrollIntoView({ block: "center" })',
      );
      const faults = await axeFaults(page, '.print-check');
      await page.context().close();
      expect(faults).toEqual([]);
    }
  });

  it('is a table of the usual causes with scripts off, and stays out of the print', async () => {
    const { page } = await opened({ javaScriptEnabled: false });
    const check = page.locator('#notch .print-check');
    expect(await check.getByRole('button').filter({ visible: true }).count()).toBe(0);
    const rows = await check.locator('tbody tr').allInnerTexts();
    expect(rows[0]).toMatch(/^62 to 73\smm\s+the template was printed from the web page: open the PDF/);
    expect(rows.at(-1)).toContain('baybook cut lamp-cradle notch --measured ACROSS,UP');
    await page.emulateMedia({ media: 'print' });
    expect(await check.isVisible()).toBe(false);
    await page.context().close();
  });
});
