import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { describe, expect, it } from 'vitest';
import { files, inspection } from '../site/workspace.ts';
import { firefoxSiteForTests } from './site-for-tests.ts';

/** What a page tells of itself, worked out in the page. */
const facts = `({
  paper: getComputedStyle(document.body).backgroundColor,
  fog: getComputedStyle(document.getElementById('fog-aim')).display,
  pictures: [...document.images].map((image) => image.naturalWidth > 0),
  over: document.documentElement.scrollWidth - document.documentElement.clientWidth,
})`;

const site = firefoxSiteForTests(() => [inspection(), files()]);

describe('a guide in Firefox, from file://', () => {
  it('has its styles, pictures and script under its own policy, and keeps the pick in the link', async () => {
    const page = await site.browser.newPage();
    await page.setViewport({ width: 390, height: 844 });
    const address = pathToFileURL(join(site.folder, 'guides', 'lamp-cradle', 'index.html')).href;
    await page.goto(`${address}#build=fog:no`);
    await page.waitForSelector('[data-plan="1"]');
    expect(await page.evaluate(facts)).toEqual({
      paper: 'rgb(252, 251, 248)',
      fog: 'none',
      pictures: [true],
      over: 0,
    });
    await page.click('input[value="yes"]');
    await page.waitForSelector('[data-plan="0"]');
    expect(await page.evaluate('location.hash')).toBe('#build=fog:yes');
    expect(await page.evaluate(facts)).toMatchObject({ fog: 'block' });
    await page.close();
  });
});
