import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { drawTemplate } from '../../src/cut/draw-template.ts';
import type { CutTemplate } from '../../src/model/cut-template.ts';
import { checkPrint } from '../../src/trade/print-check.ts';
import { CONTEXT, hole } from '../cut/fixtures.ts';
import * as fixture from '../pages/fixture.ts';
import { long } from '../samples.ts';
import { files, inspection } from '../site/workspace.ts';
import { firefoxOfWorker } from './browser.ts';
import { type Host, startHost } from './host.ts';
import { siteForTests } from './site-for-tests.ts';

const guide = 'guides/lamp-cradle/index.html';
const pdf = 'guides/lamp-cradle/cut-templates/notch-a4.pdf';
const [across, up] = [99.2, 100.6];

function notch(): CutTemplate {
  const [one] = fixture.guide.templates.values();
  if (!one) throw new Error('the fixture has no template');
  return { ...one, holes: [hole(30, 40, 8)] };
}

const site = siteForTests(() => {
  const templates = new Map([[notch().id, notch()]]);
  return [inspection({ ...fixture.guide, templates }), files()];
});

let host: Host;

beforeAll(async () => {
  host = await startHost(site.folder);
});

afterAll(() => host.stop());

interface Strokes {
  readonly boxes: readonly (readonly number[])[];
  readonly words: readonly string[];
}

type Matrix = readonly [number, number, number, number, number, number];

/** The boxes of all that is drawn in a PDF, in mm, and its words page by page, as pdf.js reads them. */
async function strokesOf(bytes: Uint8Array): Promise<Strokes> {
  const { getDocument, OPS } = await import('pdfjs-dist/legacy/build/pdf.mjs');
  const document = await getDocument({ data: new Uint8Array(bytes) }).promise;
  const boxes: number[][] = [];
  const words: string[] = [];
  for (let number = 1; number <= document.numPages; number++) {
    const page = await document.getPage(number);
    words.push((await page.getTextContent()).items.map((item) => ('str' in item ? item.str : '')).join(' '));
    const { fnArray, argsArray } = await page.getOperatorList();
    let now: Matrix = [1, 0, 0, 1, 0, 0];
    const kept: Matrix[] = [];
    fnArray.forEach((operator, i) => {
      const args = argsArray[i];
      if (operator === OPS.save) kept.push(now);
      else if (operator === OPS.restore) now = kept.pop() ?? now;
      else if (operator === OPS.transform) now = times(now, args);
      else if (operator === OPS.constructPath) {
        const [x1, y1, x2, y2] = args[2] as readonly number[];
        const [from, to] = [at(now, x1 ?? 0, y1 ?? 0), at(now, x2 ?? 0, y2 ?? 0)];
        boxes.push([number, ...[...from, ...to].map((v) => (v * 25.4) / 72)]);
      }
    });
  }
  return { boxes, words };
}

function times([a, b, c, d, e, f]: Matrix, [g, h, i, j, k, l]: Matrix): Matrix {
  return [a * g + c * h, b * g + d * h, a * i + c * j, b * i + d * j, a * k + c * l + e, b * k + d * l + f];
}

function at([a, b, c, d, e, f]: Matrix, x: number, y: number): [number, number] {
  return [a * x + c * y + e, b * x + d * y + f];
}

/** What `baybook cut --measured` draws. */
async function byCommand(): Promise<Strokes> {
  const check = checkPrint(across, up);
  if (check.kind !== 'correct') throw new Error(check.kind);
  const drawn = await drawTemplate(notch(), { ...CONTEXT, papers: ['a4'], correction: check.correction });
  const file = drawn.files.find(({ name }) => name.endsWith('-a4-corrected.pdf'));
  if (!file) throw new Error('no corrected file');
  return strokesOf(file.bytes);
}

/** Holds a file that a browser made against that of the command. */
async function holdAgainst(bytes: Uint8Array): Promise<void> {
  const [made, asked] = [await strokesOf(bytes), await byCommand()];
  expect(made.boxes.length).toBe(asked.boxes.length);
  const off = made.boxes.map((box, i) =>
    Math.max(...box.map((v, k) => Math.abs(v - (asked.boxes[i]?.[k] ?? Number.NaN)))),
  );
  expect(Math.max(...off)).toBeLessThan(0.01);
  // 100 / 99.2 and 100 / 100.6, to four places.
  for (const page of made.words) expect(page).toContain('CORRECTED ×1.0081 across, ×0.9940 up');
}

const measure = `(() => {
  document.querySelector('#notch .print-check').open = true;
  for (const [name, side] of [['across', '${across}'], ['up', '${up}']])
    document.querySelector('#notch .' + name).value = side;
  document.querySelector('#notch .print-sides button').click();
})()`;

/** The policy of the page lets a script read no file of its own making, so the test looks over its shoulder. */
const watch = `(() => {
  const make = URL.createObjectURL;
  URL.createObjectURL = (blob) => make.call(URL, (globalThis.handedBack = blob));
})()`;

const correctedBytes =
  'globalThis.handedBack.arrayBuffer().then((bytes) => Array.from(new Uint8Array(bytes)))';

describe('Chromium', () => {
  it('corrects over http at once, and saves the file', async () => {
    const page = await site.browser.newPage();
    await page.goto(host.address + guide);
    await page.evaluate(measure);
    const download = page.waitForEvent('download');
    await page.locator('#notch .verdict button', { hasText: 'A4' }).first().click();
    const saved = await download;
    expect(saved.suggestedFilename()).toBe('notch-a4-corrected.pdf');
    await holdAgainst(await readFile(await saved.path()));
    await page.close();
  });

  it('corrects from file:// the PDF that is chosen, and no other file', async () => {
    const page = await site.browser.newPage();
    await page.goto(pathToFileURL(join(site.folder, guide)).href);
    await page.evaluate(measure);
    expect(await page.locator('#notch .verdict button').count()).toBe(0);
    const input = page.locator('#notch .verdict input');
    const download = page.waitForEvent('download');
    await input.setInputFiles(join(site.folder, pdf));
    const saved = await (await download).path();
    await holdAgainst(await readFile(saved));
    await input.setInputFiles({ name: 'x.pdf', mimeType: 'application/pdf', buffer: await readFile(saved) });
    await page.getByText('This file is corrected already').waitFor();
    await input.setInputFiles({ name: 'x.pdf', mimeType: 'application/pdf', buffer: Buffer.from('no PDF') });
    await page.getByText('This file is no template of a guide').waitFor();
    await page.close();
  });

  it('offers nothing where a setting is to blame', async () => {
    const page = await site.browser.newPage();
    await page.goto(host.address + guide);
    await page.evaluate(measure.replaceAll(/'(?:99|100)\.\d'/g, "'94'"));
    expect(await page.locator('#notch .verdict :is(button, input)').count()).toBe(0);
    await page.close();
  });
});

describe.runIf(long)('Firefox', () => {
  it('corrects over http and from file://', async () => {
    const browser = await firefoxOfWorker();
    const page = await browser.newPage();
    const handedBack = async (): Promise<void> => {
      await page.waitForSelector('#notch a.corrected');
      const name = await page.$eval('#notch a.corrected', (link) => link.getAttribute('download'));
      expect(name).toBe('notch-a4-corrected.pdf');
      await holdAgainst(Uint8Array.from((await page.evaluate(correctedBytes)) as number[]));
    };
    const addresses = [pathToFileURL(join(site.folder, guide)).href, host.address + guide];
    for (const address of addresses) {
      await page.goto(address);
      await page.evaluate(watch);
      await page.evaluate(measure);
      if (address.startsWith('http')) await page.click('#notch .verdict button');
      else {
        const input = await page.$('#notch .verdict input');
        await (input as unknown as { uploadFile(path: string): Promise<void> }).uploadFile(
          join(site.folder, pdf),
        );
      }
      await handedBack();
    }
    await page.close();
  });
});
