import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseWhen } from '../../src/directives/attributes/when.ts';
import type { When } from '../../src/model/when.ts';

const at = (text: string) => ({ file: 'guide.md', start: 100, end: 100 + text.length });

/** A condition without its places, for reading. */
function bare(when: When): unknown {
  switch (when.kind) {
    case 'has':
      return when.option;
    case 'is':
      return `${when.option}=${when.value}`;
    case 'not':
      return ['not', bare(when.of)];
    case 'and':
    case 'or':
      return [when.kind, ...when.of.map(bare)];
  }
}

const parsed = (text: string) => {
  const reading = parseWhen(text, at(text));
  return reading.ok ? bare(reading.value) : reading.message;
};

describe('a condition', () => {
  it.each([
    ['fog', 'fog'],
    ['not fog', ['not', 'fog']],
    ['lamps is led', 'lamps=led'],
    ['fog and sensors or tow', ['or', ['and', 'fog', 'sensors'], 'tow']],
    ['fog and not (sensors or lamps is led)', ['and', 'fog', ['not', ['or', 'sensors', 'lamps=led']]]],
    ['((fog))', 'fog'],
  ])('%s', (text, tree) => {
    expect(parsed(text)).toEqual(tree);
  });

  it.each([
    ['', 'the condition is empty; an option was expected, as in "fog"'],
    ['fog and', '"fog and" ends where an option was expected'],
    ['(fog', 'a closing parenthesis is missing in "(fog"'],
    ['fog)', '")" was found where "and", "or" or the end was expected'],
    ['fog sensors', '"sensors" was found where "and", "or" or the end was expected'],
    ['lamps is', 'a choice was expected after "lamps is"'],
    ['Fog', '"Fog" was found where an option was expected'],
    ['fog && tow', '"&&" was found where "and", "or" or the end was expected'],
  ])('%s: what is wrong is told', (text, message) => {
    expect(parsed(text)).toBe(message);
  });

  it('points at the option within the value', () => {
    const text = 'fog and lamps is led';
    const reading = parseWhen(text, at(text));
    if (!reading.ok || reading.value.kind !== 'and') throw new Error('the condition was not read');
    expect(reading.value.of.map((part) => text.slice(part.at.start - 100, part.at.end - 100))).toEqual([
      'fog',
      'lamps is led',
    ]);
  });

  it('reads back what it would print, however deep', () => {
    const option = fc.constantFrom('fog', 'tow', 'sensors');
    const { tree } = fc.letrec<{ tree: string }>((tie) => ({
      tree: fc.oneof(
        { maxDepth: 4 },
        option,
        option.map((name) => `${name} is led`),
        tie('tree').map((inner) => `not (${inner})`),
        fc.tuple(tie('tree'), tie('tree')).map(([a, b]) => `(${a}) and (${b})`),
        fc.tuple(tie('tree'), tie('tree')).map(([a, b]) => `(${a}) or (${b})`),
      ),
    }));
    fc.assert(
      fc.property(tree, (text) => {
        const reading = parseWhen(text, at(text));
        expect(reading.ok).toBe(true);
      }),
    );
  });

  it('never throws, and points inside the value', () => {
    fc.assert(
      fc.property(
        fc.string({ unit: fc.constantFrom('(', ')', ' ', 'a', 'not', 'is', 'or', 'é', '-') }),
        (text) => {
          const reading = parseWhen(text, at(text));
          const place = reading.ok ? reading.value.at : (reading.at ?? at(text));
          expect(place.start).toBeGreaterThanOrEqual(100);
          expect(place.end).toBeLessThanOrEqual(100 + text.length);
        },
      ),
    );
  });
});
