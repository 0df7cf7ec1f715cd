import { execFileSync } from 'node:child_process';
import { readdir } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { shortFingerprint } from '../../src/pages/frame/identity.ts';
import { contrast } from '../../src/site/device/accent.ts';
import { long, sampleOf, samples } from '../samples.ts';
import { open } from './browser.ts';
import { expectSound, jobSheetOf } from './job-sheet.ts';
import { inPrint, type Job, openGuide, pixels, printJob, printTo } from './printing.ts';
import { feetOf, headOf, imagesOf, inkOf, type Paper, paint, papers, textOf } from './sheets.ts';
import { demoForTests } from './site-for-tests.ts';

// A CommonJS module whose types say that its function is the default export of an ES module.
const jsQR: typeof import('jsqr').default = createRequire(import.meta.url)('jsqr');

const press = demoForTests();

/** Enough for four pixels to a module. */
const DPI = 110;

/** The printed width of a QR code, in millimetres. */
const CODE = 46;

const address = 'https://guides.example/quarrel-lane/';

const jobs = new Map<Paper, readonly Job[]>();

/**
 * In each run these are printed, each on one paper, and between them they have all that a print has: signal words,
 * photographs, notes for trainees, options, a car and a boat. In the long run every guide is printed on both papers.
 */
const eachRun: Readonly<Record<Paper['format'], string>> = { A4: 'swivel-seat', Letter: 'depth-transducer' };

/** Every guide that was printed; a fault is named after it and its paper. */
const all = () =>
  [...jobs].flatMap(([paper, printed]) =>
    printed.map((job) => ({ ...job, paper, title: `${job.name}, ${paper.format}` })),
  );

beforeAll(async () => {
  const guides = (await readdir(join(press.folder, 'guides'))).sort();
  for (const paper of papers) {
    const printed: Job[] = [];
    for (const name of guides.filter((one) => long || eachRun[paper.format] === one))
      printed.push(await printJob(press, name, paper));
    jobs.set(paper, printed);
  }
}, 600_000);

describe('the printed job of a guide of the demo', () => {
  it('has nothing wider than its text or taller than a sheet', () => {
    expect(new Set(all().map(({ name }) => name)).size).toBeGreaterThanOrEqual(samples(2, 8));
    expect(all().flatMap(({ title, tooLarge }) => tooLarge.map((one) => `${title}: ${one}`))).toEqual([]);
  });

  it('leads back to the guide and build by the code on its cover, printed at its full size', async () => {
    for (const { name, title, fragment, file } of all()) {
      const [cover] = await paint(file, DPI, 1);
      if (!cover) throw new Error(`${title} was not painted`);
      const rgba = new Uint8ClampedArray(cover.data.length * 4).fill(255);
      for (const [index, grey] of cover.data.entries()) rgba.fill(grey, 4 * index, 4 * index + 3);
      const code = jsQR(rgba, cover.width, cover.height);
      expect(code?.data).toBe(`${address}guides/${name}/index.html${fragment}`);
      // A print that runs over the sheet is shrunk by the browser, and the code with it.
      const { topLeftCorner, topRightCorner } = code?.location ?? {};
      const across = Number(topRightCorner?.x) - Number(topLeftCorner?.x);
      const modules = 17 + 4 * Number(code?.version);
      const expected = ((CODE * modules) / (modules + 8) / 25.4) * DPI;
      expect(Math.abs(across - expected), title).toBeLessThan(3);
    }
  });

  it('is of the build that the code names: the page follows the same fragment', () => {
    for (const { fragment, plan } of all()) expect(plan !== undefined).toBe(fragment !== '');
  });

  it('has no ink in the margins, and no empty sheet', async () => {
    const faults: string[] = [];
    for (const { title, file, paper } of all()) {
      for (const [index, sheet] of (await paint(file, 36, 99)).entries()) {
        const { inside, outside } = inkOf(sheet, paper);
        if (outside) faults.push(`${title}, sheet ${index + 1}: ink at ${outside}`);
        else if (inside < 20) faults.push(`${title}, sheet ${index + 1} is empty`);
      }
    }
    expect(faults).toEqual([]);
  });

  it('names guide, revision and fingerprint at the foot of every sheet, and which of how many it is', () => {
    for (const { title, data, file, text, paper } of all()) {
      const count = text.length;
      expect(count, title).toBeGreaterThan(5);
      const every = (words: string) => Array.from({ length: count }, () => words);
      const numbers = Array.from({ length: count }, (_, index) => `Page ${index + 1} of ${count}`);
      const identity = `revision ${data.revision}, ${shortFingerprint(data.fingerprint)}`;
      expect(feetOf(file, paper, 0, 0.42), title).toEqual(every(data.title));
      expect(feetOf(file, paper, 0.42, 0.58), title).toEqual(numbers);
      expect(feetOf(file, paper, 0.58, 1), title).toEqual(every(identity.replace(/\s/g, ' ')));
    }
  });

  it('names build and registration at the head of every sheet', () => {
    for (const { title, text } of all()) {
      for (const sheet of text) {
        expect(headOf(sheet).head, title).toMatch(/^Build: \S.* (?:Vehicle registration|Hull number): _+$/);
      }
    }
  });

  it('lists its contents where it has over eight sheets, and says what the job is for, whom to ask and what signal words mean', () => {
    let over = 0;
    for (const { title, text } of all()) {
      const [cover = '', ...rest] = text.map((sheet) => sheet.replace(/\s+/g, ' '));
      const front = [cover, ...rest.slice(0, 3)].join(' ');
      if (text.length > 8) {
        over += 1;
        expect(front, title).toContain('Contents, by the numbers of the steps');
      }
      for (const about of ['Meant for', 'Not for', 'Who may do the work', 'Ask']) {
        expect(front, title).toMatch(new RegExp(`${about} (?!not stated)\\S`));
      }
      for (const word of ['DANGER', 'WARNING', 'CAUTION', 'NOTICE']) {
        expect(rest.join(' '), title).toMatch(new RegExp(`${word} (?:will|could)`, 'i'));
      }
    }
    expect(over).toBeGreaterThan(samples(0, 3));
  });

  it('ends with a sheet of its own for the owner', () => {
    for (const { title, text } of all()) {
      const last = text.at(-1) ?? '';
      expect(headOf(last).rest.startsWith('For the owner'), title).toBe(true);
      for (const words of [/Vehicle registration|Hull number/, /Measured at the hand-over/, /Received by/]) {
        expect(last, title).toMatch(words);
      }
    }
  });

  it('leaves out what is told to trainees', () => {
    const told = all().flatMap(({ title, trainees, text }) => {
      const whole = text.join(' ').replace(/\s+/g, ' ');
      expect(whole.length).toBeGreaterThan(2000);
      return trainees.map((words) => [`${title}: ${words}`, whole.includes(words)]);
    });
    expect(told.length).toBeGreaterThan(samples(4, 12));
    expect(told.filter(([, printed]) => printed)).toEqual([]);
  });

  it('names a step by its number in the build, with no line or colour of a link', () => {
    for (const { title, links } of all()) {
      const toSteps = links.filter(({ step }) => step !== null);
      expect(toSteps.length, title).toBeGreaterThan(10);
      for (const { words, step } of toSteps) expect(words).toMatch(new RegExp(`(?:^|[Ss]tep )${step}$`));
      for (const { words, look } of links) expect([words, look]).toEqual([words, 'none, as around it']);
    }
  });

  it('prints each photograph as it was encoded, at 200 to 300 dots per inch of its printed size', () => {
    const lists = all().flatMap(({ title, file }) => imagesOf(file).map((image) => ({ title, ...image })));
    expect(lists.length).toBeGreaterThanOrEqual(samples(1, 3));
    for (const { title, encoding, across, up } of lists) {
      expect([title, encoding]).toEqual([title, 'jpeg']);
      expect(Math.min(across, up), title).toBeGreaterThanOrEqual(200);
      expect(Math.max(across, up), title).toBeLessThanOrEqual(300);
    }
  });
});

describe('a print', () => {
  const [a4, letter] = papers as readonly [Paper, Paper];
  const job = (paper: Paper) => {
    const found = jobs.get(paper)?.find(({ name }) => name === eachRun[paper.format]);
    if (!found) throw new Error(`no job was printed on ${paper.format}`);
    return found;
  };

  it.runIf(long)('has the same pictures from a phone', async () => {
    const viewport = { width: 390, height: 844 };
    const options = { viewport, deviceScaleFactor: 3, isMobile: true, hasTouch: true };
    const { name, fragment, file: fromDesk } = job(a4);
    const page = await openGuide(press, name, fragment, a4, options);
    const file = await printTo(press, page, 'from a phone', a4);
    await page.context().close();
    const pixels = (path: string) => imagesOf(path).map(({ encoding, size }) => `${encoding} ${size}`);
    expect(pixels(file)).toEqual(pixels(fromDesk));
  });

  it.runIf(long)('is the same from a dark screen as from a light one', async () => {
    const { name, fragment, file } = job(letter);
    const page = await openGuide(press, name, fragment, letter, { colorScheme: 'dark' });
    expect(await page.evaluate("matchMedia('(prefers-color-scheme: dark)').matches")).toBe(true);
    const dark = await paint(await printTo(press, page, 'dark', letter), 36, 99);
    await page.context().close();
    const light = await paint(file, 36, 99);
    expect(dark.map(({ data }, index) => Buffer.compare(data, light[index]?.data ?? data))).toEqual(
      light.map(() => 0),
    );
  });

  it('has signal words that read without colour (WCAG 2.2, 1.4.6: 7 to 1)', async () => {
    const { file } = job(a4);
    const painted = await paint(file, DPI, 99);
    const boxes = execFileSync('pdftotext', ['-bbox', file, '-'], { encoding: 'utf8' })
      .split('<page ')
      .slice(1);
    const found = boxes.flatMap((words, index) =>
      [
        ...words.matchAll(
          /xMin="(.*?)" yMin="(.*?)" xMax="(.*?)" yMax="(.*?)">(DANGER|WARNING|CAUTION|NOTICE)</g,
        ),
      ].map(([, left, top, right, foot, word]) => {
        const sheet = painted[index];
        if (!sheet) throw new Error(`sheet ${index + 1} was not painted`);
        const [x1 = 0, y1 = 0, x2 = 0, y2 = 0] = [left, top, right, foot].map((place) =>
          Math.round((Number(place) / 72) * DPI),
        );
        const rows = Array.from({ length: y2 - y1 }, (_, row) =>
          sheet.data.subarray((y1 + row) * sheet.width + x1, (y1 + row) * sheet.width + x2),
        );
        const greys = rows.flatMap((row) => [...row]);
        const [ink, ground] = [Math.min(...greys), Math.max(...greys)];
        return { word, contrast: contrast([ink, ink, ink], [ground, ground, ground]) };
      }),
    );
    expect(new Set(found.map(({ word }) => word))).toEqual(
      new Set(['DANGER', 'WARNING', 'CAUTION', 'NOTICE']),
    );
    for (const { word, contrast } of found) expect(contrast, word).toBeGreaterThanOrEqual(7);
  });

  it('says the address of a link that leaves the site, and no other, black on white from a dark screen', async () => {
    const page = await openGuide(press, 'crash-bar', '', a4, { colorScheme: 'dark' });
    expect(await page.evaluate("matchMedia('(prefers-color-scheme: dark)').matches")).toBe(true);
    await page.evaluate(`document.querySelector('.opening p').insertAdjacentHTML('beforeend',
      ' See <a href="https://law.example/lamps?a=1">the law</a> and <a href="../../index.html">all guides</a>.')`);
    const file = await printTo(press, page, 'outside', a4);
    await page.context().close();
    for (const { data } of await paint(file, 36, 99)) {
      expect(data.filter((grey) => grey === 255).length / data.length).toBeGreaterThan(0.75);
      expect(data.reduce((least, grey) => Math.min(least, grey))).toBeLessThan(60);
    }
    const text = textOf(file).join(' ').replace(/\s+/g, ' ');
    expect(text).toContain('See the law (https://law.example/lamps?a=1) and all guides.');
    expect(text).not.toContain('index.html)');
  });
});

describe('the end of a sheet', () => {
  it('tears nothing that would have stood on one, and parts nothing that belongs together', () => {
    for (const { title, data, units, torn } of all()) {
      const steps = data.plans.at(-1)?.steps.length;
      expect(units.filter(({ kind }) => kind === 'step').length, title).toBe(steps);
      expect(torn, title).toEqual([]);
    }
  });

  it.runIf(long)('is seen where the style would let it tear', async () => {
    const style =
      '.step, .step *, .figure, .message { break-inside: auto !important; break-after: auto !important }';
    const torn: string[] = [];
    const guides = ['swivel-seat', 'lamp-cradle', 'flush-sensors', 'roof-vent', 'side-awning'];
    for (const guide of sampleOf(guides, 1)) {
      const loosened = await inPrint(press, guide, papers[0] as Paper, async (page) => {
        await page.evaluate(`(() => {
          const style = new CSSStyleSheet();
          style.replaceSync(${JSON.stringify(style)});
          document.adoptedStyleSheets.push(style);
        })()`);
      });
      torn.push(...loosened.torn);
    }
    expect(torn.length).toBeGreaterThan(2);
    expect(torn.join('\n')).toContain('torn: step');
  });

  it.runIf(long)('comes at a sensible place in a step that is higher than a sheet', async () => {
    for (const paper of sampleOf(papers, 1)) {
      const { torn, units } = await inPrint(press, 'lamp-cradle', paper, async (page) => {
        const count = await page.evaluate(`(() => {
          const body = document.querySelector('.step:has(.message):has(.figure) .step-body');
          for (const part of document.querySelectorAll('main > *')) if (!part.contains(body)) part.remove();
          const parts = [...body.children].filter((part) => part.matches('p, .figure, .message'));
          for (let copy = 0; copy < 4; copy += 1) for (const part of parts) body.append(part.cloneNode(true));
          return parts.length;
        })()`);
        expect(count).toBeGreaterThanOrEqual(3);
      });
      expect(units.filter(({ kind, height }) => kind === 'step' && height > paper.height)).toHaveLength(1);
      expect(torn).toEqual([]);
    }
  });
});

describe('the job sheet', () => {
  it('takes half the paper of the whole guide, on A4 and Letter, or at most 7 sheets', async () => {
    const guides = all().filter((one) => one.name !== 'lamp-cradle');
    for (const { name, file, paper, title } of sampleOf(guides, 1)) {
      const sheet = await jobSheetOf(press, press, name, paper, null);
      expectSound(sheet, title);
      const whole = textOf(file).length;
      // Letter is a step lower than A4: where that costs the job sheet one, the whole guide need not lose two.
      const lower = paper.format === 'Letter' ? 1 : 0;
      expect(sheet.count, `${title}: ${whole} as a whole`).toBeLessThanOrEqual(
        Math.max(7, Math.floor(whole / 2)) + lower,
      );
    }
  });

  it('takes at most 10 sheets for the longest guide', async () => {
    for (const paper of sampleOf(papers, 1)) {
      const sheet = await jobSheetOf(press, press, 'lamp-cradle', paper, null);
      expectSound(sheet, paper.format);
      expect(sheet.count).toBeLessThanOrEqual(paper.format === 'Letter' ? 11 : 10);
    }
  });

  it('carries what was typed of the vehicle on each sheet and label, and what was ticked', async () => {
    const { page } = await open(press.browser, press.folder, 'guides/crash-bar/index.html');
    await page.locator('.bay-ticks input').first().check();
    await page.click('.paper-job');
    await page.click('.paper-typed summary');
    await page.fill('input[data-fact="identity"]', 'QL 4711');
    const told = await page.locator('.paper-foot .paper-vehicle').allTextContents();
    expect(new Set(told)).toEqual(new Set(['Vehicle registration or VIN: QL 4711']));
    const labels = await page.locator('.paper-label').allTextContents();
    expect(labels.length).toBeGreaterThan(0);
    for (const label of labels) expect(label).toContain('QL 4711');
    expect(await page.locator('.paper-step .paper-tick', { hasText: '✓' }).count()).toBe(1);
    // A hand signs on some 40 by 8 mm (common practice, no source).
    const [wide = 0, high = 0] = await page.evaluate<readonly number[]>(`(() => {
      const field = document.querySelector('.paper-sheet td:nth-child(2).paper-write + .paper-write');
      const { width, height } = field.getBoundingClientRect();
      return [width, height];
    })()`);
    expect(Math.min(wide - pixels(40), high - pixels(8))).toBeGreaterThanOrEqual(0);
    await page.keyboard.press('Escape');
    expect(await page.locator('main').isVisible()).toBe(true);
    // The whole guide says it too: at the head of each sheet, on the cover, the labels and the owner's sheet.
    const file = join(press.top, 'typed.pdf');
    await page.pdf({ path: file, format: 'A4' });
    const whole = textOf(file);
    for (const sheet of whole) expect(headOf(sheet).head).toContain('Vehicle registration or VIN: QL 4711');
    const below = whole.map((sheet) => headOf(sheet).rest);
    for (const named of ['About this job', 'Bag labels', 'For the owner']) {
      expect(below.find((sheet) => sheet.includes(named))).toMatch(/Vehicle registration.*QL 4711/);
    }
    await page.context().close();
  });
});
