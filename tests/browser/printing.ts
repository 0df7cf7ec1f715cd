import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { Browser, BrowserContextOptions, Page } from 'playwright-core';
import type { GuideJson } from '../../src/pages/guide/guide-schema.ts';
import { open } from './browser.ts';
import { findUnits, markUnits, tornUnits, type Unit } from './sheet-marks.ts';
import { FOOT, MARGIN, type Paper, textOf } from './sheets.ts';
import type { SiteForTests } from './site-for-tests.ts';

/** The site of the demo shop, and a browser to print it with. */
export type Press = SiteForTests<Browser>;

/** The data of a guide as the site publishes them. */
export async function guideData({ folder }: Press, name: string): Promise<GuideJson> {
  return JSON.parse(await readFile(join(folder, 'guides', name, 'guide.json'), 'utf8'));
}

/** The last build of the last plan, as the page's script names it; empty where the guide has no options. */
export function fragmentOf({ plans }: GuideJson): string {
  const build = Object.entries(plans.at(-1)?.builds[0] ?? {});
  if (plans.length < 2) return '';
  const text = (value: boolean | string) => (typeof value === 'string' ? value : value ? 'yes' : 'no');
  return `#build=${build.map(([option, value]) => `${option}:${text(value)}`).join(',')}`;
}

/** The job of a guide for the last of its builds, printed by Chromium. */
export interface Job {
  readonly name: string;
  readonly data: GuideJson;
  readonly fragment: string;
  readonly file: string;
  /** What stands on each sheet. */
  readonly text: readonly string[];
  /** What is wider than the sheet's text, or taller than a sheet. */
  readonly tooLarge: readonly string[];
  /** The plan that the page showed for the fragment. */
  readonly plan: string | undefined;
  /** How each note for trainees begins, title and text. */
  readonly trainees: readonly string[];
  readonly links: readonly PrintedLink[];
  readonly units: readonly Unit[];
  readonly torn: readonly string[];
}

/** A link as it stands in a print. */
export interface PrintedLink {
  readonly words: string;
  /** The number of the step that it leads to; `null` for another place. */
  readonly step: string | null;
  /** Its line, and its colour against that of the text. */
  readonly look: string;
}

const linksOfPage = `[...document.querySelectorAll('main a')]
  .filter((link) => link.getClientRects().length > 0)
  .map((link) => {
    const href = link.getAttribute('href');
    const target = href.startsWith('#') ? document.getElementById(href.slice(1)) : null;
    const style = getComputedStyle(link);
    const same = style.color === getComputedStyle(link.parentElement).color;
    return {
      words: link.innerText.trim(),
      step: target?.matches('.step') ? target.querySelector('[data-step]').innerText : null,
      look: style.textDecorationLine + ', ' + (same ? 'as around it' : style.color),
    };
  })`;

/** Prints a guide; then, with marks in it, once more to see where its sheets end. */
export async function printJob(press: Press, name: string, paper: Paper): Promise<Job> {
  const data = await guideData(press, name);
  const fragment = fragmentOf(data);
  const page = await openGuide(press, name, fragment, paper);
  const plan = await page.evaluate<string | undefined>('document.documentElement.dataset.plan');
  const trainees = await page.evaluate<
    string[]
  >(`[...document.querySelectorAll('.why > :not(summary, .only)')]
    .map((element) => element.textContent.trim().replace(/\\s+/g, ' ').slice(0, 60))`);
  await page.emulateMedia({ media: 'print' });
  const tooLarge = await page.evaluate<string[]>(`[...document.querySelectorAll('main *')]
    .filter((element) => {
      const { right, height } = element.getBoundingClientRect();
      const tall = /^(svg|img|tr)$/i.test(element.tagName) && height > ${pixels(paper.height - MARGIN - FOOT)};
      return right > innerWidth + 0.5 || tall;
    })
    .map((element) => element.outerHTML.slice(0, 60))`);
  const links = await page.evaluate<readonly PrintedLink[]>(linksOfPage);
  const file = await printTo(press, page, name, paper);
  const { units, torn } = await readUnits(press, page, name, paper);
  await page.context().close();
  return { name, data, fragment, file, text: textOf(file), tooLarge, plan, trainees, links, units, torn };
}

/** Where the sheets of a guide end after something has been done to its page. */
export async function inPrint(
  press: Press,
  name: string,
  paper: Paper,
  change: (page: Page) => Promise<void>,
): Promise<Pick<Job, 'units' | 'torn'>> {
  const page = await openGuide(press, name, fragmentOf(await guideData(press, name)), paper);
  await page.emulateMedia({ media: 'print' });
  await change(page);
  const read = await readUnits(press, page, `${name} changed`, paper);
  await page.context().close();
  return read;
}

async function readUnits(
  press: Press,
  page: Page,
  name: string,
  paper: Paper,
): Promise<Pick<Job, 'units' | 'torn'>> {
  const marked = await markUnits(page);
  const units = findUnits(marked, await printTo(press, page, `${name} marked`, paper));
  return { units, torn: tornUnits(units, paper.height - MARGIN - FOOT) };
}

/** Opens a guide in a window as wide as the text of a sheet, so that what is measured under `print` is what is printed. */
export async function openGuide(
  { browser, folder }: Press,
  name: string,
  hash: string,
  paper: Paper,
  options: BrowserContextOptions = {},
): Promise<Page> {
  const viewport = { width: pixels(paper.width - 2 * MARGIN), height: 900 };
  return (await open(browser, folder, `guides/${name}/index.html`, { hash, viewport, ...options })).page;
}

/** Millimetres as CSS pixels, rounded down. */
export function pixels(millimetres: number): number {
  return Math.floor((millimetres / 25.4) * 96);
}

/** Prints a page and tells where. */
export async function printTo({ top }: Press, page: Page, name: string, { format }: Paper): Promise<string> {
  const path = join(top, `${name}, ${format}.pdf`);
  await page.emulateMedia({ media: null });
  await page.pdf({ path, format });
  return path;
}
