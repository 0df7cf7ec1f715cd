import sharp from 'sharp';
import { expect, test } from 'vitest';
import { checkPicture } from '../../src/pictures/check-picture.ts';
import type { PictureRequest } from '../../src/pictures/picture.ts';
import { noStore } from '../../src/store/store.ts';
import { photo } from './fixtures.ts';

const box = { left: 0, top: 0, width: 0.5, height: 0.5 };
const plain: PictureRequest = { crop: null, blur: [], zoom: null };

const drawing = (shapes: string) =>
  Buffer.from(`<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 9 9">${shapes}</svg>`);

test('a photo weighs its largest screen size, an enlarged part adds its own', async () => {
  const bytes = await photo(900, 600);
  const alone = await checkPicture(bytes, 'p.jpg', plain, noStore);
  const both = await checkPicture(bytes, 'p.jpg', { ...plain, zoom: box }, noStore);
  expect(alone.problems).toEqual([]);
  expect(both.weight?.bytes).toBeGreaterThan(alone.weight?.bytes ?? 0);
});

test('a photo of pure noise is over its budget', async () => {
  const { data, info } = await sharp(await photo(1600, 2400))
    .raw()
    .toBuffer({ resolveWithObject: true });
  const noise = data.map((_, index) => (Math.imul(index, 2654435761) >>> 13) & 255);
  const bytes = await sharp(noise, { raw: { width: info.width, height: info.height, channels: 3 } })
    .jpeg({ quality: 95 })
    .toBuffer();
  const { problems } = await checkPicture(bytes, 'p.jpg', plain, noStore);
  expect(problems.map(({ code }) => code)).toEqual(['picture-over-budget']);
});

test('a drawing cannot be blurred, and weighs what is left of it', async () => {
  const noise = `<metadata>${'x'.repeat(500_000)}</metadata>`;
  const clean = await checkPicture(
    drawing(`${noise}<path d="M0 0h9"/>`),
    'd.svg',
    { ...plain, blur: [box] },
    noStore,
  );
  expect(clean.problems.map(({ code }) => code)).toEqual(['drawing-blurred']);
  expect(clean.weight?.bytes).toBeLessThan(200);
});

test('what cannot be shown has no weight', async () => {
  expect(await checkPicture(Buffer.from('note'), 'p.jpg', plain, noStore)).toMatchObject({
    problems: [{ code: 'picture-unreadable' }],
    weight: null,
  });
  expect(await checkPicture(drawing('<script/>'), 'd.svg', plain, noStore)).toMatchObject({
    problems: [{ code: 'drawing-unsafe' }],
    weight: null,
  });
});
