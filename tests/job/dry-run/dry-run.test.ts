import { describe, expect, it } from 'vitest';
import { computeJob } from '../../../src/job/index.ts';
import { condition, connector, fastener, guide, kit, measure, part, supply } from '../builder.ts';
import { faultsOf } from './faults.ts';

const cover = part('cover');
const screw = fastener('screw', { count: 3, side: 'each', holds: 'cover' });
const plug = connector('plug', { on: 'cover', side: 'each' });

describe('lifting a part', () => {
  it('waits for all that holds it and is plugged into it', () => {
    expect(
      faultsOf({
        items: [cover, screw, plug],
        steps: [
          { id: 'off', do: ['remove screw', 'disconnect plug', 'remove cover'] },
          { id: 'on', do: ['refit cover', 'connect plug', 'refit screw'] },
        ],
      }),
    ).toEqual([]);
  });

  it('fails on each side alone', () => {
    expect(
      faultsOf({
        items: [cover, screw, plug],
        steps: [
          { id: 'left', side: 'left', do: ['remove screw', 'disconnect plug'] },
          { id: 'off', do: ['remove cover'] },
          { id: 'on', do: ['refit cover', 'connect plug', 'refit screw'] },
        ],
      }),
    ).toEqual(['still-held cover screw (off right)', 'still-connected cover plug (off right)']);
  });

  it('is done once what covers it is away or aside', () => {
    const liner = part('liner', { covers: 'cover' });
    const work = (first: string, last: string) =>
      faultsOf({
        items: [cover, liner],
        steps: [{ do: [first, 'remove cover', 'refit cover', last].filter((one) => one !== '') }],
      });
    expect(work('', '')).toEqual(['still-covered cover liner (step-1)']);
    expect(work('remove liner', 'refit liner')).toEqual([]);
    expect(work('move-aside liner', 'move-back liner')).toEqual([]);
  });

  it('needs a fastener only loosened where that frees it', () => {
    const items = [cover, fastener('hook', { holds: 'cover', free: true })];
    const work = ['loosen hook', 'remove cover', 'refit cover', 'tighten hook'];
    expect(faultsOf({ items, steps: [{ do: work }] })).toEqual([]);
    expect(faultsOf({ items, steps: [{ do: ['remove cover', 'refit cover'] }] })).toEqual([
      'still-held cover hook (step-1)',
    ]);
  });

  it('aside asks what lifting asks, except that plugs may stay', () => {
    const items = [cover, fastener('clip', { holds: 'cover' }), connector('plug', { on: 'cover' })];
    expect(faultsOf({ items, steps: [{ do: ['move-aside cover', 'move-back cover'] }] })).toEqual([
      'still-held cover clip (step-1)',
    ]);
    const right = ['remove clip', 'move-aside cover', 'move-back cover', 'refit clip'];
    expect(faultsOf({ items, steps: [{ do: right }] })).toEqual([]);
  });
});

describe('going in', () => {
  it('is for fasteners whose part is there', () => {
    expect(
      faultsOf({
        items: [cover, fastener('clip', { holds: 'cover' })],
        steps: [{ do: ['remove clip', 'remove cover', 'refit clip', 'refit cover'] }],
      }),
    ).toEqual(['nothing-to-hold clip cover off (step-1)']);
  });

  it('is for kit fasteners whose kit is fitted', () => {
    const items = [kit('bar'), kit('nut', { holds: 'bar', torque: '8 N·m' })];
    expect(faultsOf({ items, steps: [{ do: ['start nut', 'fit bar', 'tighten nut'] }] })).toEqual([
      'nothing-to-hold nut bar in the box (step-1)',
    ]);
  });

  it('is for plugs whose part is there', () => {
    const items = [cover, connector('plug', { on: 'cover' })];
    const off = ['disconnect plug', 'remove cover'];
    const bench = [{ do: [...off, 'connect plug'] }, { do: ['refit cover'] }];
    expect(faultsOf({ items, steps: bench })).toEqual(['nothing-to-connect plug cover off (step-1)']);
    // In the hand it can be reached: the step that connects goes on to put the part in.
    expect(faultsOf({ items, steps: [{ do: off }, { do: ['connect plug', 'refit cover'] }] })).toEqual([]);
  });

  it('takes a place that is free', () => {
    const items = [part('old'), kit('new', { replaces: 'old' })];
    expect(faultsOf({ items, steps: [{ do: ['fit new'] }] })).toEqual(['place-taken new old (step-1)']);
    expect(faultsOf({ items, steps: [{ do: ['remove old', 'discard old', 'fit new'] }] })).toEqual([]);
  });
});

describe('states', () => {
  it.each([
    [['remove cover', 'remove cover', 'refit cover'], 'wrong-state cover off (step-1)'],
    [['refit cover'], 'wrong-state cover in place (step-1)'],
    [['remove cover', 'discard cover', 'refit cover'], 'wrong-state cover discarded (step-1)'],
    [['discard cover'], 'wrong-state cover in place (step-1)'],
    [['move-back cover'], 'wrong-state cover in place (step-1)'],
  ])('%j', (work, fault) => {
    expect(faultsOf({ items: [cover], steps: [{ do: work }] })).toEqual([fault]);
  });

  it('of a bolt with a torque: started, then tightened, once', () => {
    const items = [fastener('bolt', { torque: '8 N·m' })];
    const work = (...rest: string[]) =>
      faultsOf({ items, steps: [{ do: ['remove bolt', 'refit bolt', ...rest] }] });
    expect(work('tighten bolt')).toEqual([]);
    expect(work()).toEqual(['left bolt started (step-1)']);
    expect(work('tighten bolt', 'tighten bolt')).toEqual(['wrong-state bolt tight (step-1)']);
    expect(
      faultsOf({ items: [kit('nut', { torque: '8 N·m' })], steps: [{ do: ['tighten nut', 'start nut'] }] }),
    ).toEqual(['wrong-state nut in the box (step-1)']);
  });

  it('of a bolt that was loosened before it came off', () => {
    const items = [fastener('bolt')];
    const steps = [{ do: ['loosen bolt', 'remove bolt', 'refit bolt'] }];
    expect(faultsOf({ items, steps })).toEqual(['left bolt started (step-1)']);
  });

  it('of a plug on something from the box: it begins apart', () => {
    const items = [kit('loom'), connector('plug', { on: 'loom' })];
    expect(faultsOf({ items, steps: [{ do: ['fit loom', 'connect plug'] }] })).toEqual([]);
    expect(faultsOf({ items, steps: [{ do: ['fit loom'] }] })).toEqual(['left plug apart']);
  });
});

describe('at the end', () => {
  it.each([
    ['remove cover', 'left cover off (step-1)'],
    ['move-aside cover', 'left cover aside (step-1)'],
    ['disconnect loose-plug', 'left loose-plug apart (step-1)'],
    ['loosen bolt', 'left bolt loosened (step-1)'],
    ['set battery-off', 'left battery-off holds (step-1)'],
    ['apply tape', 'left tape on (step-1)'],
  ])('%s is not the end of it', (work, fault) => {
    const items = [
      cover,
      connector('loose-plug'),
      fastener('bolt'),
      condition('battery-off'),
      condition('cured', { stays: true }),
      supply('tape', { temporary: true }),
    ];
    expect(faultsOf({ items, steps: [{ do: ['set cured', work] }] })).toEqual([fault]);
  });

  it('the box is empty but for its spares', () => {
    expect(faultsOf({ items: [kit('nut'), kit('clip', { spare: 1 })], steps: [{ do: [] }] })).toEqual([
      'left nut in the box',
    ]);
  });

  it('what is handed over or discarded is accounted for', () => {
    const items = [cover, part('badge')];
    const steps = [{ do: ['remove cover', 'remove badge', 'hand-over cover', 'discard badge'] }];
    expect(faultsOf({ items, steps })).toEqual([]);
  });

  it('a one-time fastener has a new one in its place', () => {
    const old = fastener('old', { reuse: false });
    const gone = { do: ['remove old', 'discard old'] };
    expect(faultsOf({ items: [old], steps: [gone] })).toEqual(['one-time-lost old (step-1)']);
    expect(faultsOf({ items: [old], steps: [{ do: ['remove old', 'refit old'] }] })).toEqual([
      'one-time-refitted old (step-1)',
    ]);
    const items = [old, kit('new', { replaces: 'old' })];
    expect(faultsOf({ items, steps: [gone, { do: ['fit new'] }] })).toEqual([]);
  });
});

describe('supplies', () => {
  const tape = supply('tape', { quantity: '1 m' });

  it('do not run out, both sides counted', () => {
    const steps = [{ side: 'each', do: [{ do: 'apply tape', amount: '0.6 m' }] }] as const;
    expect(faultsOf({ items: [tape], steps })).toEqual(['supply-overused tape (step-1)']);
  });

  it('are used as declared, or in part, in tenths that do not add up exactly', () => {
    const once = { do: 'apply tape', amount: '0.1 m' };
    expect(faultsOf({ items: [tape], steps: [{ do: Array.from({ length: 10 }, () => once) }] })).toEqual([]);
    expect(faultsOf({ items: [tape], steps: [{ do: [once] }] })).toEqual([]);
  });

  it('that come off again are put on once', () => {
    const film = supply('film', { temporary: true });
    expect(
      faultsOf({ items: [film], steps: [{ do: ['apply film', 'apply film', 'take-off film'] }] }),
    ).toEqual(['wrong-state film on (step-1)']);
    const sides = [{ side: 'each', do: ['apply film'] }, { do: ['take-off film'] }] as const;
    expect(faultsOf({ items: [film], steps: sides })).toEqual([]);
  });
});

describe('needs', () => {
  it('of a step and of an item are met before', () => {
    const items = [condition('battery-off'), measure('gap'), part('airbag', { needs: 'battery-off' })];
    expect(
      faultsOf({
        items,
        steps: [{ do: ['remove airbag', 'refit airbag'] }, { needs: 'gap', do: ['measure gap'] }],
      }),
    ).toEqual(['needs-unmet airbag battery-off does not hold (step-1)', 'needs-unmet gap not done (step-2)']);
    const met = ['set battery-off', 'measure gap', 'remove airbag', 'refit airbag'];
    expect(faultsOf({ items, steps: [{ do: met }, { needs: 'gap', do: ['clear battery-off'] }] })).toEqual(
      [],
    );
  });
});

describe('sides', () => {
  it('of a step and of what it acts on agree', () => {
    const items = [cover, part('lamp', { side: 'right' })];
    expect(
      faultsOf({ items, steps: [{ side: 'each', do: ['remove cover'] }, { do: ['refit cover'] }] }),
    ).toEqual(['side-mismatch cover (step-1)']);
    expect(faultsOf({ items, steps: [{ side: 'left', do: ['remove lamp'] }] })).toEqual([
      'side-mismatch lamp (step-1)',
    ]);
    expect(faultsOf({ items, steps: [{ side: 'right', do: ['remove lamp', 'refit lamp'] }] })).toEqual([]);
  });
});

describe('builds', () => {
  it('are told by the smallest that shows the fault', () => {
    const { violations } = computeJob(
      guide({
        options: { tow: 'Towing eye', fog: 'Fog lamps' },
        items: [cover, connector('plug', { on: 'cover', when: 'fog' }), part('eye', { when: 'tow' })],
        steps: [{ do: ['remove cover', 'refit cover'] }],
      }),
    );
    expect(violations.map((one) => [one.kind, one.witness])).toEqual([
      ['still-connected', [{ option: 'fog', value: true }]],
    ]);
  });

  it('play only what stands for them', () => {
    expect(
      faultsOf({
        options: { fog: 'Fog lamps' },
        items: [cover, connector('plug', { on: 'cover', when: 'fog' })],
        steps: [
          { do: [{ do: 'disconnect plug', where: 'fog' }, 'remove cover'] },
          { do: ['refit cover'] },
          { when: 'fog', do: ['connect plug'] },
        ],
      }),
    ).toEqual([]);
  });
});

it('plays up to an action that is not understood, and no further', () => {
  const items = [cover, screw];
  expect(faultsOf({ items, steps: [{ do: ['remove scerw', 'remove cover'] }] })).toEqual([]);
  expect(faultsOf({ items, steps: [{ do: ['remove cover', 'refit scerw'] }] })).toEqual([
    'still-held cover screw (step-1)',
  ]);
});
