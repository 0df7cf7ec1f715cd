import { Ajv } from 'ajv';
import fc from 'fast-check';
import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import { jpegSize } from '../../src/vehicle/jpeg.ts';
import { vehicleRecordSchemaJson } from '../../src/vehicle/json-schema.ts';
import { bytesOfBase64, readVehicleRecord } from '../../src/vehicle/read.ts';
import { recordFile, recordIn } from '../../templates/scripts/vehicle/file.ts';
import { runs } from '../samples.ts';
import { anyRecord, jpeg, vehicleRecord } from './records.ts';

const small = { width: 5, height: 3, jpeg: (await jpeg(5, 3)).toString('base64') };
const photograph = { id: '0011223344556677', key: '', shows: 'The lamp', taken: '2026-10-02T09:00:00.000Z' };
const problemOf = (plain: unknown) => {
  const read = readVehicleRecord(typeof plain === 'string' ? plain : JSON.stringify(plain));
  return read.ok ? null : read.problem;
};

// The JSON Schema that is published is held against by ajv, an independent validator.
const validate = new Ajv({ strict: false, validateFormats: false }).compile(
  JSON.parse(vehicleRecordSchemaJson()),
);

describe('the file of a vehicle record', () => {
  it('comes back as it was saved, whatever stands in it, and keeps to its published schema', async () => {
    await fc.assert(
      fc.asyncProperty(anyRecord(small), async (record) => {
        const { photographs, ...rest } = record;
        const whole = {
          record: rest,
          photographs: photographs.map((one) => ({
            ...one,
            jpeg: bytesOfBase64(one.jpeg) ?? new Uint8Array(),
          })),
        };
        const text = recordFile(whole);
        expect(validate(JSON.parse(text)), JSON.stringify(validate.errors)).toBe(true);
        expect(JSON.parse(text)).toEqual(record);
        expect(await recordIn(new Blob([text]))).toEqual(whole);
      }),
      runs(25, 1000),
    );
  });

  it('is refused in one sentence where it is none, is not whole, or comes from a later Baybook', () => {
    const text = JSON.stringify(vehicleRecord());
    expect(problemOf('')).toBe('this file is no vehicle record');
    expect(problemOf('[1, 2]')).toBe('this file is no vehicle record');
    expect(problemOf('null')).toBe('this file is no vehicle record');
    expect(problemOf('{"form":"Baybook progress 1"}')).toBe('this file is no vehicle record');
    expect(problemOf(text.slice(0, -20))).toContain('is not whole');
    expect(problemOf({ ...vehicleRecord(), version: 2 })).toBe(
      'this vehicle record has the form 2; this Baybook reads form 1',
    );
  });

  it('is refused with the place of what no record has', () => {
    expect(problemOf({ ...vehicleRecord(), run: 'alert(1)' })).toBe(
      'this vehicle record holds “run” at its top, which no record has; the file was changed',
    );
    expect(problemOf(`{"__proto__":{"x":1},${JSON.stringify(vehicleRecord()).slice(1)}`)).toContain(
      '“__proto__”',
    );
    expect(problemOf({ ...vehicleRecord(), guide: { id: '../../etc', title: '' } })).toContain('at guide.id');
    expect(problemOf({ ...vehicleRecord(), guide: { id: 'javascript:x', title: '' } })).toContain(
      'at guide.id',
    );
    expect(problemOf({ ...vehicleRecord(), work: [] })).toContain('at work');
    expect(problemOf({ ...vehicleRecord(), begun: 'yesterday' })).toContain('at begun');
    const long = [{ key: 'identity', label: 'Registration', text: 'x'.repeat(5000) }];
    expect(problemOf({ ...vehicleRecord(), vehicle: long })).toContain(
      'at vehicle.0.text stands more than a record can have',
    );
  });

  it('never throws, whatever is cut out of it or put in', () => {
    const text = JSON.stringify(vehicleRecord({ photographs: [{ ...photograph, ...small }] }));
    fc.assert(
      fc.property(fc.nat(text.length), fc.nat(40), fc.string(), (at, length, other) => {
        const read = readVehicleRecord(text.slice(0, at) + other + text.slice(at + length));
        expect(typeof read.ok).toBe('boolean');
      }),
      runs(100, 20_000),
    );
    fc.assert(
      fc.property(fc.jsonValue(), (plain) => {
        expect(problemOf(plain)).not.toBeNull();
      }),
      runs(50, 5000),
    );
  });

  it('lets in no picture that is none, says another size than it has, or is larger than a photograph can be', async () => {
    const withPicture = (more: object) =>
      vehicleRecord({ photographs: [{ ...photograph, ...small, ...more }] });
    expect(problemOf(withPicture({}))).toBeNull();
    const drawing = Buffer.from('<svg onload="alert(1)"/>').toString('base64');
    expect(problemOf(withPicture({ jpeg: drawing }))).toContain('is no JPEG picture');
    expect(problemOf(withPicture({ width: 6 }))).toContain('is 5 × 3 pixels and says 6 × 3');
    expect(problemOf(withPicture({ width: 60_000, height: 60_000 }))).toContain('photographs.0.width');
    const huge = (await jpeg(5000, 3)).toString('base64');
    expect(problemOf(withPicture({ jpeg: huge, width: 4096, height: 3 }))).toContain('is 5000 × 3 pixels');
    expect(problemOf(withPicture({ jpeg: 'A'.repeat(4_000_004) }))).toContain('photographs.0.jpeg');
    expect(problemOf(withPicture({ jpeg: 'a b!' }))).toContain('photographs.0.jpeg');
    const two = { ...photograph, ...small };
    expect(problemOf(vehicleRecord({ photographs: [two, two] }))).toContain('bears the number of another');
  });
});

describe('the size of a JPEG', () => {
  it('is what libvips tells, baseline and progressive', async () => {
    for (const [width, height] of [
      [1, 1],
      [640, 480],
      [33, 1027],
    ] as const) {
      for (const progressive of [false, true]) {
        const bytes = await sharp({ create: { width, height, channels: 3, background: '#123' } })
          .jpeg({ progressive })
          .toBuffer();
        expect(jpegSize(bytes)).toEqual({ width, height });
      }
    }
  });

  it('is none for another picture, or a piece of one', async () => {
    const bytes = await jpeg(40, 30);
    const png = await sharp({ create: { width: 4, height: 4, channels: 3, background: '#123' } })
      .png()
      .toBuffer();
    expect(jpegSize(png)).toBeNull();
    expect(jpegSize(bytes.subarray(0, 20))).toBeNull();
    expect(jpegSize(new Uint8Array())).toBeNull();
  });
});
