import { copyFile, mkdir } from 'node:fs/promises';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { files, inspection } from '../site/workspace.ts';
import { axeFaults } from './axe.ts';
import { open } from './browser.ts';
import { siteForTests } from './site-for-tests.ts';

const site = siteForTests(() => [inspection(), files()]);

beforeAll(async () => {
  await mkdir(join(site.top, 'received files'));
  await copyFile(
    join(site.folder, 'guides/lamp-cradle/lamp-cradle.html'),
    join(site.top, 'received files/lamp-cradle.html'),
  );
});

describe('a guide in one file, opened alone from another folder', () => {
  it('asks for nothing, breaks no policy, shows its pictures and styles, and keeps ticks', async () => {
    const requests: string[] = [];
    const { page, faults } = await open(site.browser, site.top, 'received files/lamp-cradle.html');
    page.on('request', (request) => requests.push(request.url()));
    await page.reload();
    expect(requests.filter((url) => !url.startsWith('data:'))).toEqual([page.url()]);
    expect(faults.filter((fault) => !fault.startsWith('asked data:'))).toEqual([]);
    expect(await page.evaluate('[...document.images].map((image) => image.naturalWidth > 0)')).toEqual([
      true,
    ]);
    expect(await page.evaluate('getComputedStyle(document.body).backgroundColor')).toBe('rgb(252, 251, 248)');
    // The vehicle after a step is worked out when it is asked for, and again for another build.
    const after = page.locator('#cover-off .bench');
    await after.locator('summary').click();
    await expect.poll(() => after.textContent()).toMatch(/Off the vehicle.*bumper cover/);
    expect(await after.textContent()).toMatch(/Unplugged2 fog lamp plugs \(with front fog lamps\)/);
    await page.getByRole('radio', { name: 'No' }).check();
    expect(await after.textContent()).toContain('bumper cover');
    expect(await after.textContent()).not.toContain('fog lamp');
    expect(await page.locator('#fog-aim').isVisible()).toBe(false);
    await page.locator('#arch .bay-tick input').first().check();
    await page.reload();
    expect(await page.locator('#arch .bay-tick input').first().isChecked()).toBe(true);
    const links = await page
      .locator('a[href]')
      .evaluateAll((all) => all.map((one) => one.getAttribute('href')));
    expect(links.filter((href) => !href?.startsWith('#'))).toEqual([]);
    expect(await axeFaults(page)).toEqual([]);
    await page.context().close();
  });

  it('is linked from the page of the guide with its weight', async () => {
    const { page } = await open(site.browser, site.folder, 'guides/lamp-cradle/index.html');
    const link = page.getByRole('link', { name: /One file for a phone, [\d.]+ (?:kB|MB)/ });
    expect(await link.getAttribute('href')).toBe('lamp-cradle.html');
    expect((await link.boundingBox())?.height).toBeGreaterThanOrEqual(56);
    await page.context().close();
  });
});
