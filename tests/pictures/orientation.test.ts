import sharp from 'sharp';
import { describe, expect, test } from 'vitest';
import { derivePictures } from '../../src/pictures/derive.ts';
import { inspectPicture } from '../../src/pictures/inspect.ts';
import type { PictureRequest } from '../../src/pictures/picture.ts';
import { noStore } from '../../src/store/store.ts';
import { storedAs, upright } from './fixtures.ts';

const whole: PictureRequest = { crop: null, blur: [], zoom: null };
const part: PictureRequest = {
  crop: { left: 1 / 6, top: 1 / 4, width: 1 / 2, height: 1 / 2 },
  blur: [{ left: 1 / 6, top: 1 / 4, width: 1 / 6, height: 1 / 4 }],
  zoom: { left: 0, top: 0, width: 1 / 3, height: 1 / 2 },
};

async function names(orientation: number, format: 'jpeg' | 'png', request: PictureRequest) {
  const derived = await derivePictures(await storedAs(orientation, format), 'p', request, noStore);
  if (!derived.ok) throw new Error(derived.problems[0]?.message);
  const { files, detail, width, height } = derived.value;
  return { width, height, names: [...files, ...(detail?.files ?? [])].map((file) => file.name) };
}

describe.each(['jpeg', 'png'] as const)('eight EXIF orientations of a %s', (format) => {
  test.each([2, 3, 4, 5, 6, 7, 8])(
    'orientation %i gives the same files as an upright picture',
    async (orientation) => {
      expect(await names(orientation, format, whole)).toEqual(await names(1, format, whole));
      expect(await names(orientation, format, part)).toEqual(await names(1, format, part));
    },
  );

  test.each([1, 2, 3, 4, 5, 6, 7, 8])(
    'orientation %i is inspected at its upright size',
    async (orientation) => {
      const seen = await inspectPicture(await storedAs(orientation, format), 'p');
      expect(seen).toEqual({
        ok: true,
        value: { kind: 'raster', width: upright.width, height: upright.height },
      });
    },
  );
});

test('the upright pixels are those of the scene', async () => {
  const derived = await derivePictures(await storedAs(7, 'png'), 'p', whole, noStore);
  if (!derived.ok) throw new Error('not derived');
  const jpeg = derived.value.files.at(-1);
  const pixels = await sharp(jpeg?.bytes).raw().toBuffer();
  const worst = pixels.reduce(
    (most, value, index) => Math.max(most, Math.abs(value - (upright.data[index] ?? 0))),
    0,
  );
  expect(worst).toBeLessThan(80);
  const mean =
    pixels.reduce((sum, value, index) => sum + Math.abs(value - (upright.data[index] ?? 0)), 0) /
    pixels.length;
  expect(mean).toBeLessThan(4);
});
