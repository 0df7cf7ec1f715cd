import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { readVehicleRecord } from '../../src/vehicle/read.ts';
import type { VehicleRecord } from '../../src/vehicle/record.ts';
import { baybook } from '../driver.ts';
import { long } from '../samples.ts';
import { vehicleRecord } from '../vehicle/records.ts';
import { axeFaults } from './axe.ts';
import { chromiumOfWorker, open } from './browser.ts';
import { startHost } from './host.ts';
import { lowTargets } from './low-targets.ts';
import { type VehicleSite, vehicleSite } from './vehicle-site.ts';

// A browser on a busy machine takes its time; nothing here is about speed.
vi.setConfig({ testTimeout: 240_000, hookTimeout: 240_000 });

let browser: Browser;
let top: string;
let site: VehicleSite;

beforeAll(async () => {
  top = await mkdtemp(join(tmpdir(), 'baybook '));
  site = await vehicleSite(top);
  browser = await chromiumOfWorker();
});

afterAll(() => rm(top, { recursive: true, force: true }));

const module = 'guides/module/index.html';
const visit = 'visits/both/index.html';
const begin = async (page: Page, name: string) => {
  await page.click('.vehicle-ask');
  // Whoever works by keys goes on where the button was.
  await page.waitForSelector('.vehicle-body > h3:focus');
  await page.getByRole('button', { name: 'Begin a record' }).click();
  await page.getByLabel('Vehicle registration or VIN').first().fill(name);
};
const photograph = async (page: Page, place: string) => {
  await page.locator(`${place} .vehicle-take input`).first().setInputFiles(site.photograph);
  await page.waitForSelector(`${place} canvas[data-drawn]`);
};
const saved = async (page: Page): Promise<readonly [path: string, record: VehicleRecord]> => {
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Save as a file' }).click(),
  ]);
  const path = join(top, download.suggestedFilename());
  await download.saveAs(path);
  const read = readVehicleRecord(await readFile(path, 'utf8'));
  if (!read.ok) throw new Error(read.problem);
  return [path, read.record];
};
const addressOf = (path: string) => pathToFileURL(join(site.folder, path)).href;

describe.each([
  ['a guide', module, '#fit-modules', 'module'],
  ...(long ? ([['a visit', visit, '#module_fit-modules', 'visits/both']] as const) : []),
] as const)('the record of a vehicle, for %s', (_, path, step, id) => {
  it('goes from the intake to another device, from a stick, with its photographs', async () => {
    const { page, faults } = await open(browser, site.folder, path, { acceptDownloads: true });
    await begin(page, 'RB 12');
    await page.getByLabel('Odometer, or hours run').first().fill('84 000 km');
    await page.getByLabel('Tailgate trim', { exact: true }).fill('scratched at the left');
    await photograph(page, '.vehicle-line');
    await photograph(page, step);
    await page.locator(`${step} .bay-tick input`).first().check();
    await page.locator('[data-reading=charge], [data-reading=module_charge]').first().fill('92 %');
    // What was taken is evidence: its line is ticked.
    expect(await page.locator(`${step} .bay-box input`).first().isChecked()).toBe(true);

    await page.reload();
    await page.waitForSelector(`${step} canvas[data-drawn]`);
    expect(await page.locator('.vehicle-open-record h3').textContent()).toBe('RB 12');
    const [file, record] = await saved(page);
    expect(record.guide.id).toBe(id);
    expect(record.photographs.map(({ width, height }) => [width, height])).toEqual([
      [1600, 1067],
      [1600, 1067],
    ]);
    expect(record.intake.find(({ label }) => label === 'Tailgate trim')?.text).toBe('scratched at the left');
    expect(record.work[0]?.values.map(({ text }) => text)).toEqual(['✓', '92 %']);
    expect(record.work[0]?.steps.filter(({ done }) => done.length > 0)).toHaveLength(1);
    if (id === 'module') expect(record.work[0]?.revision).toBe('2');
    else
      expect(record.work[0]?.guides.map((one) => [one.id, one.revision])).toEqual([
        ['lamp', '1'],
        ['module', '2'],
      ]);
    expect(record.rechecks.map(({ due }) => due)).toEqual([
      expect.stringMatching(/^at 84500 km or by \d{4}-\d\d-\d\d$/),
    ]);
    expect(faults).toEqual([]);
    await page.context().close();

    const other = await open(browser, site.folder, path);
    await other.page.click('.vehicle-ask');
    await other.page.locator('.vehicle-body .vehicle-take input').setInputFiles(file);
    await other.page.waitForSelector(`${step} canvas[data-drawn]`);
    expect(await other.page.locator(`${step} .bay-tick input`).first().isChecked()).toBe(true);
    expect(
      await other.page.locator('[data-reading=charge], [data-reading=module_charge]').first().inputValue(),
    ).toBe('92 %');
    expect(await other.page.getByLabel('Tailgate trim', { exact: true }).inputValue()).toBe(
      'scratched at the left',
    );
    // It stands on the print too.
    expect(await other.page.locator('.cover th[data-fact=identity] + td').textContent()).toBe('RB 12');
    await other.page.getByRole('button', { name: 'Close the record' }).click();
    await other.page.waitForSelector('.vehicle-kept button');
    expect(await other.page.locator('.bay-tick input:checked').count()).toBe(0);
    expect(other.faults).toEqual([]);
    await other.page.context().close();
  });
});

describe('the record of a vehicle', () => {
  it.runIf(long)('can be written in, read and printed by a gloved hand, in both themes', async () => {
    for (const colorScheme of ['light', 'dark'] as const) {
      const { page, faults } = await open(browser, site.folder, module, { colorScheme });
      await begin(page, '<img src=x onerror=alert(1)>');
      for (const details of await page.locator('.vehicle-part').all())
        await details.evaluate((one) => one.setAttribute('open', ''));
      expect(
        await lowTargets(page.locator('.vehicle-offer :is(button, .vehicle-take, input.field, summary)')),
      ).toEqual([]);
      await photograph(page, '#fit-modules');
      expect(faults).toEqual([]);
      expect(await axeFaults(page, '.vehicle-offer')).toEqual([]);
      await page.getByRole('button', { name: 'Read and print it' }).click();
      await page.waitForSelector('.vehicle-view canvas[data-drawn]');
      // Whatever stands in it is text.
      expect(await page.locator('.vehicle-view h2').textContent()).toBe('<img src=x onerror=alert(1)>');
      expect(await axeFaults(page, '.vehicle-view')).toEqual([]);
      expect(await page.locator('main').isVisible()).toBe(false);
      expect(await page.evaluate('document.documentElement.scrollWidth')).toBe(390);
      await page.keyboard.press('Escape');
      expect(await page.locator('main').isVisible()).toBe(true);
      await page.context().close();
    }
  });

  it('is no reason to stop where the device refuses it, and is saved all the same', async () => {
    const context = await browser.newContext({ acceptDownloads: true });
    await context.addInitScript(() => {
      const full = () => {
        throw new DOMException('', 'QuotaExceededError');
      };
      IDBObjectStore.prototype.put = full;
    });
    const page = await context.newPage();
    await page.goto(addressOf(module));
    await begin(page, 'RB 13');
    await photograph(page, '#fit-modules');
    expect(await page.locator('.vehicle-problem').textContent()).toContain('no room left');
    await page.locator('#bolt .bay-tick input').check();
    const [, record] = await saved(page);
    expect(record.photographs).toHaveLength(1);
    expect(record.work[0]?.steps.find(({ id }) => id === 'bolt')?.done).toEqual(['whole']);
    await context.close();

    const denied = await browser.newContext();
    await denied.addInitScript(() => {
      Object.defineProperty(globalThis, 'indexedDB', {
        get: () => {
          throw new DOMException('', 'SecurityError');
        },
      });
    });
    const other = await denied.newPage();
    await other.goto(addressOf(module));
    await begin(other, 'RB 14');
    await other.locator('#bolt .bay-tick input').check();
    expect(await other.locator('.vehicle-problem').textContent()).toContain('its storage is switched off');
    expect(await other.locator('#bolt .bay-tick input').isChecked()).toBe(true);
    await denied.close();
  });

  it('is opened by a page of the site, says whether its guide has changed, and takes in no hostile file', async () => {
    const { page, faults } = await open(browser, site.folder, 'records.html');
    const choose = async (name: string, content: string) => {
      await writeFile(join(top, name), content);
      await page.locator('.vehicle-take input').setInputFiles(join(top, name));
    };
    const told = page.locator('.vehicle-records > .vehicle-told');
    await choose('foreign.json', '{"form":"Another thing"}');
    await vi.waitUntil(async () => (await told.textContent())?.startsWith('This file is no vehicle record'));
    await choose('changed.json', JSON.stringify({ ...vehicleRecord(), run: '<script>alert(1)</script>' }));
    await vi.waitUntil(async () => (await told.textContent())?.includes('“run”'));
    expect(await page.locator('.vehicle-sheet').count()).toBe(0);
    const title = '<script>alert(1)</script>';
    await choose('old.json', JSON.stringify({ ...vehicleRecord(), guide: { id: 'module', title } }));
    await page.waitForSelector('.vehicle-sheet');
    expect(await page.locator('.vehicle-sheet').textContent()).toContain(title);
    expect(await page.locator('.vehicle-standing').textContent()).toContain(
      'has changed since the work was done',
    );
    await page.getByRole('button', { name: 'Keep it on this device' }).click();
    await page.waitForSelector('.vehicle-kept button');
    // From a stick all pages share what the device keeps here: the guide's own page has it too.
    await page.goto(addressOf(module));
    await page.click('.vehicle-ask');
    await page.getByRole('button', { name: /^RB 12, begun 2026-10-02, revision 2/ }).click();
    await page.waitForSelector('.vehicle-open-record');
    expect(await page.locator('.bay-news').textContent()).toContain('This guide has changed since you began');
    expect(faults).toEqual([]);
    await page.goto(addressOf('records.html'));
    await page.locator('.vehicle-kept button').click();
    await page.waitForSelector('.vehicle-sheet');
    expect(await axeFaults(page)).toEqual([]);
    await page.context().close();
  });
});

describe.runIf(long)('the record of a vehicle in two tabs', () => {
  it('is one: what is written and taken in either stands in both, and none writes over the other', async () => {
    const { page, faults } = await open(browser, site.folder, module, { acceptDownloads: true });
    await begin(page, 'RB 17');
    const other = await page.context().newPage();
    await other.goto(addressOf(module));
    const title = (tab: Page) => tab.locator('.vehicle-open-record h3').textContent();
    const trim = (tab: Page) => tab.getByLabel('Tailgate trim', { exact: true });
    await expect.poll(() => title(other)).toBe('RB 17');
    await page.getByLabel('Odometer, or hours run').first().fill('84 000 km');
    await expect
      .poll(() => other.getByLabel('Odometer, or hours run').first().inputValue())
      .toBe('84 000 km');
    await trim(other).fill('scratched');
    await expect.poll(() => trim(page).inputValue()).toBe('scratched');
    await photograph(other, '#fit-modules');
    await page.waitForSelector('#fit-modules canvas[data-drawn]');
    await page.locator('#bolt .bay-tick input').check();
    await expect.poll(() => other.locator('#bolt .bay-tick input').isChecked()).toBe(true);
    // They show other builds, and so ask for other lines: neither writes for ever what the other takes away.
    await other.evaluate(`addEventListener('storage', () => { window.heard = (window.heard ?? 0) + 1; })`);
    await other.evaluate(`location.hash = 'build=camera'`);
    await page.getByLabel('Vehicle registration or VIN').first().fill('RB 18');
    await expect.poll(() => title(other)).toBe('RB 18');
    await page.waitForTimeout(500);
    const heard = await other.evaluate('window.heard');
    await page.waitForTimeout(500);
    expect(await other.evaluate('window.heard')).toBe(heard);
    const [, record] = await saved(page);
    expect(record.photographs).toHaveLength(1);
    expect(record.intake.find(({ label }) => label === 'Tailgate trim')?.text).toBe('scratched');
    expect(record.vehicle.map(({ text }) => text)).toEqual(expect.arrayContaining(['RB 18', '84 000 km']));
    await other.getByText('Take it off this device').click();
    await other.getByRole('button', { name: 'Take the record off this device' }).click();
    await expect
      .poll(() => page.locator('.vehicle-told').last().textContent())
      .toContain('taken off this device in another tab');
    expect(faults).toEqual([]);
    await page.context().close();
  });
});

describe.runIf(long)('a visit over http', () => {
  it('is ticked through to its end with the host gone, and is kept', async () => {
    const host = await startHost(site.folder);
    const context: BrowserContext = await browser.newContext({ acceptDownloads: true });
    const page = await context.newPage();
    const faults: string[] = [];
    page.on('pageerror', (error) => faults.push(String(error)));
    await page.goto(`${host.address}index.html`);
    const state = 'navigator.serviceWorker.getRegistration().then((one) => one?.active?.state)';
    await expect.poll(() => page.evaluate(state), { timeout: 60_000 }).toBe('activated');
    await host.stop();
    await page.goto(host.address + visit);
    await begin(page, 'RB 19');
    await page.getByLabel('Tailgate trim', { exact: true }).fill('none');
    await photograph(page, '#module_fit-modules');
    await page.locator('.bay-one').click();
    const next = page.locator('.bay-next');
    while (await next.isEnabled()) await next.click();
    await page.locator('.bay-all').click();
    await page.locator('.bay-leave').click();
    const ticks = '.step:visible .bay-tick input';
    const steps = await page.locator(ticks).count();
    expect(steps).toBeGreaterThan(5);
    await page.locator('[data-reading=module_charge]').first().fill('92 %');
    await page.reload();
    await page.waitForSelector('#module_fit-modules canvas[data-drawn]');
    expect(await page.locator(`${ticks}:checked`).count()).toBe(steps);
    const [, record] = await saved(page);
    expect(record.work).toHaveLength(1);
    expect(record.work[0]?.guides.map(({ id }) => id)).toEqual(['lamp', 'module']);
    expect(record.work[0]?.steps.filter(({ done }) => done.length === 0)).toEqual([]);
    expect(record.work[0]?.values.map(({ text }) => text)).toEqual(['✓', '92 %']);
    expect(record.intake.find(({ label }) => label === 'Tailgate trim')?.text).toBe('none');
    expect(record.photographs).toHaveLength(1);
    expect(faults).toEqual([]);
    await context.close();
  });
});

describe.runIf(long)('the record of a vehicle over http', () => {
  it('is kept without the network, and outlives a guide that has changed', async () => {
    const host = await startHost(site.folder);
    const context: BrowserContext = await browser.newContext({ acceptDownloads: true });
    const page = await context.newPage();
    await page.goto(`${host.address}index.html`);
    const state = 'navigator.serviceWorker.getRegistration().then((one) => one?.active?.state)';
    await expect.poll(() => page.evaluate(state), { timeout: 60_000 }).toBe('activated');
    host.serve.left = 0;
    await page.goto(host.address + module);
    await begin(page, 'RB 15');
    await photograph(page, '#fit-modules');
    await page.reload();
    await page.waitForSelector('#fit-modules canvas[data-drawn]');
    await page.locator('#bolt .bay-tick input').check();
    host.serve.left = Number.POSITIVE_INFINITY;

    const shop = join(top, 'a stick');
    const guide = join(shop, 'guides/module/guide.md');
    const text = await readFile(guide, 'utf8');
    await writeFile(
      guide,
      text.replace('revision: "2"', 'revision: "3"').replace('both catches hold', 'both catches hold fast'),
    );
    expect((await baybook(shop, 'build', '--out', 'changed guides')).code).toBe(0);
    await writeFile(guide, text);
    host.serve.folder = join(shop, 'changed guides');
    const registered = 'navigator.serviceWorker.getRegistration().then((one) => one.unregister())';
    await page.evaluate(registered);
    await page.reload();
    await page.waitForSelector('#fit-modules canvas[data-drawn]');
    await page.locator('#open .bay-tick input').check();
    const [, record] = await saved(page);
    expect(record.work.map(({ revision }) => revision)).toEqual(['2', '3']);
    expect(record.photographs).toHaveLength(1);
    expect(record.work[0]?.steps.find(({ id }) => id === 'bolt')?.done).toEqual(['whole']);
    await context.close();
    await host.stop();
  });
});
