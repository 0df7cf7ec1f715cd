import { describe, expect, test } from 'vitest';
import { computeJob } from '../../../src/job/index.ts';
import { precedenceOf } from '../../../src/job/precedence.ts';
import { helperWords, schedulesOf, secondTechnicianWords } from '../../../src/job/schedule/index.ts';
import type { Guide } from '../../../src/model/guide.ts';
import type { Schedule } from '../../../src/model/schedule.ts';
import { base } from '../../../src/units/quantity.ts';
import {
  condition,
  connector,
  fastener,
  type GuideWords,
  guide,
  kit,
  part,
  supply,
  tool,
} from '../builder.ts';

function schedules(words: GuideWords, crew = 2): readonly Schedule[] {
  const whole: Guide = guide(words);
  const done = whole.sections.flatMap((section) =>
    section.steps.map((step) => ({ section: section.id, step })),
  );
  return schedulesOf(whole, {}, done, crew, precedenceOf(whole, {}, done));
}

/** "arch L 0–10, arch R 10–20": who does what when, in the order of the starts. */
function told({ tasks }: Schedule): string {
  return tasks
    .map(({ step, side, start, finish }) => {
      const sided = side === null ? '' : side === 'left' ? ' L' : ' R';
      return `${step}${sided} ${start}–${finish}`;
    })
    .join(', ');
}

const always = (minutes: number) => [minutes, minutes, minutes] as const;

describe('the written order', () => {
  test('binds, with one technician and with two', () => {
    const both = schedules({
      items: [],
      steps: [
        { id: 'a', time: always(5), do: [] },
        { id: 'b', time: always(4), do: [] },
      ],
    });
    expect(both.map(told)).toEqual(['a 0–5, b 5–9', 'a 0–5, b 5–9']);
    expect(secondTechnicianWords(both)).toBe('A second technician does not make the job shorter');
  });

  test('leaves two technicians the two sides of a step at once', () => {
    const both = schedules({
      items: [],
      steps: [
        { id: 'arch', side: 'each', time: always(10), do: [] },
        { id: 'cover', time: always(5), do: [] },
      ],
    });
    expect(both.map(told)).toEqual([
      'arch L 0–10, arch R 10–20, cover 20–25',
      'arch L 0–10, arch R 0–10, cover 10–15',
    ]);
    expect(secondTechnicianWords(both)).toBe('With a second technician: 15 min instead of 25 min');
    expect(both[1]?.tasks.map(({ hands }) => hands)).toEqual([[1], [2], [1]]);
  });

  test('has the second side wait for a tool of which there is one', () => {
    const sides = (levers: number, ...more: string[]) =>
      schedules({
        items: [tool('lever', { count: levers }), tool('driver')],
        steps: [
          { id: 'arch', side: 'each', time: always(10), do: ['tool lever'] },
          ...more.map((named, index) => ({
            id: `more-${index}`,
            anyOrder: true,
            time: always(5),
            do: [named],
          })),
        ],
      })[1] ?? none;
    expect(told(sides(1))).toBe('arch L 0–10, arch R 10–20');
    expect(told(sides(2))).toBe('arch L 0–10, arch R 0–10');
    // Meanwhile the second technician does what asks for another tool.
    expect(told(sides(1, 'tool driver', 'tool lever'))).toBe(
      'arch L 0–10, more-0 0–5, arch R 10–20, more-1 20–25',
    );
  });

  test('does not bind a step of any order, within its section', () => {
    const words = (touch: string): GuideWords => ({
      items: [part('cover'), part('module'), connector('plug', { on: 'module' }), tool('pick', { count: 2 })],
      sections: [
        { id: 'strip', steps: [{ id: 'off', time: always(5), do: ['remove cover', 'tool pick'] }] },
        {
          id: 'fit',
          steps: [
            { id: 'a', time: always(8), do: ['remove module', 'tool pick'] },
            { id: 'b', time: always(8), anyOrder: true, do: [touch, 'tool pick'] },
          ],
        },
      ],
    });
    expect(told(schedules(words('refit cover'))[1] ?? none)).toBe('off 0–5, a 5–13, b 5–13');
    // The plug sits on the module, which the step before handles.
    expect(told(schedules(words('disconnect plug'))[1] ?? none)).toBe('off 0–5, a 5–13, b 13–21');
  });

  test('keeps a step of any order behind what it names in after', () => {
    const words = (after?: string): GuideWords => ({
      items: [part('cover'), part('module'), tool('pick', { count: 2 })],
      steps: [
        { id: 'a', time: always(8), do: ['remove module', 'tool pick'] },
        {
          id: 'b',
          time: always(8),
          anyOrder: true,
          ...(after ? { after } : {}),
          do: ['remove cover', 'tool pick'],
        },
      ],
    });
    expect(told(schedules(words())[1] ?? none)).toBe('a 0–8, b 0–8');
    expect(told(schedules(words('a'))[1] ?? none)).toBe('a 0–8, b 8–16');
    const freeOf = (one: GuideWords) =>
      computeJob(guide(one)).plans[0]?.steps.map(({ free, after }) => [free, after]);
    expect(freeOf(words())).toEqual([
      [{ before: false, after: false }, []],
      [{ before: true, after: false }, []],
    ]);
    expect(freeOf(words('a'))?.[1]).toEqual([{ before: false, after: false }, [{ step: 'a', wait: 0 }]]);
  });
});

describe('a wait', () => {
  const steps: GuideWords['steps'] = [
    { id: 'glue', time: always(5), wait: 60, do: ['bond ring'] },
    { id: 'loom', time: always(20), do: ['fit loom'] },
    { id: 'push', time: always(3), needs: 'cured', do: ['fit sensor'] },
  ];
  const items = [kit('ring'), kit('loom'), kit('sensor'), condition('cured', { stays: true })];

  test('holds up what follows', () => {
    const [one] = schedules({ items, steps });
    expect(told(one ?? none)).toBe('glue 0–5, loom 65–85, push 85–88');
    expect([one?.elapsed.mean, one?.handsOn.mean, one?.workEnds]).toEqual([88, 28, 88]);
  });

  test('holds up only what needs the condition that its step sets', () => {
    const carried = steps.map((step) =>
      step.id === 'glue' ? { ...step, do: ['bond ring', 'set cured'] } : step,
    );
    expect(told(schedules({ items, steps: carried })[0] ?? none)).toBe('glue 0–5, loom 5–25, push 65–68');
  });

  test('lets a step of any order be done meanwhile', () => {
    const free = steps.map((step) => (step.id === 'loom' ? { ...step, anyOrder: true } : step));
    expect(told(schedules({ items, steps: free })[0] ?? none)).toBe('glue 0–5, loom 5–25, push 65–68');
  });

  test('at the end counts as elapsed and not as work', () => {
    const [one] = schedules({ items, steps: [{ id: 'glue', time: always(5), wait: 60, do: [] }] });
    expect([one?.elapsed.mean, one?.workEnds, one?.handsOn.mean]).toEqual([65, 5, 5]);
  });
});

describe('people', () => {
  const lifting: GuideWords = {
    items: [fastener('nut')],
    steps: [
      { id: 'a', time: always(20), do: [] },
      { id: 'lift', people: 2, time: always(8), do: [] },
      { id: 'hang', people: 2, time: always(4), do: [] },
      { id: 'b', time: always(6), do: [] },
      { id: 'carry', people: 3, time: always(2), do: [] },
    ],
  };

  test('beyond the crew are called in for the step, and named', () => {
    const [one, two] = schedules(lifting);
    expect(one?.helpers).toEqual([
      { from: 20, to: 32, people: 1 },
      { from: 38, to: 40, people: 2 },
    ]);
    expect(helperWords(one ?? none)).toBe(
      'Helpers needed from minute 20 to 32 (1) and from minute 38 to 40 (2)',
    );
    expect(helperWords(two ?? none)).toBe('Helper needed from minute 38 to 40');
    const late = { helpers: [{ from: base<'time'>(1770), to: base<'time'>(1782), people: 1 }] };
    expect(helperWords(late).replaceAll('\u00a0', ' ')).toBe(
      'Helper needed from 1 d 5 h 30 min to 1 d 5 h 42 min after the start',
    );
    expect(two?.tasks.map(({ hands }) => hands)).toEqual([[1], [1, 2], [1, 2], [1], [1, 2, 3]]);
  });

  test('count for the labour, which is summed before it is rounded', () => {
    // 20 + 2 × 12 + 6 + 3 × 2 = 56 min, which is 0.9 h; rounded step by step it would be 1.0 h.
    expect(schedules(lifting).map(({ labour }) => labour)).toEqual([0.9, 0.9]);
  });

  test('of a large crew have a schedule of their own', () => {
    expect(schedules(lifting, 3).map(({ crew }) => crew)).toEqual([1, 2, 3]);
    expect(schedules(lifting, 1).map(({ crew }) => crew)).toEqual([1, 2]);
  });
});

test('times are PERT means, and the spread is that of the critical chain', () => {
  // 5-8-14 has a mean of 8.5 and a spread of 1.5 (schematex.js.org).
  const both = schedules({
    items: [supply('tape')],
    steps: [
      { id: 'a', side: 'each', time: [5, 8, 14], do: ['apply tape'] },
      { id: 'b', time: [5, 8, 14], do: ['apply tape'] },
    ],
  });
  expect(both.map(({ elapsed }) => elapsed.mean)).toEqual([25.5, 17]);
  expect(both[0]?.elapsed.spread).toBeCloseTo(1.5 * Math.sqrt(3), 9);
  expect(both[1]?.elapsed.spread).toBeCloseTo(1.5 * Math.sqrt(2), 9);
  expect(both[1]?.handsOn.mean).toBe(25.5);
});

test('where no step states a time there is no schedule', () => {
  expect(schedules({ items: [], steps: [{ id: 'a', do: [] }] })).toEqual([]);
});

test('a step without a time takes none', () => {
  const [one] = schedules({
    items: [],
    steps: [
      { id: 'a', do: [] },
      { id: 'b', time: always(3), do: [] },
    ],
  });
  expect(told(one ?? none)).toBe('a 0–0, b 0–3');
});

const none: Schedule = {
  crew: 0,
  tasks: [],
  elapsed: { mean: 0 as never, spread: 0 as never },
  workEnds: 0 as never,
  handsOn: { mean: 0 as never, spread: 0 as never },
  labour: 0,
  helpers: [],
  proved: false,
};
