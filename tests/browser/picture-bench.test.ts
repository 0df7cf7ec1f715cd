import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { Page as ChromiumPage } from 'playwright-core';
import type { Page as FirefoxPage } from 'puppeteer-core';
import sharp from 'sharp';
import { beforeAll, expect, it, vi } from 'vitest';
import { openPreview, type PreviewBench } from '../preview/open-preview.ts';
import { long, sampleOf } from '../samples.ts';
import { chromiumOfWorker, firefoxOfWorker } from './browser.ts';

// A browser on a busy machine takes its time; nothing here is about speed.
vi.setConfig({ testTimeout: 300_000, hookTimeout: 240_000 });

/** How many photographs are dropped in, and how many marks are placed in all. */
const wanted = long ? { photographs: 12, marks: 20 } : { photographs: 1, marks: 2 };

let photographs: readonly { readonly name: string; readonly bytes: Buffer }[] = [];
beforeAll(async () => {
  photographs = await Promise.all(
    Array.from({ length: wanted.photographs }, async (_, index) => ({
      name: `IMG_${index + 1}.JPG`,
      bytes: await sharp({
        create: { width: 800, height: 600, channels: 3, background: { r: 20 * index, g: 90, b: 120 } },
      })
        .jpeg()
        .toBuffer(),
    })),
  );
});

/** What a hand does on the bench, in whichever browser. */
interface Hand {
  readonly press: (x: number, y: number) => Promise<void>;
  readonly drag: (from: readonly [number, number], to: readonly [number, number]) => Promise<void>;
  readonly run: (script: string) => Promise<unknown>;
}

/** Sets a field as a person would, and tells the page. */
const fill = (selector: string, value: string) => `(() => {
  const field = document.querySelector(${JSON.stringify(selector)});
  field.value = ${JSON.stringify(value)};
  field.dispatchEvent(new Event(field.matches('select') ? 'change' : 'input', { bubbles: true }));
})()`;

const settled = async (hand: Hand, what: string) =>
  expect.poll(() => hand.run(what), { timeout: 120_000, interval: 100 }).toBe(true);

/** Where a place of the picture is on the screen, from fractions of its width and height. */
async function at(
  hand: Hand,
  x: number,
  y: number,
  picture = '.bench-stage img',
): Promise<readonly [number, number]> {
  const box = (await hand.run(`(() => {
    const image = document.querySelector('${picture}');
    image.scrollIntoView({ block: 'center' });
    const { left, top, width, height } = image.getBoundingClientRect();
    return [left, top, width, height];
  })()`)) as [number, number, number, number];
  return [box[0] + x * box[2], box[1] + y * box[3]];
}

async function dropAll(hand: Hand): Promise<void> {
  const files = photographs.map(({ name, bytes }) => [name, bytes.toString('base64')]);
  await hand.run(`(() => {
    const data = new DataTransfer();
    for (const [name, text] of ${JSON.stringify(files)}) {
      const bytes = Uint8Array.from(atob(text), (sign) => sign.charCodeAt(0));
      data.items.add(new File([bytes], name, { type: 'image/jpeg' }));
    }
    document.querySelector('.bench-drop').dispatchEvent(new DragEvent('drop', { dataTransfer: data, bubbles: true, cancelable: true }));
  })()`);
  await settled(hand, `document.querySelectorAll('.bench-list button').length === ${photographs.length + 1}`);
}

/** Drops photographs in, places marks on each by pressing, chooses what they show, and writes all into the guide. */
async function illustrate(hand: Hand): Promise<void> {
  await settled(hand, `document.querySelector('.bench-list button') !== null`);
  await dropAll(hand);
  const each = wanted.marks / wanted.photographs;
  for (const index of photographs.keys()) {
    const name = `img-${index + 1}.jpg`;
    await hand.run(
      `[...document.querySelectorAll('.bench-list button')].find((one) => one.querySelector('b').textContent === '${name}').click()`,
    );
    await settled(
      hand,
      `document.querySelector('.bench-stage img')?.src.includes('${name}') && document.querySelector('.bench-stage img').naturalWidth > 0`,
    );
    const marks = Math.floor((index + 1) * each) - Math.floor(index * each);
    for (let mark = 0; mark < marks; mark += 1) {
      await hand.press(...(await at(hand, 0.25 + 0.2 * mark, 0.4)));
      await settled(hand, `document.querySelectorAll('.bench-dot').length === ${mark + 1}`);
      await hand.run(fill(`tr:nth-child(${mark + 1}) select`, ':fastener[liner-screw]'));
    }
    if (index === 0) {
      await hand.run(`document.querySelector('[name=tool][value=blur]').click()`);
      await hand.drag(await at(hand, 0.6, 0.6), await at(hand, 0.9, 0.8));
      await settled(hand, `document.querySelectorAll('.bench-box').length === 1`);
      await hand.run(`document.querySelector('[name=tool][value=mark]').click()`);
    }
    // What prints is drawn by the same hand as the print: a letter and a line for each mark.
    await settled(hand, `document.querySelectorAll('.bench-print tspan').length === ${marks}`);
    await hand.run(fill('[name=caption]', `Screw ${index + 1} of the liner`));
    await hand.run(fill('[name=alt]', `A panel with a screw, number ${index + 1}`));
    await hand.run(`document.querySelector('.bench-write').click()`);
    await settled(hand, `document.querySelector('.bench-told').textContent === 'Written into the guide'`);
    await settled(hand, `document.querySelector('[name=after]') === null`);
    await hand.run(`document.querySelector('.bench-told').textContent = ''`);
  }
}

async function expectIllustrated({ folder, ask }: PreviewBench, hand: Hand): Promise<void> {
  const path = join(folder, 'guides/lamp-cradle/guide.md');
  const text = await readFile(path, 'utf8');
  const added = [...text.matchAll(/:mark\[[A-Z]\]\{at="[\d.]+%,[\d.]+%"\} :fastener\[liner-screw\]/g)];
  expect(added).toHaveLength(wanted.marks + 1);
  expect(
    text
      .match(/blur="([^"]+)"/)?.[1]
      ?.split(',')
      .map((edge) => Math.round(Number.parseFloat(edge))),
  ).toEqual([60, 60, 90, 80]);
  expect(text).toMatch(/at="2[45](?:\.\d)?%,(?:39|40)(?:\.\d)?%"/);
  expect((await readdir(join(folder, 'guides/lamp-cradle/pictures'))).length).toBe(photographs.length + 1);
  // Each is taken up again and written as it stands: no byte is other than before.
  for (const index of [0, photographs.length]) {
    await hand.run(`[...document.querySelectorAll('.bench-list button')].at(-1 - ${index}).click()`);
    await hand.run(`document.querySelector('.bench-write').click()`);
    await settled(hand, `document.querySelector('.bench-told').textContent === 'Written into the guide'`);
    await hand.run(`document.querySelector('.bench-told').textContent = ''`);
  }
  expect(await readFile(path, 'utf8')).toBe(text);
  expect((await ask('/guides/lamp-cradle/index.html')).body).toContain('Screw 1 of the liner');
  await hand.run(`document.querySelector('.bench-undo').click()`);
  await expect
    .poll(() => readFile(path, 'utf8'), { timeout: 60_000 })
    .not.toContain(`Screw ${photographs.length} of`);
  await settled(hand, `document.querySelector('.bench-told').textContent.endsWith('taken back')`);
}

/** A photograph of 800 × 600 pixels, each a millimetre of a panel: two lengths, then three corners of an outline. */
async function pointAtPanel({ folder }: PreviewBench, hand: Hand): Promise<void> {
  const path = join(folder, 'guides/lamp-cradle/guide.md');
  const before = await readFile(path, 'utf8');
  await hand.run(
    `[...document.querySelectorAll('.bench-list button')].find((one) => one.querySelector('b').textContent === 'img-1.jpg').click()`,
  );
  await hand.run(`document.querySelector('.bench-panel').open = true`);
  await settled(hand, `document.querySelector('.bench-points img').offsetWidth > 0`);
  const places = [
    [0.1, 0.9],
    [0.9, 0.9],
    [0.1, 0.9],
    [0.1, 0.1],
    [0.2, 0.8],
    [0.6, 0.8],
    [0.6, 0.4],
    [0.3, 0.3],
  ] as const;
  for (const [index, [x, y]] of places.entries()) {
    await hand.press(...(await at(hand, x, y, '.bench-points img')));
    await settled(hand, `document.querySelectorAll('.bench-point').length === ${index + 1}`);
  }
  await hand.run(`document.querySelector('.bench-point-back').click()`);
  await hand.run(fill('[name=first-length]', '640 mm'));
  await hand.run(fill('[name=second-length]', '480 mm'));
  expect(await hand.run(`document.querySelector('.bench-panel output').value`)).toBe('');
  await hand.run(`document.querySelector('[name=square]').click()`);
  await settled(hand, `document.querySelectorAll('.bench-panel li').length === 5`);
  const said = (await hand.run(`document.querySelector('.bench-panel ul').textContent`)) as string;
  const off = Number(/a corner can be ([\d.]+) mm off/.exec(said)?.[1]);
  expect(off).toBeGreaterThan(1);
  expect(off).toBeLessThan(15);
  const points = async () =>
    [
      ...((await hand.run(`document.querySelector('.bench-panel output').value`)) as string).matchAll(
        /(-?[\d.]+),(-?[\d.]+)/g,
      ),
    ].map(([, x, y]) => [Number(x), Number(y)] as const);
  const found = await points();
  expect(found).toHaveLength(3);
  for (const [index, [x, y]] of (
    [
      [0, 0],
      [320, 0],
      [320, 240],
    ] as const
  ).entries()) {
    const [ownX = Number.NaN, ownY = Number.NaN] = found[index] ?? [];
    expect(Math.hypot(ownX - x, ownY - y)).toBeLessThan(off);
  }
  // An arrow key moves the last corner by a pixel of the screen, to the right.
  await hand.run(
    `document.activeElement.dispatchEvent(new KeyboardEvent('keydown', { key: 'ArrowRight', bubbles: true }))`,
  );
  await expect
    .poll(async () => (await points())[2]?.[0], { timeout: 60_000 })
    .toBeGreaterThan(found[2]?.[0] ?? 0);
  await hand.run(`document.querySelector('.bench-outline').click()`);
  await settled(hand, `document.querySelector('.bench-told').textContent.startsWith('The draft stands')`);
  const text = await readFile(path, 'utf8');
  expect(text).toContain('<!-- Drafted from the photograph pictures/img-1.jpg, by 640 mm and 480 mm on it');
  expect(text).toContain(':::cut-template[FILL IN what is cut, once it is measured on the panel]');
  await hand.run(`document.querySelector('.bench-undo').click()`);
  await expect.poll(() => readFile(path, 'utf8'), { timeout: 60_000 }).toBe(before);
}

const address = ({ preview }: PreviewBench) =>
  `http://localhost:${preview.port}/~preview/bench/?guide=lamp-cradle`;

/** A page of the bench in a browser, with a hand on it. */
async function inChromium(bench: PreviewBench): Promise<Opened> {
  const page = await (await chromiumOfWorker()).newPage({ viewport: { width: 1400, height: 900 } });
  const faults: string[] = [];
  page.on('pageerror', (error) => faults.push(String(error)));
  await page.goto(address(bench));
  return { hand: handOn(page, (script) => page.evaluate(script)), faults, close: () => page.close() };
}

async function inFirefox(bench: PreviewBench): Promise<Opened> {
  const page = await (await firefoxOfWorker()).newPage();
  await page.setViewport({ width: 1400, height: 900 });
  const faults: string[] = [];
  page.on('pageerror', (error) => faults.push(String(error)));
  await page.goto(address(bench), { waitUntil: 'load' });
  return { hand: handOn(page, (script) => page.evaluate(script)), faults, close: () => page.close() };
}

interface Opened {
  readonly hand: Hand;
  readonly faults: readonly string[];
  readonly close: () => Promise<void>;
}

function handOn({ mouse }: Pick<ChromiumPage | FirefoxPage, 'mouse'>, run: Hand['run']): Hand {
  return {
    press: (x, y) => mouse.click(x, y),
    drag: async (from, to) => {
      await mouse.move(...from);
      await mouse.down();
      await mouse.move(...to, { steps: 3 });
      await mouse.up();
    },
    run,
  };
}

const browsers = [
  ['Chromium', inChromium],
  ['Firefox', inFirefox],
] as const;

it.each(sampleOf(browsers, 1))(
  'takes photographs in, and marks and the points of a panel by pressing, in %s',
  async (_, openIn) => {
    const bench = await openPreview();
    const { hand, faults, close } = await openIn(bench);
    await illustrate(hand);
    await expectIllustrated(bench, hand);
    await pointAtPanel(bench, hand);
    expect(faults).toEqual([]);
    await close();
  },
);
