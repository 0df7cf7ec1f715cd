import * as fc from 'fast-check';
import { afterAll, beforeAll, expect, it, vi } from 'vitest';
import { inspect } from '../../src/shop/index.ts';
import { openCourse } from '../../templates/scripts/rehearse/course.ts';
import { type Rehearsed, withSlip } from '../../templates/scripts/rehearse/record.ts';
import { runs } from '../samples.ts';
import { published } from './bundle.ts';
import { files } from './workspace.ts';

const { guides } = await inspect(files);
const [read] = guides;
if (!read) throw new Error('the guide cannot be read');
const data = published(read.guide, read.job);

/** The keys of what is kept are its own properties, as a browser has them. */
class Device {
  getItem(key: string): string | null {
    return Object.hasOwn(this, key) ? String(Reflect.get(this, key)) : null;
  }
  setItem(key: string, value: string): void {
    Object.defineProperty(this, key, { value, enumerable: true, configurable: true, writable: true });
  }
  removeItem(key: string): void {
    Reflect.deleteProperty(this, key);
  }
}

let device = new Device();
const emptied = () => {
  device = new Device();
  vi.stubGlobal('localStorage', device);
};

beforeAll(emptied);
afterAll(() => {
  vi.unstubAllGlobals();
});

/** A sound rehearsal that has come so far, and the key under which it is kept. */
function keptAfter(count: number): { readonly key: string; readonly kept: Rehearsed } {
  emptied();
  const course = openCourse(data, 0, []);
  course.layOut(data.plans[0]?.layOut.map(({ id }) => id) ?? []);
  for (const task of course.session.tasks.slice(0, count)) course.finish(task);
  const [first] = course.session.tasks;
  if (!first) throw new Error('no task');
  const slip = {
    about: 'next',
    key: first.key,
    after: 0,
    step: first.step,
    chosen: 'a',
    answer: 'b',
  } as const;
  const [key] = Object.keys(device);
  if (key === undefined) throw new Error('nothing is kept');
  return { key, kept: withSlip(JSON.parse(device.getItem(key) ?? ''), slip) };
}

const { session } = openCourse(data, 0, []);
const keys = session.tasks.map(({ key }) => key);
const word = fc.oneof(
  fc.constantFrom(
    '__proto__',
    'constructor',
    'toString',
    'hasOwnProperty',
    '',
    '\u0000',
    '<img src=x onerror=alert(1)>',
  ),
  fc.constantFrom(...keys),
  fc.string(),
);
const anything = fc.oneof(
  fc.jsonValue(),
  word,
  fc.array(word),
  fc.array(fc.tuple(word, word)),
  fc.constantFrom(1e308, -1, 0.5, Number.MAX_SAFE_INTEGER),
  fc.array(
    fc.record({
      about: fc.constantFrom('next', 'lay-out', 'tool', 'torque', 'order', 'side', 'constructor'),
      key: word,
      after: fc.oneof(fc.integer(), fc.double()),
      step: fc.oneof(fc.constant(null), word, fc.constantFrom(...Object.keys(data.steps))),
      chosen: word,
      answer: word,
    }),
  ),
);
const field = fc.constantFrom<keyof Rehearsed>(
  'version',
  'guide',
  'fingerprint',
  'edition',
  'statement',
  'saved',
  'laid',
  'done',
  'slips',
);

/** What is left of what a device had is sound, and the job can be done to its end from there. */
function goesOn(): void {
  const course = openCourse(data, 0, []);
  const { tasks, judge } = course.session;
  const now = course.now();
  const done = course.done();
  expect(new Set(done).size).toBe(now.done.length);
  for (const [place, index] of done.entries()) expect(judge(done.slice(0, place), index).kind).toBe('done');
  const lying = new Set(data.plans[0]?.layOut.map(({ id }) => id));
  for (const id of now.laid ?? []) expect(lying.has(id)).toBe(true);
  for (const slip of now.slips) {
    expect(slip.step === null || Object.hasOwn(data.steps, slip.step)).toBe(true);
    expect(Number.isInteger(slip.after) && slip.after >= 0 && slip.after <= done.length).toBe(true);
  }
  for (const task of tasks) {
    if (course.done().includes(task.index)) continue;
    expect(course.choose(task).verdict.kind).toBe('done');
    course.finish(task);
  }
  expect(course.done()).toHaveLength(tasks.length);
  expect(Object.keys(Object.prototype)).toEqual([]);
}

it('takes up what is sound of a rehearsal of which some field is anything at all, of this edition or another', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 0, max: keys.length }),
      fc.dictionary(field, anything, { maxKeys: 3 }),
      fc.boolean(),
      (count, changes, isOlder) => {
        const { key, kept } = keptAfter(count);
        emptied();
        const older = isOlder ? { fingerprint: 'older', edition: 'revision 0' } : {};
        const place = isOlder ? key.replace(data.fingerprint, 'older') : key;
        device.setItem(place, JSON.stringify({ ...kept, ...older, ...changes }));
        goesOn();
      },
    ),
    runs(6, 2000),
  );
});

it('begins anew where what the device has is no rehearsal at all', () => {
  fc.assert(
    fc.property(
      fc.oneof(
        fc.string(),
        fc.json(),
        fc.constantFrom(
          '',
          'null',
          '[]',
          '{"__proto__":{"version":1}}',
          `{"version":1,"done":${'['.repeat(5000)}`,
        ),
      ),
      (text) => {
        const { key } = keptAfter(0);
        emptied();
        device.setItem(key, text);
        device.setItem(`${key} `, text);
        expect(openCourse(data, 0, []).now().done).toEqual([]);
        goesOn();
      },
    ),
    runs(4, 500),
  );
});

it('drops what a huge rehearsal of another edition has too much, and keeps the rest', () => {
  const { key, kept } = keptAfter(keys.length);
  emptied();
  const many = Array.from({ length: 20_000 }, (_, index): [string, string] => [
    `gone ${index}`,
    'Undo the tie',
  ]);
  const done = [...many, ...kept.done, ...kept.done];
  device.setItem(
    key.replace(data.fingerprint, 'older'),
    JSON.stringify({ ...kept, fingerprint: 'older', done }),
  );
  const course = openCourse(data, 0, []);
  expect(course.now().done).toHaveLength(keys.length);
  expect(course.dropped.length).toBe(many.length + keys.length);
  goesOn();
});
