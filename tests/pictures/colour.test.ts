import sharp from 'sharp';
import { expect, test } from 'vitest';
import { derivePictures } from '../../src/pictures/derive.ts';
import { noStore } from '../../src/store/store.ts';

const plain = { crop: null, blur: [], zoom: null };

/** The middle pixel of the plain file. */
async function published(bytes: Uint8Array): Promise<number[]> {
  const derived = await derivePictures(bytes, 'p', plain, noStore);
  if (!derived.ok) throw new Error('not derived');
  const last = derived.value.files.at(-1);
  const { data, info } = await sharp(last?.bytes).raw().toBuffer({ resolveWithObject: true });
  const middle = (Math.floor(info.height / 2) * info.width + Math.floor(info.width / 2)) * info.channels;
  return [...data.subarray(middle, middle + info.channels)];
}

function flat(colour: string) {
  return sharp({ create: { width: 32, height: 32, channels: 3, background: colour } });
}

function near(actual: readonly number[], expected: readonly number[], tolerance: number) {
  expect(actual.length).toBe(expected.length);
  actual.forEach((value, index) => {
    expect(Math.abs(value - (expected[index] ?? 0))).toBeLessThanOrEqual(tolerance);
  });
}

/** sRGB and Display P3 share this curve (CSS Color 4, section 10). */
const toLinear = (value: number) =>
  value / 255 <= 0.04045 ? value / 255 / 12.92 : ((value / 255 + 0.055) / 1.055) ** 2.4;
const fromLinear = (value: number) =>
  255 * (value <= 0.0031308 ? 12.92 * value : 1.055 * value ** (1 / 2.4) - 0.055);

/** Linear Display P3 to linear sRGB: the product of the matrices in CSS Color 4, section 18, to four places. */
const p3ToSrgb = [
  [1.2249, -0.2249, 0],
  [-0.0421, 1.0421, 0],
  [-0.0196, -0.0786, 1.0983],
];

test('a Display P3 photo is converted by its own profile', async () => {
  const photo = await flat('rgb(200,100,50)').withIccProfile('p3').png().toBuffer();
  const stored = [...(await sharp(photo, { ignoreIcc: true }).raw().toBuffer()).subarray(0, 3)];
  const linear = stored.map(toLinear);
  const expected = p3ToSrgb.map((row) =>
    fromLinear(row.reduce((sum, k, i) => sum + k * (linear[i] ?? 0), 0)),
  );
  expect(stored).not.toEqual([200, 100, 50]);
  near(await published(photo), expected, 3);
});

test('a CMYK photo is converted', async () => {
  const photo = await flat('rgb(170,110,100)').toColourspace('cmyk').jpeg({ quality: 100 }).toBuffer();
  expect((await sharp(photo).metadata()).space).toBe('cmyk');
  near(await published(photo), [170, 110, 100], 8);
});

test('a 16-bit picture is converted', async () => {
  const picture = await flat('rgb(250,128,4)').toColourspace('rgb16').png().toBuffer();
  expect((await sharp(picture).metadata()).depth).toBe('ushort');
  near(await published(picture), [250, 128, 4], 3);
});

test('a grey picture is converted, also one of 16 bits', async () => {
  const grey = await flat('rgb(90,90,90)').toColourspace('b-w').jpeg().toBuffer();
  near(await published(grey), [90, 90, 90], 2);
  const deep = await flat('rgb(90,90,90)').toColourspace('grey16').png().toBuffer();
  near(await published(deep), [90, 90, 90], 2);
});

test('what is see-through stays so, with a PNG as fallback', async () => {
  const background = { r: 10, g: 200, b: 30, alpha: 0.5 };
  const picture = await sharp({ create: { width: 32, height: 32, channels: 4, background } })
    .png()
    .toBuffer();
  near(await published(picture), [10, 200, 30, 128], 2);
});
