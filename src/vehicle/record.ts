import * as z from 'zod/mini';

/**
 * The record of one vehicle, from intake to re-check, as the file that is handed on: plain data that later versions of
 * Baybook can read, and that reads without the guide. Both the pages and the commands read it by this, so it must stay
 * free of Node.
 */

/** The number of this form of a record; a higher one comes from a later Baybook. */
export const VEHICLE_RECORD_VERSION = 1;

/** By what a file is known as such a record. */
export const VEHICLE_RECORD_FORM = 'Baybook vehicle record';

/** The most that a record holds: far more than any job asks for, and little enough for a phone. */
export const vehicleRecordLimits = {
  /** Characters of the whole file. */
  file: 150_000_000,
  photographs: 200,
  /** Bytes of one photograph. */
  photograph: 3_000_000,
  /** Pixels along the longer side of one. */
  side: 4096,
} as const;

const about = (words: string) => z.meta({ description: words });
/** A name, a label, a date. */
const short = z.string().check(z.maxLength(400));
/** What somebody has typed in, or a sentence that was asked. */
const long = z.string().check(z.maxLength(4000));
const time = z.iso.datetime();
const fingerprint = z.string().check(z.regex(/^[0-9a-f]{12,64}$/));
const list = <T extends z.core.$ZodType>(one: T, most: number) => z.array(one).check(z.maxLength(most));

const line = z
  .strictObject({ key: short, label: long, text: long })
  .check(about('What was asked for, and what was written down'));

const edition = {
  revision: z.nullable(short),
  fingerprint,
};

const guideOfVisit = z.strictObject({ id: short, title: long, ...edition });

const step = z.strictObject({
  id: short,
  title: long,
  fingerprint: short,
  done: list(z.enum(['left', 'right', 'whole']), 3),
});

const value = z.strictObject({
  key: long,
  asked: long.check(about('The reading, torque or line that was asked for, in words')),
  text: long.check(about('What was typed in; a tick for a box')),
  step: z.nullable(short),
  proof: z.boolean().check(about('Whether it proves the finished job')),
});

const work = z
  .strictObject({
    ...edition,
    edition: long.check(about('Revision and date in words; empty where the guide states neither')),
    guides: list(guideOfVisit, 50).check(about('Of a visit: the guides that it was planned from')),
    since: time,
    build: long.check(about('As a link to the page names it')),
    buildWords: long,
    found: list(z.strictObject({ asked: long, text: long }), 200).check(about('What inspections have found')),
    steps: list(step, 2000),
    values: list(value, 5000),
    waits: list(z.strictObject({ step: short, begun: z.number() }), 500),
  })
  .check(about('What was done under one edition of the guide'));

const signature = z.strictObject({
  key: short,
  what: long.check(about('What the name stands for')),
  name: short,
  on: short.check(about('The day, as written')),
});

const recheck = z.strictObject({
  what: long,
  detail: long.check(about('The torque, or what a reading should be')),
  when: long,
  due: short.check(about('When that is on this vehicle, as far as the intake tells')),
  on: short,
  by: short,
  found: long,
});

const photograph = z.strictObject({
  id: z.string().check(z.regex(/^[0-9a-f]{16}$/)),
  key: long.check(about('The place that asked for it; empty for none')),
  shows: long,
  taken: time,
  width: z.int().check(z.positive(), z.maximum(vehicleRecordLimits.side)),
  height: z.int().check(z.positive(), z.maximum(vehicleRecordLimits.side)),
  jpeg: z
    .string()
    .check(
      z.maxLength(Math.ceil(vehicleRecordLimits.photograph / 3) * 4),
      z.regex(/^[A-Za-z0-9+/]+={0,2}$/),
      about('The picture as JPEG, in base64'),
    ),
});

/** The shape of the file. */
export const vehicleRecordSchema = z
  .strictObject({
    form: z.literal(VEHICLE_RECORD_FORM),
    version: z.literal(VEHICLE_RECORD_VERSION),
    id: z.string().check(z.regex(/^[0-9a-f]{32}$/)),
    begun: time,
    saved: time,
    guide: z.strictObject({
      id: z
        .string()
        .check(
          z.regex(/^(?:visits\/)?[^/\\?#%:]{1,200}$/),
          about('As its folder is named; visits/ stands before a visit'),
        ),
      title: long,
    }),
    vehicle: list(line, 50),
    intake: list(line, 500).check(
      about('The vehicle as it came in: what the job touches, zone by zone, each with its damage'),
    ),
    work: list(work, 100).check(
      z.minLength(1),
      about('One for each edition of the guide by which was worked, the latest last'),
    ),
    signatures: list(signature, 500),
    rechecks: list(recheck, 500),
    photographs: list(photograph, vehicleRecordLimits.photographs),
  })
  .check(about('The record of one vehicle, from intake to re-check'));

/** The record of one vehicle, with its photographs. */
export type VehicleRecord = z.infer<typeof vehicleRecordSchema>;
/** What was done under one edition of the guide. */
export type RecordedWork = VehicleRecord['work'][number];
