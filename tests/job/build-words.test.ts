import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  anyTraitsInWords,
  fewestTraits,
  traitsForAuthor,
  traitsInWords,
  traitsOf,
  whenInWords,
} from '../../src/job/builds/build-words.ts';
import { enumerateBuilds } from '../../src/job/builds/builds.ts';
import { options, space, when } from './builder.ts';

const all = {
  fog: 'Front fog lamps',
  sensors: 'Parking sensors',
  lamps: { halogen: 'Halogen headlamps', led: 'LED headlamps' },
};
const builds = enumerateBuilds(space({ options: all })).builds;

function statement(inside: (build: (typeof builds)[number]) => boolean): string {
  const split = (wanted: boolean) => builds.filter((build) => inside(build) === wanted);
  return anyTraitsInWords(traitsOf(split(true), split(false), options(all)));
}

describe('what sets builds apart', () => {
  it('names what is fitted and what is not', () => {
    expect(statement((build) => build.fog === true)).toBe('with front fog lamps');
    expect(statement((build) => build.fog === false)).toBe('without front fog lamps');
    expect(statement((build) => build.fog === true && build.lamps === 'led')).toBe(
      'with front fog lamps and LED headlamps',
    );
    expect(statement((build) => build.sensors === false && build.lamps === 'led')).toBe(
      'with LED headlamps, without parking sensors',
    );
  });

  it('names either of two ways', () => {
    expect(statement((build) => build.fog === true || build.lamps === 'led')).toBe(
      'with front fog lamps; or with LED headlamps',
    );
  });

  it('is silent where all are alike', () => {
    expect(statement(() => true)).toBe('');
  });

  it('is true of the builds inside and of no other', () => {
    fc.assert(
      fc.property(fc.subarray([...builds], { minLength: 1 }), (inside) => {
        const outside = builds.filter((build) => !inside.includes(build));
        const sets = traitsOf(inside, outside, options(all));
        const covered = builds.filter((build) =>
          sets.some((traits) => traits.every((trait) => build[trait.option.id] === trait.value)),
        );
        expect(new Set(covered)).toEqual(new Set(inside));
      }),
    );
  });
});

it('tells the author the smallest build that shows a fault', () => {
  const [first] = builds;
  const outside = builds.filter((build) => build.fog !== true || build.lamps !== 'halogen');
  const traits = first ? fewestTraits(first, outside, options(all)) : [];
  expect(traitsForAuthor(traits)).toBe('*fog* is fitted and *lamps* is halogen');
  expect(traitsInWords(traits)).toBe('with front fog lamps and halogen headlamps');
});

describe('a condition in words', () => {
  it.each([
    ['fog', 'with front fog lamps'],
    ['not fog', 'without front fog lamps'],
    ['lamps is led', 'with LED headlamps'],
    ['fog and not sensors', 'with front fog lamps and without parking sensors'],
    [
      'fog and sensors or lamps is led',
      '(with front fog lamps and with parking sensors) or with LED headlamps',
    ],
  ])('%s', (text, words) => {
    expect(whenInWords(when(text), options(all))).toBe(words);
  });

  it('carries "not" to where it belongs', () => {
    const negated = { kind: 'not', of: when('fog or sensors'), at: when('fog').at } as const;
    expect(whenInWords(negated, options(all))).toBe('without front fog lamps and without parking sensors');
  });
});
