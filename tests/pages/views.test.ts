import { describe, expect, it } from 'vitest';
import { computeJob } from '../../src/job/compute-job.ts';
import type { Guide } from '../../src/model/guide.ts';
import type { Item } from '../../src/model/item.ts';
import type { BenchItem, Plan } from '../../src/model/job.ts';
import { dateWords, shortFingerprint } from '../../src/pages/frame/identity.ts';
import { pathFrom } from '../../src/pages/frame/references.ts';
import { guidePage } from '../../src/pages/guide/guide-page.ts';
import type { GuideView } from '../../src/pages/guide/guide-views.ts';
import { benchItemWords } from '../../src/pages/steps/bench.ts';
import { parseRange } from '../../src/units/parse.ts';
import * as make from '../job/builder.ts';
import * as fixture from './fixture.ts';
import { page } from './render.ts';

function view(guide: Guide) {
  return guidePage(guide, computeJob(guide), page());
}

function range(text: string) {
  const parsed = parseRange(text, 'length');
  if (!parsed.ok) throw new Error(parsed.message);
  return make.written(parsed.range);
}

const screws = make.guide({
  items: [
    make.part('panel', { label: 'Panel' }),
    make.fastener('screw', { label: 'Panel screw', side: 'each', count: 3, holds: 'panel' }),
    make.connector('lamp-plug', { label: 'Lamp plug', side: 'each', on: 'panel', when: 'fog' }),
    make.tool('driver', { label: 'Driver' }),
  ],
  options: { fog: 'Front fog lamps' },
  steps: [
    { id: 'off', side: 'each', do: ['remove screw'], time: [2, 3, 4] },
    { id: 'unplug', when: 'fog', do: ['disconnect lamp-plug'] },
    { id: 'lift', do: ['remove panel'], people: 2, wait: 90 },
  ],
});

/** Fasteners that come off in two goes and are back in two, one of them for some builds; the panel comes off twice. */
const backAndForth = make.guide({
  items: [
    make.part('panel', { label: 'Panel' }),
    make.fastener('screw', { label: 'Panel screw', side: 'each', count: 3, holds: 'panel' }),
  ],
  options: { fog: 'Front fog lamps' },
  steps: [
    { id: 'off-left', side: 'left', do: ['remove screw'] },
    { id: 'off-right', side: 'right', do: ['remove screw', 'remove panel'] },
    { id: 'look', when: 'fog', do: [] },
    { id: 'on', do: ['refit panel'] },
    { id: 'on-right', side: 'right', do: ['refit screw'] },
    { id: 'off-again', side: 'right', when: 'fog', do: ['remove screw'] },
    { id: 'on-again', side: 'right', when: 'fog', do: ['refit screw'] },
    { id: 'on-left', side: 'left', do: ['refit screw'] },
  ],
});

/** The vehicle after each step of a plan as the rows of the course have it, each thing as "Off the vehicle: panel". */
function toldAfterSteps({ course }: GuideView, plan: Plan): readonly (readonly string[])[] {
  return plan.steps.map((_, index) =>
    course.flatMap(({ state, rows }) =>
      rows
        .filter(
          ({ from, until, plans }) =>
            (plans === null || plans.split(' ').includes(String(plan.index))) &&
            placeOf(plan, from.id) <= index &&
            (until === null || index < placeOf(plan, until.id)),
        )
        .flatMap(({ text }) => text.split('; ').map((one) => `${state}: ${one}`))
        .toSorted(),
    ),
  );
}

/** The same as the dry run has it, step by step. */
function playedSteps(guide: Guide, plan: Plan): readonly (readonly string[])[] {
  const words = (one: BenchItem) => benchItemWords(one, { guide });
  return plan.steps.map(({ bench }) => [
    ...bench.off.map((one) => `Off the vehicle: ${words(one)}`).toSorted(),
    ...bench.apart.map((one) => `Unplugged: ${words(one)}`).toSorted(),
    ...bench.loose.map((one) => `Not tight: ${words(one)}`).toSorted(),
    ...bench.aside.map((one) => `Aside: ${words(one)}`).toSorted(),
    ...bench.on.map((one) => `To come off again: ${words(one)}`).toSorted(),
    ...bench.holds.map((one) => `In force: ${words(one)}`).toSorted(),
    `Movement: ${bench.movement}`,
  ]);
}

const placeOf = ({ steps }: Plan, step: string) => steps.findIndex(({ id }) => id === step);

describe('the course of a job', () => {
  it('tells of each thing from which step until which it is off, unplugged or not tight, by build', () => {
    const { course } = view(screws);
    const rowsOf = (name: string) => course.find(({ state }) => state === name)?.rows;
    expect(rowsOf('Off the vehicle')).toMatchObject([
      { text: '6 panel screws', from: { id: 'off', number: 1 }, until: null, plans: null, only: null },
      { text: 'panel', from: { id: 'lift', number: 3 }, until: null, plans: null, only: null },
    ]);
    expect(rowsOf('Unplugged')).toMatchObject([
      { text: '2 lamp plugs', from: { id: 'unplug' }, plans: '0', only: 'with front fog lamps' },
    ]);
    // Never that the vehicle may be moved where the guide does not say so.
    expect(rowsOf('Movement')).toMatchObject([{ text: 'not stated', from: { id: 'off' }, until: null }]);
  });

  it('tells the vehicle after every step of every build as the dry run has it', () => {
    for (const guide of [screws, backAndForth, fixture.guide]) {
      const job = computeJob(guide);
      const told = guidePage(guide, job, page());
      for (const plan of job.plans) expect(toldAfterSteps(told, plan)).toEqual(playedSteps(guide, plan));
    }
  });
});

describe('a step', () => {
  const steps = view(screws).sections.flatMap((section) => section.steps);

  it('says sides, time for both, people and waiting in words', () => {
    expect(steps[0]?.facts).toEqual(['Left side, then right side', '4–8\u00a0min for both']);
    expect(steps[2]?.facts).toEqual(['2 people']);
    expect(steps[2]?.wait).toBe('1\u00a0h\u00a030\u00a0min');
  });

  it('asks for a reading on each side where it is done on each', () => {
    const gap = make.guide({
      items: [{ ...make.measure('gap', { label: 'Gap' }), expect: range('1/2..1 in') } as Item],
      steps: [
        { id: 'both', side: 'each', do: ['measure gap'] },
        { id: 'once', do: ['measure gap'] },
      ],
    });
    const [both, once] = view(gap).sections.flatMap((section) => section.steps);
    expect(both?.readings[0]?.sides).toEqual([
      { side: 'left', name: 'left' },
      { side: 'right', name: 'right' },
    ]);
    expect(once?.readings[0]?.sides).toEqual([{ side: '', name: '' }]);
  });

  it('expects a reading between the ends that either system prints', () => {
    const gap = make.guide({
      items: [{ ...make.measure('gap', { label: 'Gap' }), expect: range('8..14 mm') } as Item],
      steps: [{ id: 'look', do: ['measure gap'] }],
    });
    const [look] = view(gap).sections.flatMap((section) => section.steps);
    expect(look?.readings[0]?.expect).toBe('8–14\u00a0mm (5/16–35/64\u00a0in)');
    expect(look?.readings[0]?.check).toMatchObject({
      unit: 'mm',
      // 5/16 in is 7.9375 mm (1 in = 25.4 mm exactly, ISO 80000-3), and 35/64 in is less than 14 mm.
      ranges: '7.9375..14',
    });
  });

  it('says of a step for some builds which they are, and of its own tools nothing more', () => {
    expect(steps[1]).toMatchObject({ plans: '0', only: 'with front fog lamps' });
  });
});

describe('the sheets that are filled in by hand', () => {
  const job = make.guide({
    items: [
      make.part('panel', { label: 'Panel' }),
      make.fastener('screw', { label: 'Panel screw', count: 3, holds: 'panel' }),
      make.kit('nut', { label: 'Wing nut', count: 4, spare: 1, torque: '25 N·m' }),
    ],
    steps: [
      { id: 'off', do: ['remove screw', 'remove panel'] },
      { id: 'on', do: ['refit panel', 'refit screw', 'start nut', 'tighten nut'] },
    ],
  });
  const { sheets } = view(job);

  it('log each torque with its step', () => {
    expect(sheets.torques).toMatchObject([
      { step: { id: 'on', number: 2 }, torque: '25\u00a0N·m (18.4\u00a0lbf·ft)', plans: null },
    ]);
  });

  it('label each bag with what is in it and where it goes back', () => {
    expect(sheets.bags).toMatchObject([
      {
        number: 1,
        step: { id: 'off' },
        contents: [{ text: '3 panel screws', back: { id: 'on', number: 2 }, end: null }],
      },
    ]);
  });

  it('count what came out against what went back, spares named', () => {
    const line = (name: string) => sheets.counts.find((row) => row.name === name);
    expect(line('Panel screw')).toMatchObject({ from: 'off the vehicle', out: 3, back: '3', elsewhere: '' });
    expect(line('Wing nut')).toMatchObject({ from: 'from the box', out: 4, back: '3', elsewhere: '1 spare' });
  });
});

describe('the figures of a guide', () => {
  it('name the steps that state no time', () => {
    expect(view(screws).untimed.map(({ id }) => id)).toEqual(['unplug', 'lift']);
  });

  it('say "not accounted" where nothing is counted', () => {
    expect(view(make.guide({ items: [], steps: [{ do: [] }] })).accounted).toBe(false);
    expect(view(screws).accounted).toBe(true);
  });
});

describe('lists that no heading of the guide declares', () => {
  it('get a heading of their own in front', () => {
    const elsewhere = { ...screws, file: 'other/guide.md' };
    expect(view(elsewhere).sections.map(({ id }) => id)).toEqual(['list_need', 'list_off', 'work']);
  });
});

describe('identity', () => {
  it('is told as people say it', () => {
    expect(dateWords('2026-10-02')).toBe('2\u00a0October 2026');
    expect(dateWords('next week')).toBe('next week');
    expect(dateWords('2026-13-02')).toBe('2026-13-02');
    expect(shortFingerprint('3f2a9c04b7d1e588')).toBe('3f2a\u00a09c04\u00a0b7d1');
  });
});

describe('an address in a file of the workspace', () => {
  it('is a path from the root, or nothing where it leaves the workspace', () => {
    expect(pathFrom('a/guide.md', 'pictures/x%20y.jpg?v=1#top')).toBe('a/pictures/x y.jpg');
    expect(pathFrom('a/guide.md', '../platforms/p.md')).toBe('platforms/p.md');
    expect(pathFrom('a/guide.md', '../../etc/passwd')).toBeNull();
    expect(pathFrom('a/guide.md', 'https://example.org/x.jpg')).toBeNull();
    expect(pathFrom('a/guide.md', '//example.org/x.jpg')).toBeNull();
    expect(pathFrom('a/guide.md', '100%.jpg')).toBe('a/100%.jpg');
  });
});
