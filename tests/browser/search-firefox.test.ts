import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { describe, expect, it } from 'vitest';
import { long } from '../samples.ts';
import { referenceInspection } from '../site/reference-shop.ts';
import { files } from '../site/workspace.ts';
import { firefoxSiteForTests } from './site-for-tests.ts';

const site = firefoxSiteForTests(() => [referenceInspection(), files()]);

describe.runIf(long)('the search in Firefox, from file:// in a nested folder with spaces', () => {
  it('finds a misspelt tool and a torque, and leads to the step', async () => {
    // A profile of its own: in another file's the guide would come back with the build that was picked there.
    const context = await site.browser.createBrowserContext();
    const page = await context.newPage();
    await page.goto(pathToFileURL(join(site.folder, 'index.html')).href);
    await page.waitForSelector('#find_text');
    await page.type('#find_text', 'trim leaver');
    await page.waitForSelector('.found .entry');
    expect(await page.$eval('.found .entry', (link) => link.textContent)).toBe('Trim lever');
    await page.$eval('#find_text', (input) => Object.assign(input, { value: '' }));
    await page.type('#find_text', '25 Nm');
    await page.waitForSelector('.found a[href$="#hang"]');
    await page.click('.found a[href$="#hang"]');
    // What is typed goes into the address too, so that a change of it says nothing of the new page.
    await page.waitForSelector('#hang');
    expect(page.url()).toMatch(/\/our%20guides\/guides\/lamp-cradle\/index\.html#hang$/);
    await context.close();
  });
});
