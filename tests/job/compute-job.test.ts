import { describe, expect, it } from 'vitest';
import { computeJob } from '../../src/job/index.ts';
import type { Block } from '../../src/model/block.ts';
import type { Plan } from '../../src/model/job.ts';
import type { SignalWord } from '../../src/trade/signal-words.ts';
import {
  connector,
  estimate,
  fastener,
  type GuideWords,
  guide,
  kit,
  mention,
  nowhere,
  part,
  supply,
  text,
  tool,
  wear,
  when,
  written,
} from './builder.ts';

function firstPlan(words: GuideWords): Plan {
  const [plan] = computeJob(guide(words)).plans;
  if (!plan) throw new Error('a job without a plan');
  return plan;
}

function message(word: SignalWord, hazard: string, place: number, whenText?: string): Block {
  return {
    type: 'message',
    word,
    hazard: [text(hazard)],
    body: [mention('wear', 'gloves')],
    when: whenText ? written(when(whenText)) : null,
    at: { ...nowhere, start: place },
  };
}

describe('the gather list', () => {
  it('names each tool once with its first use, those of items and of actions too', () => {
    const { gather, steps } = firstPlan({
      items: [
        tool('lever'),
        tool('driver'),
        tool('socket'),
        tool('lamp'),
        part('cover'),
        fastener('screw', { with: 'driver' }),
        fastener('bolt'),
      ],
      steps: [
        { id: 'a', do: ['remove screw', { do: 'remove bolt', with: 'socket' }] },
        { id: 'b', do: ['tool lever', 'remove cover', 'refit screw'] },
      ],
    });
    expect(gather.tools).toEqual([
      { item: 'lever', firstStep: 'b', steps: ['b'], atOnce: 1 },
      { item: 'driver', firstStep: 'a', steps: ['a', 'b'], atOnce: 1 },
      { item: 'socket', firstStep: 'a', steps: ['a'], atOnce: 1 },
      { item: 'lamp', firstStep: null, steps: [], atOnce: 1 },
    ]);
    expect(steps.map((step) => step.tools)).toEqual([
      ['driver', 'socket'],
      ['lever', 'driver'],
    ]);
  });

  it('adds up supplies, twice for a step that is done on each side', () => {
    const { gather } = firstPlan({
      items: [supply('tape', { quantity: '2 m' }), supply('wipe', { quantity: '40 ml' })],
      steps: [
        { do: [{ do: 'apply tape', amount: '0.2 m' }] },
        { side: 'each', do: [{ do: 'apply tape', amount: '0.3 m' }, 'supply wipe'] },
      ],
    });
    expect(gather.supplies.map(({ item, used, firstStep }) => [item, used, firstStep])).toEqual([
      ['tape', 800, 'step-1'],
      ['wipe', null, 'step-2'],
    ]);
    expect(gather.supplies[0]?.from).toHaveLength(2);
  });

  it('counts the kit on both sides, and what protects', () => {
    const { gather } = firstPlan({
      items: [kit('clip', { count: 3, side: 'each', spare: 1 }), kit('bar'), wear('gloves')],
      sections: [
        { id: 'fit', intro: [message('caution', 'Edges', 1)], steps: [{ id: 'go', do: ['fit bar'] }] },
      ],
    });
    expect(gather.kit).toEqual([
      { item: 'clip', count: 6, perSide: 3, spare: 1, firstStep: null },
      { item: 'bar', count: 1, perSide: null, spare: 0, firstStep: 'go' },
    ]);
    expect(gather.wear).toEqual([{ item: 'gloves', firstStep: 'go' }]);
  });
});

describe('time', () => {
  it('is summed per section and job, per side, with the minutes of a helper', () => {
    const { time, steps } = firstPlan({
      items: [],
      sections: [
        {
          id: 'strip',
          steps: [
            { id: 'a', side: 'each', time: [3, 4, 6], do: [] },
            { id: 'b', time: [4, 6, 8], people: 2, do: [] },
          ],
        },
        {
          id: 'fit',
          steps: [
            { id: 'c', time: [1, 2, 3], wait: 60, do: [] },
            { id: 'd', do: [] },
          ],
        },
      ],
    });
    expect(time.job).toEqual(estimate(11, 16, 23));
    expect(time.sections).toEqual([
      { section: 'strip', estimate: estimate(10, 14, 20) },
      { section: 'fit', estimate: estimate(1, 2, 3) },
    ]);
    expect([time.helper, time.waiting, time.untimed, time.from.length]).toEqual([
      estimate(4, 6, 8),
      60,
      ['d'],
      3,
    ]);
    expect(steps.map((step) => step.time)).toEqual([
      estimate(6, 8, 12),
      estimate(4, 6, 8),
      estimate(1, 2, 3),
      null,
    ]);
  });
});

describe('safety messages', () => {
  it('stand in front, most severe word first, each once', () => {
    const cold = message('notice', 'Cold', 1);
    const { messages } = firstPlan({
      items: [],
      sections: [
        {
          id: 'strip',
          intro: [cold],
          steps: [
            { id: 'a', blocks: [message('caution', 'Edges', 2), message('danger', 'Live', 3)], do: [] },
          ],
        },
        { id: 'refit', steps: [{ id: 'refit-a', blocks: [message('caution', 'Edges', 2)], do: [] }] },
      ],
    });
    expect(messages.map((one) => [one.message.word, one.section, one.step])).toEqual([
      ['danger', 'strip', 'a'],
      ['caution', 'strip', 'a'],
      ['notice', 'strip', null],
    ]);
  });
});

describe('plans', () => {
  const words: GuideWords = {
    options: { fog: 'Front fog lamps' },
    items: [part('cover'), connector('plug', { on: 'cover', when: 'fog' }), tool('pick')],
    steps: [
      {
        id: 'unplug',
        when: 'fog',
        do: ['tool pick', 'disconnect plug'],
        blocks: [message('notice', 'x', 1)],
      },
      { id: 'off', do: ['remove cover'] },
    ],
  };

  it('are one for each outcome, with what sets its builds apart', () => {
    const { plans, decidingOptions } = computeJob(guide(words));
    expect(decidingOptions).toEqual(['fog']);
    expect(
      plans.map((plan) => [plan.statement, plan.steps.map((step) => `${step.number} ${step.id}`)]),
    ).toEqual([
      ['with front fog lamps', ['1 unplug', '2 off']],
      ['without front fog lamps', ['1 off']],
    ]);
    expect(plans.map((plan) => plan.messages.length)).toEqual([1, 0]);
    expect(plans.map((plan) => plan.gather.tools[0]?.firstStep)).toEqual(['unplug', null]);
  });

  it('is one without a statement where nothing differs', () => {
    expect(computeJob(guide({ items: [], steps: [] })).plans.map((plan) => plan.statement)).toEqual(['']);
  });
});
