import { describe, expect, it } from 'vitest';
import { condition, connector, fastener, kit, part, prove, supply } from '../builder.ts';
import { faultsOf } from './faults.ts';

const cover = part('cover');

describe('a condition that needs another', () => {
  const items = [
    condition('battery-off'),
    condition('airbag-safe', { needs: 'battery-off' }),
    connector('airbag-plug', { needs: 'airbag-safe' }),
  ];
  const safe = ['set battery-off', 'set airbag-safe', 'disconnect airbag-plug'];

  it('lapses with it, and need not be cleared', () => {
    expect(
      faultsOf({ items, steps: [{ do: [...safe, 'connect airbag-plug', 'clear battery-off'] }] }),
    ).toEqual([]);
    expect(
      faultsOf({ items, steps: [{ do: [...safe, 'clear battery-off', 'connect airbag-plug'] }] }),
    ).toEqual(['needs-unmet airbag-plug airbag-safe lapsed (step-1)']);
  });

  it('does not come back with what it needs, but only by being set again', () => {
    const again = [...safe, 'clear battery-off', 'set battery-off'];
    expect(
      faultsOf({ items, steps: [{ do: [...again, 'connect airbag-plug', 'clear battery-off'] }] }),
    ).toEqual(['needs-unmet airbag-plug airbag-safe lapsed (step-1)']);
    expect(
      faultsOf({
        items,
        steps: [{ do: [...again, 'set airbag-safe', 'connect airbag-plug', 'clear battery-off'] }],
      }),
    ).toEqual([]);
  });

  it('lapses over several links, and a lapsed one may be cleared', () => {
    const chain = [condition('a'), condition('b', { needs: 'a' }), condition('c', { needs: 'b' })];
    const set = ['set a', 'set b', 'set c', 'clear a'];
    expect(
      faultsOf({ items: chain, steps: [{ do: set }, { needs: 'c', do: ['set a', 'clear a'] }] }),
    ).toEqual(['needs-unmet c lapsed (step-2)']);
    expect(faultsOf({ items: chain, steps: [{ do: [...set, 'clear c', 'clear b'] }] })).toEqual([]);
  });
});

describe('what a step needs', () => {
  const items = [condition('stands'), cover];
  const work = (...steps: readonly (readonly string[])[]) =>
    faultsOf({
      items,
      steps: steps.map((lines, index) => (index === 1 ? { needs: 'stands', do: lines } : { do: lines })),
    });

  it('holds until its last action', () => {
    expect(work(['set stands'], ['remove cover', 'refit cover', 'clear stands'])).toEqual([]);
    expect(work(['set stands'], ['remove cover', 'clear stands', 'refit cover'])).toEqual([
      'needs-unmet stands does not hold (step-2)',
    ]);
    expect(work([], ['set stands', 'remove cover', 'refit cover', 'clear stands'])).toEqual([
      'needs-unmet stands does not hold (step-2)',
    ]);
  });

  it('may be asked for by a proof, where it stands in the text', () => {
    const proof = prove('cured');
    const steps = [{ do: ['set cured'] }];
    const proved = [
      { id: 'work', steps },
      { id: 'proof', intro: [proof], steps: [] },
    ];
    const early = [
      { id: 'proof', intro: [proof], steps: [] },
      { id: 'work', steps },
    ];
    const sealed = [condition('cured', { stays: true })];
    expect(faultsOf({ items: sealed, sections: proved })).toEqual([]);
    expect(faultsOf({ items: sealed, sections: early })).toEqual(['needs-unmet cured does not hold']);
  });
});

describe('what replaces stands for what it replaces', () => {
  const bar = part('bar');
  const fresh = kit('new-bar', { replaces: 'bar' });
  const swap = ['remove bar', 'fit new-bar'];

  it('is held as that was', () => {
    const items = [bar, fresh, fastener('screw', { holds: 'bar' })];
    const right = ['remove screw', ...swap, 'refit screw'];
    expect(faultsOf({ items, steps: [{ do: right }] })).toEqual([]);
    expect(faultsOf({ items, steps: [{ do: [...right, 'remove new-bar', 'fit new-bar'] }] })).toEqual([
      'still-held new-bar screw (step-1)',
    ]);
  });

  it('is plugged as that was, and its plug is not forgotten', () => {
    const items = [bar, fresh, connector('plug', { on: 'bar' })];
    const right = ['disconnect plug', ...swap, 'connect plug'];
    expect(faultsOf({ items, steps: [{ do: right }] })).toEqual([]);
    expect(faultsOf({ items, steps: [{ do: ['disconnect plug', ...swap, 'discard bar'] }] })).toEqual([
      'left plug apart (step-1)',
    ]);
    expect(faultsOf({ items, steps: [{ do: [...right, 'remove new-bar', 'fit new-bar'] }] })).toEqual([
      'still-connected new-bar plug (step-1)',
    ]);
  });

  it('is covered as that was, and covers what that covered', () => {
    const items = [bar, fresh, part('lid', { covers: 'bar' })];
    const shut = ['remove lid', 'remove bar', 'refit lid', 'fit new-bar'];
    expect(faultsOf({ items, steps: [{ do: shut }] })).toEqual(['still-covered new-bar lid (step-1)']);
    const over = [part('old-lid', { covers: 'bar' }), kit('new-lid', { replaces: 'old-lid' }), bar];
    const early = ['remove old-lid', 'remove bar', 'fit new-lid', 'refit bar'];
    expect(faultsOf({ items: over, steps: [{ do: early }] })).toEqual(['still-covered bar new-lid (step-1)']);
  });

  it('accounts for the old one, from the box or from the supplies', () => {
    expect(faultsOf({ items: [bar, fresh], steps: [{ do: swap }] })).toEqual([]);
    expect(faultsOf({ items: [bar, fresh], steps: [{ do: ['remove bar'] }] })).toEqual([
      'left bar off (step-1)',
      'left new-bar in the box',
    ]);
    const clips = [fastener('clip', { reuse: false }), supply('new-clip', { replaces: 'clip' })];
    expect(
      faultsOf({ items: clips, steps: [{ do: ['remove clip', 'apply new-clip', 'discard clip'] }] }),
    ).toEqual([]);
    expect(faultsOf({ items: clips, steps: [{ do: ['remove clip', 'discard clip'] }] })).toEqual([
      'one-time-lost clip (step-1)',
    ]);
    expect(
      faultsOf({ items: clips, steps: [{ do: ['apply new-clip', 'remove clip', 'discard clip'] }] }),
    ).toEqual(['place-taken new-clip clip (step-1)']);
  });
});

describe('a supply that replaces a clip', () => {
  const items = [
    cover,
    fastener('clip', { holds: 'cover', reuse: false }),
    supply('new-clip', { replaces: 'clip' }),
  ];

  it('holds what the clip held, and goes in once that is there', () => {
    const early = ['remove clip', 'apply new-clip', 'remove cover', 'refit cover'];
    expect(faultsOf({ items, steps: [{ do: early }] })).toEqual(['still-held cover new-clip (step-1)']);
    const bare = ['remove clip', 'remove cover', 'apply new-clip', 'refit cover'];
    expect(faultsOf({ items, steps: [{ do: bare }] })).toEqual([
      'nothing-to-hold new-clip cover off (step-1)',
    ]);
    const right = ['remove clip', 'remove cover', 'refit cover', 'apply new-clip'];
    expect(faultsOf({ items, steps: [{ do: right }] })).toEqual([]);
  });
});

describe('moving back, sliding under, taking off, plugging in the hand', () => {
  it('asks of a part that is moved back what refitting asks', () => {
    const items = [cover, part('lid', { covers: 'cover' })];
    const shut = ['remove lid', 'move-aside cover', 'refit lid', 'move-back cover'];
    expect(faultsOf({ items, steps: [{ do: shut }] })).toEqual(['still-covered cover lid (step-1)']);
  });

  it('tightens a slotted screw once its part is under it', () => {
    const items = [cover, fastener('hook', { holds: 'cover', free: true })];
    const early = ['loosen hook', 'remove cover', 'tighten hook', 'refit cover'];
    expect(faultsOf({ items, steps: [{ do: early }] })).toEqual(['nothing-to-hold hook cover off (step-1)']);
    const out = ['remove hook', 'remove cover', 'refit hook', 'refit cover'];
    expect(faultsOf({ items, steps: [{ do: out }] })).toEqual(['nothing-to-hold hook cover off (step-1)']);
    const slid = ['loosen hook', 'remove hook', 'remove cover', 'refit hook', 'refit cover', 'tighten hook'];
    expect(faultsOf({ items, steps: [{ do: slid }] })).toEqual([]);
  });

  it('takes tape off each side on which it was put', () => {
    const items = [supply('tape', { temporary: true })];
    const both = { side: 'each', do: ['apply tape'] } as const;
    expect(faultsOf({ items, steps: [both, { side: 'each', do: ['take-off tape'] }] })).toEqual([]);
    expect(faultsOf({ items, steps: [both, { do: ['take-off tape'] }] })).toEqual([]);
    expect(faultsOf({ items, steps: [both, { side: 'left', do: ['take-off tape'] }] })).toEqual([
      'left tape on (step-1 right)',
    ]);
    const one = { side: 'left', do: ['apply tape'] } as const;
    expect(faultsOf({ items, steps: [one, { side: 'right', do: ['take-off tape'] }] })).toEqual([
      'wrong-state tape not on (step-2)',
      'left tape on (step-1 left)',
    ]);
  });

  it('connects a plug to what the same step puts in, and parts with nothing that is plugged in', () => {
    const items = [kit('lamp'), connector('plug', { on: 'lamp' })];
    expect(faultsOf({ items, steps: [{ do: ['connect plug', 'fit lamp'] }] })).toEqual([]);
    expect(faultsOf({ items, steps: [{ do: ['connect plug'] }, { do: ['fit lamp'] }] })).toEqual([
      'nothing-to-connect plug lamp in the box (step-1)',
    ]);
    const given = ['fit lamp', 'connect plug', 'remove lamp', 'hand-over lamp'];
    expect(faultsOf({ items, steps: [{ do: given }] })).toEqual(['still-connected lamp plug (step-1)']);
  });
});
