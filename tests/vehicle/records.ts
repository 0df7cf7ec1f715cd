import fc from 'fast-check';
import sharp from 'sharp';
import type { VehicleRecord } from '../../src/vehicle/record.ts';

/** A picture of one colour as a JPEG, by libvips. */
export function jpeg(width: number, height: number): Promise<Buffer> {
  return sharp({ create: { width, height, channels: 3, background: '#a33' } })
    .jpeg()
    .toBuffer();
}

/** A record as a page saves it. */
export function vehicleRecord(more: Partial<VehicleRecord> = {}): VehicleRecord {
  return {
    form: 'Baybook vehicle record',
    version: 1,
    id: '0123456789abcdef0123456789abcdef',
    begun: '2026-10-02T08:00:00.000Z',
    saved: '2026-10-02T16:00:00.000Z',
    guide: { id: 'module', title: 'Trailer module' },
    vehicle: [{ key: 'identity', label: 'Vehicle registration or VIN', text: 'RB 12' }],
    intake: [{ key: 'part trim', label: 'Tailgate trim', text: 'scratched' }],
    work: [
      {
        revision: '2',
        fingerprint: 'ab'.repeat(32),
        edition: 'revision 2',
        guides: [],
        since: '2026-10-02T08:00:00.000Z',
        build: '',
        buildWords: '',
        found: [],
        steps: [{ id: 'open', title: 'Take the trim off', fingerprint: '0011', done: ['whole'] }],
        values: [
          { key: 'battery reading charge', asked: 'Charge', text: '92 %', step: 'battery', proof: false },
        ],
        waits: [],
      },
    ],
    signatures: [{ key: '', what: 'The whole job', name: 'M. Hart', on: '2026-10-02' }],
    rechecks: [],
    photographs: [],
    ...more,
  };
}

const text = fc.string({ unit: 'grapheme', maxLength: 40 });
const time = fc
  .date({ min: new Date('2020-01-01'), max: new Date('2060-01-01'), noInvalidDate: true })
  .map((date) => date.toISOString());

/** Records with any words in them, and the given picture as their photographs. */
export const anyRecord = (picture: {
  readonly width: number;
  readonly height: number;
  readonly jpeg: string;
}) =>
  fc
    .record({
      begun: time,
      vehicle: fc.array(fc.record({ key: text, label: text, text }), { maxLength: 4 }),
      intake: fc.array(fc.record({ key: text, label: text, text }), { maxLength: 6 }),
      rechecks: fc.array(
        fc.record({ what: text, detail: text, when: text, due: text, on: text, by: text, found: text }),
        { maxLength: 3 },
      ),
      photographs: fc.uniqueArray(
        fc.record({
          id: fc.stringMatching(/^[0-9a-f]{16}$/),
          key: text,
          shows: text,
          taken: time,
          width: fc.constant(picture.width),
          height: fc.constant(picture.height),
          jpeg: fc.constant(picture.jpeg),
        }),
        { selector: ({ id }) => id, maxLength: 3 },
      ),
    })
    .map((more) => vehicleRecord(more));
