import { describe, expect, it } from 'vitest';
import { distinctOutcomes } from '../../src/job/builds/outcomes.ts';
import { connector, guide, part } from './builder.ts';

const lamps = { lamps: { halogen: 'Halogen headlamps', led: 'LED headlamps' } };

describe('distinct outcomes', () => {
  it('put together the builds for which a guide reads alike', () => {
    const outcomes = distinctOutcomes(
      guide({
        options: { fog: 'Fog lamps', tow: 'Towing eye', ...lamps },
        items: [part('cover'), connector('plug', { on: 'cover', when: 'fog or lamps is led' })],
        steps: [{ do: [{ do: 'disconnect plug', where: 'fog or lamps is led' }, 'remove cover'] }],
      }),
    );
    expect(outcomes.deciding.map((option) => option.id)).toEqual(['fog', 'lamps']);
    expect(outcomes.groups).toEqual([
      [
        { fog: true, lamps: 'halogen' },
        { fog: true, lamps: 'led' },
        { fog: false, lamps: 'led' },
      ],
      [{ fog: false, lamps: 'halogen' }],
    ]);
  });

  it('is a single one for a guide without conditions', () => {
    const { groups, deciding } = distinctOutcomes(guide({ options: { fog: 'Fog' }, items: [], steps: [] }));
    expect([groups, deciding]).toEqual([[[{}]], []]);
  });

  it('beyond 64 are a problem that names the options to split', () => {
    const ids = Array.from({ length: 8 }, (_, index) => `o${index}`);
    const outcomes = distinctOutcomes(
      guide({
        options: Object.fromEntries(ids.map((id) => [id, id])),
        items: ids.map((id) => part(`part-${id}`, { when: id })),
        steps: [],
      }),
    );
    expect(outcomes.problem).toEqual({ kind: 'too-many-outcomes', outcomes: 256, split: ['o0', 'o1'] });
    expect(outcomes.groups).toHaveLength(64);
  });

  it('tell when no build is left', () => {
    const none = guide({ options: { fog: 'Fog' }, impossible: ['fog', 'not fog'], items: [], steps: [] });
    expect(distinctOutcomes(none).problem).toEqual({ kind: 'no-build' });
  });
});
