import { readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { inflateSync } from 'node:zlib';
import { expect, it } from 'vitest';
import { samples } from '../samples.ts';
import { demoForTests } from './site-for-tests.ts';

const site = demoForTests();

/** Guides of the demo. */
const guides = ['lamp-cradle', 'side-awning', 'swivel-seat', 'roof-vent', 'switch-panel', 'flush-sensors'];

/**
 * The file as it is, and the same with the style sheets in it that it unfolds by script, both without their policy,
 * which would let in no changed text.
 */
function withAndWithoutLaterSheets(html: string): readonly [string, string] {
  const free = html.replace(/<meta http-equiv="?Content-Security-Policy[^>]*>/, '');
  const [, folded = ''] = /folded="([^"]*)"/.exec(free) ?? [];
  const [, ...later] = inflateSync(Buffer.from(folded, 'base64')).toString().split('\0');
  const whole = free.replace(/(?<=<style>).*?(?=<\/style>)/s, (style) =>
    style.split('/**/').reduce((text, part, index) => text + (later[index - 1] ?? '') + part),
  );
  expect(whole.length).toBeGreaterThan(free.length + 10_000);
  return [free, whole];
}

/** Where every element that is shown lies, and how it is set; worked out by the test, since the page runs nothing. */
const looks = `[document.documentElement, ...document.body.querySelectorAll('*')]
  .filter((element) => !element.matches('script, style, template') && element.checkVisibility() && element.getBoundingClientRect().height > 0)
  .map((element) => {
    const [{ x, y, width, height }, style] = [element.getBoundingClientRect(), getComputedStyle(element)];
    const set = ['font', 'color', 'background', 'border', 'outline', 'textDecoration', 'listStyle', 'page', 'breakBefore', 'breakInside'];
    return [element.localName + '.' + element.className, x, y, width, height, ...set.map((name) => style[name])].join(' ');
  })`;

it.each(guides.slice(0, samples(1, guides.length)))(
  'a guide in one file looks the same without scripts as if it held all its style sheets: %s',
  async (guide) => {
    const html = await readFile(join(site.folder, `guides/${guide}/${guide}.html`), 'utf8');
    const context = await site.browser.newContext({ javaScriptEnabled: false });
    const page = await context.newPage();
    const seen: Record<string, readonly string[]>[] = [];
    for (const text of withAndWithoutLaterSheets(html)) {
      const path = join(site.top, `${guide}.html`);
      await writeFile(path, text);
      await page.goto(pathToFileURL(path).href);
      const shots: Record<string, readonly string[]> = {};
      for (const [width, media] of [
        [390, 'screen'],
        [1280, 'screen'],
        [700, 'print'],
      ] as const) {
        await page.emulateMedia({ media });
        await page.setViewportSize({ width, height: 800 });
        shots[`${media} ${width}`] = (await page.evaluate(looks)) as readonly string[];
      }
      seen.push(shots);
    }
    await context.close();
    expect(seen[0]?.['screen 390']?.length).toBeGreaterThan(200);
    expect(seen[0]).toEqual(seen[1]);
  },
);
