import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Browser as Chromium } from 'playwright-core';
import type { Browser as Firefox } from 'puppeteer-core';
import { expect } from 'vitest';
import { shortFingerprint } from '../../src/pages/frame/identity.ts';
import type { GuideJson } from '../../src/pages/guide/guide-schema.ts';
import { open } from './browser.ts';
import { fragmentOf, guideData, type Press } from './printing.ts';
import { type Paper, textOf } from './sheets.ts';

/** What the sheets of a job sheet hold, read from the page that fills them. */
export interface JobSheet {
  readonly count: number;
  /** What stands over the foot or the edge of its sheet. */
  readonly over: readonly string[];
  /** Columns that end with a heading or with a message, and steps that go on elsewhere. */
  readonly parted: readonly string[];
  /** The numbers of the steps as they follow, each with its sheet. */
  readonly steps: readonly (readonly [string, number])[];
  /** What the page says in the safety messages of a step or in front of it, or of how it stands to what was released, and where the sheet does not say it so. */
  readonly lostMessages: readonly string[];
  /** The messages that were looked for. */
  readonly messages: number;
}

/** Reads the sheets in the page. A message is told with all its words, in the order of the page, before what it guards. */
const readSheets = `(() => {
  // The sheet lets a hazard run on into what it does: blanks and full stops are no difference.
  const words = (element) => (element?.textContent ?? '').replace(/[\\s.]+/g, '');
  const seen = (element) => !element.closest('[hidden=""]') && !element.closest('.why');
  const told = (root, name) => [...root.querySelectorAll(name)].filter(seen).map((one) => {
    const copy = one.cloneNode(true);
    for (const away of copy.querySelectorAll('[hidden], [data-plan] .only, .only, [class^="bay-"]')) away.remove();
    return words(copy);
  });
  const sheets = [...document.querySelectorAll('.paper-sheet')];
  const over = sheets.flatMap((sheet, index) => {
    const body = sheet.querySelector('.paper-body').getBoundingClientRect();
    return [...sheet.querySelectorAll('.paper-body *')].filter((one) => {
      const { bottom, right } = one.getBoundingClientRect();
      return bottom > body.bottom + 0.5 || right > body.right + 0.5;
    }).map((one) => 'sheet ' + (index + 1) + ': ' + words(one).slice(0, 40));
  });
  const ends = [...document.querySelectorAll('.paper-column')].flatMap((column) => {
    const last = column.lastElementChild;
    return last?.matches('h2, h3, .paper-head, .paper-message') ? [words(last).slice(0, 40)] : [];
  });
  const torn = [...document.querySelectorAll('.paper-step-head h3')].map(words).filter((title) => title.endsWith(',continued'));
  const steps = sheets.flatMap((sheet, index) =>
    [...sheet.querySelectorAll('.paper-step-head > b')].map((number) => [words(number), index + 1]));
  let messages = 0;
  const lost = [...document.querySelectorAll('main > .part > .step')].filter(seen).flatMap((step) => {
    const number = words(step.querySelector('.step-number [data-step]'));
    const copy = [...document.querySelectorAll('.paper-step')].find((one) => words(one.querySelector('b')) === number);
    const sheet = copy?.closest('.paper-band');
    const own = told(step, '.step-body > .message');
    const guards = told(step.parentElement, ':scope > .message');
    messages += own.length + guards.length;
    const shown = copy ? told(copy, '.paper-message') : [];
    const above = sheet ? told(sheet, '.paper-guards .paper-message') : [];
    return [
      ...(own.join('|') === shown.join('|') ? [] : ['step ' + number + ': ' + own + ' is told as ' + shown]),
      ...guards.filter((one) => !above.includes(one)).map((one) => 'step ' + number + ' is not guarded by ' + one),
    ];
  });
  // How the guide stands to what was released of it is said on the first sheet.
  const untold = told(document, '.draft-note, .head > .standing').filter((one) => !words(sheets[0]).includes(one));
  return { count: sheets.length, over, parted: [...ends, ...torn], steps, lostMessages: [...lost, ...untold], messages };
})()`;

/** Fills the job sheet of a guide for the last of its builds in Chromium, and prints it where a file is named. */
export async function jobSheetOf(
  { browser, folder }: { readonly browser: Chromium; readonly folder: string },
  press: Press,
  name: string,
  { format }: Paper,
  file: string | null,
): Promise<JobSheet> {
  const hash = fragmentOf(await guideData(press, name));
  const path = `guides/${name}/index.html`;
  const { page } = await open(browser, folder, path, { hash, viewport: { width: 1200, height: 900 } });
  await page.click('.paper-job');
  await page.check(`[name="paper"][value="${format.toLowerCase()}"]`);
  const read = await page.evaluate<JobSheet>(readSheets);
  if (file !== null) await page.pdf({ path: file, preferCSSPageSize: true });
  await page.context().close();
  return read;
}

/** The job sheet of one guide and the whole guide, printed by Firefox. */
export async function printInFirefox(
  firefox: Firefox,
  press: Press,
  name: string,
  { format }: Paper,
): Promise<{ readonly sheet: JobSheet; readonly job: string; readonly whole: string }> {
  const hash = fragmentOf(await guideData(press, name));
  const page = await firefox.newPage();
  await page.setViewport({ width: 1200, height: 900 });
  await page.goto(pathToFileURL(join(press.folder, 'guides', name, 'index.html')).href + hash);
  await page.waitForSelector('.paper-job');
  const job = join(press.top, `${name} job, Firefox ${format}.pdf`);
  const whole = join(press.top, `${name} whole, Firefox ${format}.pdf`);
  const margin = { top: '15mm', left: '15mm', right: '15mm', bottom: '18mm' };
  await page.pdf({ path: whole, format, margin });
  await page.click('.paper-job');
  await page.click(`[name="paper"][value="${format.toLowerCase()}"]`);
  const sheet = (await page.evaluate(readSheets)) as JobSheet;
  await page.pdf({ path: job, format, preferCSSPageSize: true });
  await page.close();
  return { sheet, job, whole };
}

/** Nothing torn, parted, over its sheet or left unsaid, and the first step by the third sheet. */
export function expectSound(sheet: JobSheet, title: string): void {
  const { over, parted, lostMessages, steps, messages } = sheet;
  expect({ over, parted, lostMessages }, title).toEqual({ over: [], parted: [], lostMessages: [] });
  expect(messages, title).toBeGreaterThan(1);
  expect(
    steps.map(([number]) => Number(number)),
    title,
  ).toEqual(steps.map((_, index) => index + 1));
  expect(steps[0]?.[1], title).toBeLessThanOrEqual(3);
}

/** Title, revision, fingerprint and number at the foot of each sheet of a print. */
export function expectFeet(file: string, data: GuideJson): number {
  const sheets = textOf(file).map((text) => text.replace(/\s+/g, ' '));
  const print = shortFingerprint(data.fingerprint).replace(/\s/g, ' ');
  for (const [index, text] of sheets.entries()) {
    const foot = text.slice(-300);
    for (const words of [data.title, `Revision ${data.revision}`, print, 'Build: '])
      expect(foot, data.title).toContain(words);
    expect(foot, data.title).toMatch(/Vehicle registration|Hull number/);
    expect(foot, data.title).toContain(`Sheet ${index + 1} of ${sheets.length}`);
  }
  return sheets.length;
}
