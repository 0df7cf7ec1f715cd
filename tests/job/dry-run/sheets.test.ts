import { describe, expect, it } from 'vitest';
import { computeJob } from '../../../src/job/index.ts';
import type { Plan } from '../../../src/model/job.ts';
import { condition, connector, fastener, type GuideWords, guide, kit, part } from '../builder.ts';

function planOf(words: GuideWords): Plan {
  const [plan] = computeJob(guide(words)).plans;
  if (!plan) throw new Error('a job without a plan');
  return plan;
}

const work: GuideWords = {
  items: [
    part('cover'),
    fastener('screw', { count: 3, side: 'each', holds: 'cover', with: 'driver' }),
    fastener('bolt', { count: 2, holds: 'cover', torque: '8 N·m', reuse: false }),
    connector('plug', { on: 'cover' }),
    condition('battery-off', { immobile: true }),
    kit('new-bolt', { count: 3, spare: 1, torque: '8 N·m', replaces: 'bolt' }),
  ],
  steps: [
    { id: 'safe', do: ['set battery-off'] },
    { id: 'screws', do: ['remove screw', 'remove bolt'] },
    { id: 'off', do: ['disconnect plug', 'remove cover', 'discard bolt'] },
    { id: 'on', do: ['refit cover', 'connect plug', 'refit screw', 'fit new-bolt'] },
    { id: 'tight', do: ['tighten new-bolt', 'clear battery-off'] },
  ],
};

describe('the bench', () => {
  const benches = planOf(work).steps.map((step) => step.bench);

  it('tells what is off, apart, loose and in force after each step', () => {
    expect(benches.map((bench) => bench.off.map((one) => `${one.count} ${one.item}`))).toEqual([
      [],
      ['6 screw', '2 bolt'],
      ['1 cover', '6 screw'],
      [],
      [],
    ]);
    expect(benches.map((bench) => bench.apart.map((one) => one.item))).toEqual([[], [], ['plug'], [], []]);
    expect(benches[3]?.loose).toEqual([{ item: 'new-bolt', count: 2, side: null }]);
    expect(benches[1]?.off[0]?.side).toBe('each');
    expect(benches.map((bench) => bench.holds.length)).toEqual([1, 1, 1, 1, 0]);
  });

  it('tells whether the vehicle may be moved, and never guesses', () => {
    expect(benches.map((bench) => bench.movement)).toEqual([
      'must not be moved',
      'must not be moved',
      'must not be moved',
      'must not be moved',
      'may be moved',
    ]);
    const silent = planOf({ items: [part('cover')], steps: [{ do: ['remove cover', 'refit cover'] }] });
    expect(silent.steps[0]?.bench.movement).toBe('not stated');
  });
});

describe('the sheets', () => {
  const plan = planOf(work);

  it('bag what comes off with the step that puts it back', () => {
    expect(plan.bags).toEqual([
      {
        number: 1,
        step: 'screws',
        contents: [
          { item: 'screw', count: 6, side: 'each', backIn: 'on', end: 'tight' },
          { item: 'bolt', count: 2, side: null, backIn: null, end: 'discarded' },
        ],
      },
    ]);
  });

  it('count every piece', () => {
    const line = (item: string) => plan.countSheet.find((one) => one.item === item);
    expect(line('screw')).toEqual({
      item: 'screw',
      from: 'vehicle',
      out: 6,
      back: 6,
      discarded: 0,
      handedOver: 0,
      replaced: 0,
      spare: 0,
    });
    expect(line('bolt')).toMatchObject({ out: 2, back: 0, discarded: 2 });
    expect(line('new-bolt')).toMatchObject({ from: 'box', out: 3, back: 2, spare: 1 });
  });

  it('balance: what came out went back, was discarded, was given away or is spare', () => {
    for (const { out, back, discarded, handedOver, replaced, spare } of plan.countSheet) {
      expect(back + discarded + handedOver + replaced + spare).toBe(out);
    }
  });

  it('list the fasteners with the steps and tools that handle them', () => {
    expect(plan.fasteners).toEqual([
      {
        item: 'screw',
        from: 'vehicle',
        count: 6,
        perSide: 3,
        removedIn: 'screws',
        putIn: 'on',
        tightenedIn: 'on',
        tools: ['driver'],
      },
      {
        item: 'bolt',
        from: 'vehicle',
        count: 2,
        perSide: null,
        removedIn: 'screws',
        putIn: null,
        tightenedIn: null,
        tools: [],
      },
      {
        item: 'new-bolt',
        from: 'box',
        count: 2,
        perSide: null,
        removedIn: null,
        putIn: 'on',
        tightenedIn: 'tight',
        tools: [],
      },
    ]);
  });
});
