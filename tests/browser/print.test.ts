import { execFileSync } from 'node:child_process';
import { mkdtemp, readdir, readFile, rm } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import type { GuideJson } from '../../src/pages/guide-schema.ts';
import { diskFiles, inspect } from '../../src/shop/index.ts';
import { buildSite } from '../../src/site/build-site.ts';
import { open, startChromium } from './browser.ts';

// A CommonJS module whose types say that its function is the default export of an ES module.
const jsQR: typeof import('jsqr').default = createRequire(import.meta.url)('jsqr');

// A browser on a busy machine takes its time; nothing here is about speed.
vi.setConfig({ testTimeout: 240_000, hookTimeout: 240_000 });

/** Of the sheet on which the prints are made, in millimetres. */
const letter = { width: 215.9, height: 279.4, margin: 15 };

/** Enough for four pixels to a module. */
const DPI = 110;

/** The printed width of a QR code, in millimetres. */
const CODE = 46;

const address = 'https://guides.example/quarrel-lane/';

/** The job of a guide for the last of its builds, printed by Chromium. */
interface Job {
  readonly name: string;
  readonly fragment: string;
  readonly file: string;
  /** What is wider than the sheet's text, or taller than a sheet. */
  readonly tooLarge: readonly string[];
  /** The plan that the page showed for the fragment. */
  readonly plan: string | undefined;
}

let browser: Browser;
let folder: string;
let jobs: readonly Job[];

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'baybook print '));
  const files = diskFiles(resolve(import.meta.dirname, '../../guides'));
  const outcome = await buildSite(await inspect(files), files, folder);
  if (!outcome.ok) throw new Error(outcome.problems.join('\n'));
  browser = await startChromium();
  const printed: Job[] = [];
  for (const name of (await readdir(join(folder, 'guides'))).sort()) printed.push(await print(name));
  jobs = printed;
});

afterAll(async () => {
  await browser?.close();
  await rm(folder, { recursive: true, force: true });
});

async function print(name: string): Promise<Job> {
  const json: GuideJson = JSON.parse(await readFile(join(folder, 'guides', name, 'guide.json'), 'utf8'));
  const fragment = fragmentOf(json);
  const pixels = (millimetres: number) => Math.floor((millimetres / 25.4) * 96);
  const { page } = await open(browser, folder, `guides/${name}/index.html`, {
    hash: fragment,
    viewport: { width: pixels(letter.width - 2 * letter.margin), height: 900 },
  });
  const plan = await page.evaluate<string | undefined>('document.documentElement.dataset.plan');
  await page.emulateMedia({ media: 'print' });
  const tooLarge = await page.evaluate<string[]>(`[...document.querySelectorAll('main *')]
    .filter((element) => {
      const { right, height } = element.getBoundingClientRect();
      const tall = /^(svg|img|tr)$/i.test(element.tagName) && height > ${pixels(letter.height - 33)};
      return right > innerWidth + 0.5 || tall;
    })
    .map((element) => element.outerHTML.slice(0, 60))`);
  await page.emulateMedia({ media: null });
  const file = join(folder, `${name}.pdf`);
  await page.pdf({ path: file, format: 'Letter' });
  await page.context().close();
  return { name, fragment, file, tooLarge, plan };
}

/** The last build of the last plan, as the page's script names it; empty where the guide has no options. */
function fragmentOf({ plans }: GuideJson): string {
  const build = Object.entries(plans.at(-1)?.builds[0] ?? {});
  if (plans.length < 2) return '';
  const text = (value: boolean | string) => (typeof value === 'string' ? value : value ? 'yes' : 'no');
  return `#build=${build.map(([option, value]) => `${option}:${text(value)}`).join(',')}`;
}

/** A sheet as poppler paints it, a byte a pixel (0 black). */
interface Sheet {
  readonly data: Uint8Array;
  readonly width: number;
  readonly height: number;
}

/** Paints the sheets of a print up to the last one wanted, all in one run of pdftoppm. */
async function sheets(file: string, dpi: number, last: number): Promise<readonly Sheet[]> {
  const into = await mkdtemp(join(folder, 'sheets-'));
  execFileSync('pdftoppm', ['-r', String(dpi), '-gray', '-l', String(last), file, join(into, 'sheet')]);
  const names = (await readdir(into)).sort();
  return Promise.all(names.map(async (name) => grey(await readFile(join(into, name)))));
}

/** Reads a portable grey map (netpbm, binary). */
function grey(bytes: Buffer): Sheet {
  const header = /^P5\s+(\d+)\s+(\d+)\s+255\s/.exec(bytes.subarray(0, 40).toString('latin1'));
  if (!header) throw new Error('pdftoppm wrote no grey picture');
  return { data: bytes.subarray(header[0].length), width: Number(header[1]), height: Number(header[2]) };
}

/** How many dark pixels lie in the text of a sheet, and where one lies in its margins. */
function inkOf({ data, width, height }: Sheet): { readonly inside: number; readonly outside: string | null } {
  const perMm = width / letter.width;
  const edge = letter.margin - 0.7;
  const [left, right] = [Math.floor(edge * perMm), Math.ceil((letter.width - edge) * perMm)];
  const [top, foot] = [Math.floor(edge * perMm), Math.floor((letter.height - 18) * perMm)];
  let inside = 0;
  for (let y = 0; y < height; y += 1) {
    for (let x = 0; x < width; x += 1) {
      if ((data[y * width + x] ?? 255) > 200) continue;
      if (x < left || x > right || y < top) return { inside, outside: `${x}, ${y}` };
      // The feet stand below the text.
      if (y < foot) inside += 1;
    }
  }
  return { inside, outside: null };
}

describe('the printed job of every guide of the demo', () => {
  it('has nothing wider than its text or taller than a sheet', () => {
    expect(jobs).toHaveLength(6);
    expect(jobs.map(({ name, tooLarge }) => [name, tooLarge])).toEqual(jobs.map(({ name }) => [name, []]));
  });

  it('leads back to the guide and build by the code on its cover, printed at its full size', async () => {
    for (const { name, fragment, file } of jobs) {
      const [cover] = await sheets(file, DPI, 1);
      if (!cover) throw new Error(`${name} was not painted`);
      const rgba = Uint8ClampedArray.from({ length: cover.data.length * 4 }, (_, index) =>
        index % 4 === 3 ? 255 : (cover.data[index >> 2] ?? 255),
      );
      const code = jsQR(rgba, cover.width, cover.height);
      expect(code?.data).toBe(`${address}guides/${name}/index.html${fragment}`);
      // A print that runs over the sheet is shrunk by the browser, and the code with it.
      const { topLeftCorner, topRightCorner } = code?.location ?? {};
      const across = Number(topRightCorner?.x) - Number(topLeftCorner?.x);
      const modules = 17 + 4 * Number(code?.version);
      const expected = ((CODE * modules) / (modules + 8) / 25.4) * DPI;
      expect(Math.abs(across - expected), name).toBeLessThan(3);
    }
  });

  it('is of the build that the code names: the page follows the same fragment', () => {
    for (const { fragment, plan } of jobs) expect(plan !== undefined).toBe(fragment !== '');
  });

  it('has no ink in the margins, and no empty sheet', async () => {
    const faults: string[] = [];
    for (const { name, file } of jobs) {
      for (const [index, sheet] of (await sheets(file, 36, 99)).entries()) {
        const { inside, outside } = inkOf(sheet);
        if (outside) faults.push(`${name}, sheet ${index + 1}: ink at ${outside}`);
        else if (inside < 20) faults.push(`${name}, sheet ${index + 1} is empty`);
      }
    }
    expect(faults).toEqual([]);
  });

  it('ends with a sheet of its own for the owner', () => {
    for (const { name, file } of jobs) {
      const sheets = execFileSync('pdftotext', ['-layout', file, '-'], { encoding: 'utf8' }).split('\f');
      const last = sheets.at(-2) ?? '';
      expect(last.trimStart().startsWith('For the owner'), name).toBe(true);
      for (const words of ['Vehicle registration', 'Measured at the hand-over', 'Received by']) {
        expect(last, name).toContain(words);
      }
    }
  });
});
