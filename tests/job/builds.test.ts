import { describe, expect, it } from 'vitest';
import { enumerateBuilds, MOST_BUILDS } from '../../src/job/builds/builds.ts';
import { space } from './builder.ts';

const lamps = { lamps: { halogen: 'Halogen headlamps', led: 'LED headlamps' } };

describe('the builds of a platform', () => {
  it('is one where nothing can differ', () => {
    expect(enumerateBuilds(space({}))).toEqual({ builds: [{}], tooMany: false });
  });

  it('are all combinations', () => {
    expect(enumerateBuilds(space({ options: { fog: 'Fog lamps', ...lamps } })).builds).toEqual([
      { fog: true, lamps: 'halogen' },
      { fog: true, lamps: 'led' },
      { fog: false, lamps: 'halogen' },
      { fog: false, lamps: 'led' },
    ]);
  });

  it('leave out what does not exist', () => {
    const all = space({ options: { fog: 'Fog lamps', ...lamps }, impossible: ['fog and lamps is halogen'] });
    expect(enumerateBuilds(all).builds).toHaveLength(3);
  });

  it('are those listed, with open options filled in, each once', () => {
    const all = space({
      options: { fog: 'Fog lamps', ...lamps },
      listed: [{ fog: true, lamps: 'led' }, { fog: true }],
    });
    expect(enumerateBuilds(all).builds).toEqual([
      { fog: true, lamps: 'led' },
      { fog: true, lamps: 'halogen' },
    ]);
  });

  it('may be none', () => {
    expect(
      enumerateBuilds(space({ options: { fog: 'Fog' }, impossible: ['fog', 'not fog'] })).builds,
    ).toEqual([]);
  });
});

describe('a platform with very many builds', () => {
  const many = (count: number) =>
    Object.fromEntries(Array.from({ length: count }, (_, index) => [`o${index}`, `Option ${index}`]));

  it('is worked out up to 4,096', () => {
    const { builds, tooMany } = enumerateBuilds(space({ options: many(12) }));
    expect([builds.length, tooMany]).toEqual([4096, false]);
  });

  it('is refused above, and not searched for ever', () => {
    expect(enumerateBuilds(space({ options: many(13) })).tooMany).toBe(true);
    expect(enumerateBuilds(space({ options: many(60) })).builds).toHaveLength(MOST_BUILDS);
    const none = space({ options: many(60), impossible: ['o59', 'not o59'] });
    expect(enumerateBuilds(none).tooMany).toBe(true);
  });

  it('is small again where most combinations are impossible', () => {
    const impossible = Array.from({ length: 19 }, (_, index) => `o${index} and not o${index + 1}`);
    expect(enumerateBuilds(space({ options: many(20), impossible })).builds).toHaveLength(21);
  });
});
