import { mkdtemp, readdir, rm, utimes, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import sharp from 'sharp';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { derivePictures } from '../../src/pictures/derive.ts';
import { inspectPicture } from '../../src/pictures/inspect.ts';
import type { DerivedPicture, PictureRequest } from '../../src/pictures/picture.ts';
import { contentHash } from '../../src/store/content-hash.ts';
import { folderStore, noStore, type Store } from '../../src/store/store.ts';
import { photo } from './fixtures.ts';

const today = new Date('2026-02-01T00:00:00Z');
const whole: PictureRequest = { crop: null, blur: [], zoom: null };

async function derive(bytes: Uint8Array, request: Partial<PictureRequest> = {}, cache: Store = noStore) {
  const derived = await derivePictures(bytes, 'p.jpg', { ...whole, ...request }, cache);
  if (!derived.ok) throw new Error(derived.problems[0]?.message);
  return derived.value;
}

function sizes(picture: DerivedPicture) {
  return picture.files.map(({ type, width, height }) => `${type.slice(6)} ${width}×${height}`);
}

test('a phone photo becomes screen sizes and one for paper', async () => {
  const derived = await derive(await photo(4000, 3000));
  expect(sizes(derived)).toEqual([
    'webp 480×360',
    'webp 800×600',
    'webp 1200×900',
    'webp 1600×1200',
    'jpeg 800×600',
  ]);
  expect([derived.width, derived.height, derived.detail]).toEqual([1600, 1200, null]);
});

test('a small picture is never enlarged', async () => {
  expect(sizes(await derive(await photo(300, 200)))).toEqual(['webp 300×200', 'jpeg 300×200']);
});

test('a very tall picture stays within what WebP can hold', async () => {
  const derived = await derive(await photo(400, 20_000));
  expect(derived.height).toBeLessThanOrEqual(3200);
});

test('a crop and a zoom are parts of the upright picture, cut before sizing', async () => {
  const quarter = { left: 0.5, top: 0.5, width: 0.5, height: 0.5 };
  const derived = await derive(await photo(2000, 1000), { crop: quarter, zoom: { ...quarter, width: 0.25 } });
  expect([derived.width, derived.height]).toEqual([1000, 500]);
  expect([derived.detail?.width, derived.detail?.height]).toEqual([500, 500]);
});

test('a name is the hash of the bytes, and the same picture gives the same bytes', async () => {
  const first = await derive(await photo(1000, 800));
  const second = await derive(await photo(1000, 800));
  expect(second).toEqual(first);
  for (const { name, bytes } of first.files) expect(name.split('.')[0]).toBe(contentHash(bytes));
});

describe('blur', () => {
  const box = { left: 0.25, top: 0.25, width: 0.5, height: 0.5 };

  /** Black and white stripes, two pixels wide: as fine as the strokes of a plate far away. */
  async function stripes() {
    const data = Buffer.alloc(400 * 400 * 3).map((_, index) =>
      (Math.floor(index / 3) % 400) % 4 < 2 ? 0 : 255,
    );
    return sharp(data, { raw: { width: 400, height: 400, channels: 3 } })
      .png()
      .toBuffer();
  }

  async function contrast(bytes: Uint8Array | undefined, left: number, top: number, side: number) {
    const { channels } = await sharp(
      await sharp(bytes).extract({ left, top, width: side, height: side }).png().toBuffer(),
    ).stats();
    return channels[0]?.stdev ?? Number.NaN;
  }

  test('leaves nothing of what stood in the area, and all of the rest', async () => {
    const derived = await derive(await stripes(), { blur: [box] });
    for (const { bytes } of derived.files) {
      expect(await contrast(bytes, 100, 100, 200)).toBeLessThan(8);
      expect(await contrast(bytes, 0, 0, 96)).toBeGreaterThan(80);
    }
  });

  test('also covers the enlarged view and a crop', async () => {
    const derived = await derive(await stripes(), { blur: [box], crop: { ...box, left: 0.5 }, zoom: box });
    expect(await contrast(derived.files.at(-1)?.bytes, 0, 0, 96)).toBeLessThan(8);
    expect(await contrast(derived.files.at(-1)?.bytes, 104, 0, 90)).toBeGreaterThan(80);
    expect(await contrast(derived.detail?.files.at(-1)?.bytes, 0, 0, 200)).toBeLessThan(8);
  });

  test('covers its area also where the crop hangs over the edge', async () => {
    const plate = { left: 0.6, top: 0.3, width: 0.2, height: 0.2 };
    const crop = { left: 0.5, top: 0.25, width: 2, height: 2 };
    const derived = await derive(await stripes(), { blur: [plate], crop });
    const last = derived.files.at(-1);
    expect([last?.width, last?.height]).toEqual([200, 300]);
    expect(await contrast(last?.bytes, 40, 20, 80)).toBeLessThan(8);
  });

  test('an area that hangs over the edge is cut off there', async () => {
    const derived = await derive(await stripes(), { blur: [{ left: 0.9, top: -0.5, width: 3, height: 1 }] });
    expect(await contrast(derived.files.at(-1)?.bytes, 364, 0, 36)).toBeLessThan(8);
  });
});

describe('the cache', () => {
  let folder = '';
  beforeEach(async () => {
    folder = await mkdtemp(join(tmpdir(), 'pictures-'));
  });
  afterEach(() => rm(folder, { recursive: true }));

  function counted(): { readonly cache: Store; readonly written: string[] } {
    const inner = folderStore(folder, today);
    const written: string[] = [];
    const write: Store['write'] = (name, bytes) => {
      written.push(name);
      return inner.write(name, bytes);
    };
    return { cache: { ...inner, write }, written };
  }

  test('a second build does no picture work', async () => {
    const bytes = await photo(900, 600);
    const { cache, written } = counted();
    const first = [await inspectPicture(bytes, 'p.jpg', cache), await derive(bytes, {}, cache)];
    expect(written.length).toBeGreaterThan(0);
    written.length = 0;
    const second = [await inspectPicture(bytes, 'p.jpg', cache), await derive(bytes, {}, cache)];
    expect(second).toEqual(first);
    expect(written).toEqual([]);
  });

  test('another crop is other work', async () => {
    const bytes = await photo(900, 600);
    const { cache, written } = counted();
    await derive(bytes, {}, cache);
    written.length = 0;
    await derive(bytes, { crop: { left: 0, top: 0, width: 0.5, height: 1 } }, cache);
    expect(written.length).toBeGreaterThan(0);
  });

  test('kept files that were damaged are made again', async () => {
    const bytes = await photo(900, 600);
    const { cache } = counted();
    const first = await derive(bytes, {}, cache);
    for (const name of await readdir(folder)) await writeFile(join(folder, name), 'damaged');
    expect(await derive(bytes, {}, cache)).toEqual(first);
    expect((await inspectPicture(bytes, 'p.jpg', cache)).ok).toBe(true);
  });

  test('what no build has asked for is pruned, and nothing else', async () => {
    const { cache, written } = counted();
    const [old, used] = [await photo(900, 600), await photo(600, 900)];
    await derive(old, {}, cache);
    const stale = [...written];
    await derive(used, {}, cache);
    const day = new Date('2026-01-01T00:00:00Z');
    for (const name of await readdir(folder)) await utimes(join(folder, name), day, day);
    const foreign = ['notes.txt', 'set-notes.json', 'cafe.jpg', 'a0a0a0a0a0a0a0a0a0a0.pdf'];
    for (const name of foreign) await writeFile(join(folder, name), 'mine');
    await writeFile(join(folder, '00112233445566778899.webp.4711.part'), 'half');
    for (const name of [...foreign, '00112233445566778899.webp.4711.part'])
      await utimes(join(folder, name), day, day);
    written.length = 0;
    await derive(used, {}, cache);
    expect(written).toEqual([]);
    await cache.prune(30);
    const left = await readdir(folder);
    expect(left.filter((name) => stale.includes(name))).toEqual([]);
    expect(left).toEqual(expect.arrayContaining(foreign));
    expect(left.some((name) => name.endsWith('.part'))).toBe(false);
    await derive(used, {}, cache);
    expect(written).toEqual([]);
  });

  test('a folder that is not there is pruned in silence', async () => {
    await folderStore(join(folder, 'none'), today).prune(30);
    expect(await readdir(folder)).toEqual([]);
  });

  test('a folder that cannot be written to costs only time', async () => {
    const file = join(folder, 'a-file');
    await writeFile(file, '');
    const derived = await derive(await photo(300, 200), {}, folderStore(join(file, 'below'), today));
    expect(derived.files.length).toBe(2);
  });
});
