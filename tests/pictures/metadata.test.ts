import exifr from 'exifr';
import sharp from 'sharp';
import { expect, test } from 'vitest';
import { derivePictures } from '../../src/pictures/derive.ts';
import { noStore } from '../../src/store/store.ts';
import { photoWithSecrets } from './fixtures.ts';

const everything = { tiff: true, exif: true, gps: true, xmp: true, iptc: true, icc: true, jfif: false };
const request = { crop: null, blur: [], zoom: { left: 0, top: 0, width: 0.5, height: 0.5 } };

test('the fixture really holds every kind of metadata', async () => {
  const photo = await photoWithSecrets();
  const found = await exifr.parse(photo, everything);
  expect(found).toMatchObject({
    Make: 'SecretCamera',
    latitude: 51.5,
    Caption: 'SecretCaption',
    creator: 'SecretOwner',
  });
  expect((await sharp(photo).metadata()).icc).toBeDefined();
});

test('no output file holds any metadata', async () => {
  const derived = await derivePictures(await photoWithSecrets(), 'p.jpg', request, noStore);
  if (!derived.ok) throw new Error('not derived');
  const files = [...derived.value.files, ...(derived.value.detail?.files ?? [])];
  expect(files.length).toBeGreaterThanOrEqual(4);
  for (const { bytes, type } of files) {
    const { exif, icc, iptc, xmp, xmpAsString, orientation } = await sharp(bytes).metadata();
    expect({ exif, icc, iptc, xmp, xmpAsString, orientation }).toEqual({});
    if (type === 'image/jpeg') expect(await exifr.parse(Buffer.from(bytes), everything)).toBeUndefined();
    expect(Buffer.from(bytes).toString('latin1')).not.toMatch(/Secret|Exif|GPS|xmp|8BIM|ICC_PROFILE|ICCP/);
  }
});
