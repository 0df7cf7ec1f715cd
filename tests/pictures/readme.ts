/**
 * `npm run pictures` builds the demo and takes the README's pictures of it: a step on its page, the same step in the bay,
 * and the sheet of a cut template.
 */
import { execFileSync } from 'node:child_process';
import { mkdir } from 'node:fs/promises';
import { join, resolve } from 'node:path';
import sharp from 'sharp';
import { chromiumOfWorker, open } from '../browser/browser.ts';

/** Twice the height at which the README shows them, for screens with fine pixels. */
const HEIGHT = 640;

const top = resolve(import.meta.dirname, '../..');
const site = join(top, 'site');
const into = join(top, 'handbook/pictures');
const guide = 'guides/lamp-cradle/index.html';
const step = 'tray';

await mkdir(into, { recursive: true });
const browser = await chromiumOfWorker();
await write('page', await onPage());
await write('bay', await inBay());
await write('sheet', sheet());
await browser.close();

async function onPage(): Promise<Uint8Array> {
  const { page } = await open(browser, site, guide, {
    viewport: { width: 1300, height: 1040 },
    hash: `#${step}`,
  });
  await page.locator(`#${step}`).scrollIntoViewIfNeeded();
  return page.screenshot();
}

async function inBay(): Promise<Uint8Array> {
  const { page } = await open(browser, site, guide, { deviceScaleFactor: 2 });
  await page.locator('.bay-one').click();
  while (!(await page.locator(`#${step}`).isVisible())) await page.locator('.bay-next').click();
  return page.screenshot();
}

/** The first sheet, as poppler paints it. */
function sheet(): Uint8Array {
  const file = join(site, 'guides/lamp-cradle/cut-templates/notch-a4.pdf');
  return execFileSync('pdftoppm', ['-r', '150', '-png', '-l', '1', '-singlefile', file]);
}

async function write(name: string, picture: Uint8Array): Promise<void> {
  await sharp(picture)
    .resize({ height: HEIGHT })
    .webp({ quality: 80 })
    .toFile(join(into, `${name}.webp`));
}
