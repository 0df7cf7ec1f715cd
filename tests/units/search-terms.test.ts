import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { indexTerms, queryTerms } from '../../src/units/search-terms.ts';

describe('the terms of a text', () => {
  it.each([
    ['13mm', '13 mm'],
    ['13mm', '13\u00a0millimetres'],
    ['25nm', '25 N·m'],
    ['25 Nm', '25 newton metres'],
    ['18 ft lb', '18 lbf·ft'],
    ['18ftlb', '18 foot-pounds'],
    ['1/2 in', '½"'],
    ['0.5 inch', '1/2 in'],
    ['2,5 mm', '2.5 mm'],
    ['QL-335', 'ql335'],
    ['M10×1.25', 'm10x1.25'],
    ['Sensors', 'sensor'],
    ["crow's-foot", 'crows foot'],
  ])('are the same for %s and %s', (one, other) => {
    expect(queryTerms(one)).toEqual(queryTerms(other));
  });

  it.each([
    ['13 mm', '13 in'],
    ['13 mm', '18 mm'],
    ['8 N', '8 N·m'],
    ['2 m', '2 mm'],
  ])('differ for %s and %s', (one, other) => {
    expect(queryTerms(one)).not.toEqual(queryTerms(other));
  });

  it('hold a size in its unit and as a bare number, and a thread by its diameter', () => {
    expect(indexTerms('M8 flange nut, M8x1.25, 13 mm hexagon')).toEqual([
      'm8',
      'flange',
      'nut',
      'm8x1.25',
      '13mm',
      '13',
      'hexagon',
    ]);
  });

  it('hold a torque as people say it: 25 N·m are 18 foot-pounds (NIST SP 811: 18.4)', () => {
    expect(indexTerms('25 N·m (18.4 lbf·ft)')).toEqual(expect.arrayContaining([...queryTerms('18 ft lb')]));
  });

  it('hold both ends of a range', () => {
    expect(queryTerms('10–60 N·m')).toEqual(queryTerms('10 Nm 60 Nm'));
    expect(queryTerms('10 to 60 Nm')).toEqual(queryTerms('10-60nm'));
  });

  it('leave out words that are everywhere, and no part of a size', () => {
    expect(queryTerms('the nut of the 3/8 in ratchet')).toEqual(['nut', '0.375in', 'ratchet']);
    expect(queryTerms('how do I')).toEqual([]);
  });

  it('are found by whoever types the text itself, whatever it is', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 60 }), (text) => {
        const held = new Set(indexTerms(text));
        for (const term of queryTerms(text)) expect(held.has(term)).toBe(true);
      }),
    );
  });
});
