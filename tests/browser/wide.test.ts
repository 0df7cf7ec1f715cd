import { describe, expect, it } from 'vitest';
import type { Prose, ProseElement } from '../../src/model/prose.ts';
import { prose, text } from '../job/builder.ts';
import * as fixture from '../pages/fixture.ts';
import { files, inspection } from '../site/workspace.ts';
import { open } from './browser.ts';
import { siteForTests } from './site-for-tests.ts';

const element = (tagName: string, children: Prose): ProseElement<never> =>
  ({ type: 'element', tagName, properties: {}, children, at: null }) as ProseElement<never>;

/** What makes a browser shrink the whole print when it runs over the edge of the sheet. */
const word = 'Steckverbindergehäusehalterungsschraubensicherung'.repeat(5);
const row = element(
  'tr',
  Array.from({ length: 12 }, (_, column) =>
    element('td', [text(column === 0 ? word : `25 N·m at ${column}`)]),
  ),
);
const wide: Prose = [
  element('table', [element('tbody', [row, row])]),
  element('p', [element('code', [text(word)])]),
  element('pre', [element('code', [text(`${'x = 1; '.repeat(60)}\n${word}`)])]),
  element('ul', [element('li', [text(word)])]),
];

const guide = {
  ...fixture.titled(`${word} ${word}`),
  opening: [prose(...wide)],
  partNumber: { value: word, at: fixture.guide.title.at },
};

const site = siteForTests(() => [inspection(guide), files()]);

/** Elements that reach over the right edge of the window. */
const overTheEdge = `[...document.querySelectorAll('body *')]
  .filter((element) => element.getBoundingClientRect().right > innerWidth + 0.5)
  .map((element) => element.outerHTML.slice(0, 60))`;

describe('wide tables, code and words that no hyphen breaks', () => {
  it.each(['index.html', 'guides/lamp-cradle/index.html'])('fit a phone of 320 px: %s', async (path) => {
    const { page } = await open(site.browser, site.folder, path, { viewport: { width: 320, height: 640 } });
    expect(await page.evaluate('document.documentElement.scrollWidth - innerWidth')).toBe(0);
    await page.context().close();
  });

  it.each([
    ['A4', 680],
    ['Letter', 702],
  ])('fit the printed sheet, so that nothing is shrunk: %s', async (_, width) => {
    const { page } = await open(site.browser, site.folder, 'guides/lamp-cradle/index.html', {
      viewport: { width, height: 1000 },
    });
    await page.emulateMedia({ media: 'print' });
    expect(await page.evaluate(overTheEdge)).toEqual([]);
    await page.context().close();
  });
});
