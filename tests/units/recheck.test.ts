import { describe, expect, it } from 'vitest';
import { parseRecheck, recheckWords } from '../../src/units/recheck.ts';

function words(text: string): string {
  const reading = parseRecheck(text);
  return reading.ok ? recheckWords(reading.recheck) : reading.message;
}

describe('when something is looked at again', () => {
  it.each([
    // 1 mile is 1.609344 km (international yard and pound agreement, 1959): 500 km are 310.7 mi, 100 mi 160.9 km.
    ['500 km', 'after 500 km (310 mi)'],
    ['100 mi', 'after 100 mi (160 km)'],
    ['20 h', 'after 20 h of use'],
    ['1 year', 'after 1 year'],
    ['500 km or 3 months', 'after 500 km (310 mi) or 3 months, whichever comes first'],
  ])('%s', (text, expected) => {
    expect(words(text)).toBe(expected);
  });

  it.each(['soon', '500', '0 km', '500 furlongs', '500 km or'])('refuses "%s"', (text) => {
    expect(words(text)).toContain('was found where a distance, hours or a time was expected');
  });
});
