import { deflateSync } from 'node:zlib';
import fc from 'fast-check';
import sharp from 'sharp';
import { describe, expect, test } from 'vitest';
import { derivePictures } from '../../../src/pictures/derive.ts';
import { inspectPicture } from '../../../src/pictures/inspect.ts';
import { noStore } from '../../../src/store/store.ts';
import { photo } from '../../pictures/fixtures.ts';
import { runs } from '../../samples.ts';

async function told(bytes: Uint8Array, file = 'lamp/pictures/arch.jpg') {
  const seen = await inspectPicture(bytes, file);
  return seen.ok ? seen.value : seen.problems.map(({ code, message }) => `${code}: ${message}`);
}

/** A whole, valid PNG of one bit per pixel: 900 million pixels in about 110 kB. */
function hugePng(side: number): Buffer {
  const header = Buffer.alloc(13);
  header.writeUInt32BE(side, 0);
  header.writeUInt32BE(side, 4);
  header.set([1, 0, 0, 0, 0], 8);
  const rows = deflateSync(Buffer.alloc(side * (1 + Math.ceil(side / 8))));
  return Buffer.concat([
    Buffer.from('\x89PNG\r\n\x1a\n', 'latin1'),
    chunk('IHDR', header),
    chunk('IDAT', rows),
    chunk('IEND', Buffer.alloc(0)),
  ]);
}

/** Libpng reads a header whose checksum is wrong only as an error, so the checksum is worked out (W3C PNG, annex D). */
function chunk(name: string, data: Buffer): Buffer {
  const body = Buffer.concat([Buffer.from(name, 'latin1'), data]);
  const out = Buffer.alloc(body.length + 8);
  out.writeUInt32BE(data.length, 0);
  body.copy(out, 4);
  out.writeUInt32BE(crc32(body), body.length + 4);
  return out;
}

function crc32(bytes: Buffer): number {
  let crc = 0xffffffff;
  for (const byte of bytes) {
    crc ^= byte;
    for (let bit = 0; bit < 8; bit += 1) crc = (crc >>> 1) ^ (crc & 1 ? 0xedb88320 : 0);
  }
  return (crc ^ 0xffffffff) >>> 0;
}

describe('what is no picture', () => {
  test('zero bytes', async () => {
    expect(await told(Buffer.alloc(0))).toEqual([
      'picture-unreadable: lamp/pictures/arch.jpg is empty (zero bytes); copy it again from the camera',
    ]);
  });

  test('a text file with a picture name', async () => {
    expect(await told(Buffer.from('shopping list\n'))).toEqual([
      'picture-unreadable: lamp/pictures/arch.jpg is not a picture, whatever its name says; expected JPEG, PNG, WebP, AVIF, TIFF, GIF or SVG',
    ]);
  });

  test('a HEIC photo from a phone', async () => {
    const heic = Buffer.from('\0\0\0\x18ftypheic\0\0\0\0mif1heic', 'latin1');
    expect(await told(heic)).toEqual([
      'picture-unreadable: lamp/pictures/arch.jpg is a HEIC photo, which browsers do not show; export it as JPEG',
    ]);
  });

  test('a first few bytes of every kind', async () => {
    for (const head of [
      '\xff\xd8\xff',
      '\x89PNG\r\n\x1a\n',
      'RIFF\0\0\0\0WEBP',
      'GIF89a',
      'II*\0',
      '\0\0\0\x18ftypavif',
    ]) {
      expect(await told(Buffer.from(head, 'latin1'))).toEqual([
        expect.stringMatching(/^picture-unreadable: /),
      ]);
    }
  });
});

test('a drawing is never handed to the decoder', async () => {
  const svg = Buffer.from('<svg xmlns="http://www.w3.org/2000/svg" width="9" height="9"/>');
  expect((await derivePictures(svg, 'p', { crop: null, blur: [], zoom: null }, noStore)).ok).toBe(false);
});

describe('what is too large', () => {
  test('30,000 × 30,000 pixels, without decoding them', async () => {
    const bomb = hugePng(30_000);
    expect(bomb.length).toBeLessThan(200_000);
    const before = process.memoryUsage().rss;
    expect(await told(bomb)).toEqual([
      'picture-too-large: lamp/pictures/arch.jpg is 30000 × 30000 pixels; at most 128 million pixels are read, so scale it down',
    ]);
    const derived = await derivePictures(bomb, 'p', { crop: null, blur: [], zoom: null }, noStore);
    expect(derived.ok).toBe(false);
    expect(process.memoryUsage().rss - before).toBeLessThan(200e6);
  });

  test('a GIF whose header claims as much', async () => {
    const gif = Buffer.from('GIF89a0u0u\0\0\0,\0\0\0\x000u0u\0\x02\x02D\x01\0;', 'latin1');
    expect(await told(gif)).toEqual([expect.stringMatching(/^picture-too-large: /)]);
  });

  test('a file of more bytes than are read', async () => {
    expect(await told(Buffer.alloc(64 * 1024 * 1024 + 1))).toEqual([
      'picture-too-large: lamp/pictures/arch.jpg is 65 MB; at most 64 MB are read, so scale it down',
    ]);
  });
});

describe('what moves', () => {
  const frames = () =>
    Promise.all(
      ['red', 'blue'].map((background) =>
        sharp({ create: { width: 8, height: 8, channels: 3, background } })
          .png()
          .toBuffer(),
      ),
    );

  test.each(['gif', 'webp'] as const)('an animated %s', async (format) => {
    const moving = await sharp(await frames(), { join: { animated: true } })
      .toFormat(format)
      .toBuffer();
    expect(await told(moving)).toEqual([
      'picture-animated: lamp/pictures/arch.jpg moves or has several pages; a print shows only one picture, so save the one that counts',
    ]);
  });

  test('an animated PNG', async () => {
    const [still] = await frames();
    if (!still) throw new Error('no frame');
    const control = chunk('acTL', Buffer.from([0, 0, 0, 2, 0, 0, 0, 0]));
    expect(await told(Buffer.concat([still.subarray(0, 33), control, still.subarray(33)]))).toEqual([
      expect.stringMatching(/^picture-animated: /),
    ]);
  });

  test('a GIF, a WebP and a TIFF that stand still are pictures', async () => {
    const [still] = await frames();
    for (const format of ['gif', 'webp', 'tiff', 'avif'] as const) {
      expect(await told(await sharp(still).toFormat(format).toBuffer())).toEqual({
        kind: 'raster',
        width: 8,
        height: 8,
      });
    }
  });
});

describe('what is damaged', () => {
  test.each(['jpeg', 'png', 'webp', 'tiff'] as const)('a %s that breaks off', async (format) => {
    const whole = await sharp(await photo(400, 300))
      .toFormat(format)
      .toBuffer();
    for (const share of [0.2, 0.5, 0.8, 0.95]) {
      const cut = whole.subarray(0, Math.floor(whole.length * share));
      expect(await told(cut)).toEqual([
        'picture-unreadable: lamp/pictures/arch.jpg is damaged or breaks off before its end; copy it again from the camera',
      ]);
      expect((await derivePictures(cut, 'p', { crop: null, blur: [], zoom: null }, noStore)).ok).toBe(false);
    }
  });

  test('any damage is a problem or a picture, never an exception', async () => {
    const whole = await sharp(await photo(64, 48))
      .jpeg()
      .toBuffer();
    const damage = fc.array(fc.tuple(fc.nat(whole.length - 1), fc.nat(255)), { minLength: 1, maxLength: 12 });
    await fc.assert(
      fc.asyncProperty(damage, async (places) => {
        const bytes = Buffer.from(whole);
        for (const [place, value] of places) bytes[place] = value;
        const seen = await inspectPicture(bytes, 'p');
        const derived = await derivePictures(bytes, 'p', { crop: null, blur: [], zoom: null }, noStore);
        if (seen.ok) expect(seen.value.width).toBeGreaterThan(0);
        else expect(seen.problems.length).toBe(1);
        // At least one for screens and one for paper.
        if (derived.ok) expect(derived.value.files.length).toBeGreaterThanOrEqual(2);
      }),
      runs(20, 60),
    );
  });
});
