import { describe, expect, test } from 'vitest';
import { judgeClearanceHole, judgeRivetNutHole, tapDrill } from '../../src/trade/holes.ts';
import { plain, quantity, thread } from './read.ts';

function clearance(hole: string, on: string): string | undefined {
  const found = judgeClearanceHole(quantity(hole, 'length'), thread(on));
  return found && (found.verdict === 'fits' ? 'fits' : plain(found.message));
}

describe('a hole that a bolt must pass', () => {
  test.each([
    ['8 mm', 'M8', 'a hole of 8 mm (5/16 in) is too small for M8 to pass; ISO 273 gives 8.4, 9 or 10 mm'],
    ['8.4 mm', 'M8', 'fits'],
    ['10 mm', 'M8', 'fits'],
    [
      '12 mm',
      'M8',
      'a hole of 12 mm (15/32 in) is larger than any clearance hole for M8; ISO 273 gives 8.4, 9 or 10 mm',
    ],
    ['9/32 in', '1/4-20', 'fits'],
    [
      '1/4 in',
      '1/4-20',
      'a hole of 1/4 in (6.35 mm) is too small for 1/4 to pass; ASME B18.2.8 gives 6.75, 7.14 or 7.54 mm',
    ],
    ['30 mm', 'M27', undefined],
  ])('%s for %s', (hole, on, expected) => expect(clearance(hole, on)).toBe(expected));
});

describe('a hole for a rivet nut', () => {
  test("is a plausible span, and the part's own sheet decides", () => {
    expect(judgeRivetNutHole(quantity('9 mm', 'length'), thread('M6'))).toEqual({ verdict: 'fits' });
    const small = judgeRivetNutHole(quantity('5 mm', 'length'), thread('M6'));
    expect(small?.verdict).toBe('too-small');
    expect(small?.verdict !== 'fits' && plain(small?.message ?? '')).toBe(
      "a hole of 5 mm (13/64 in) is unusual for a rivet nut of M6 (8.9 to 9.6 mm is usual); makers differ, so check the part's own sheet",
    );
    expect(judgeRivetNutHole(quantity('12 mm', 'length'), thread('M6'))?.verdict).toBe('large');
    expect(judgeRivetNutHole(quantity('12 mm', 'length'), thread('M12'))).toBeUndefined();
  });
});

test('inch threads have no tap drill here', () => {
  expect(tapDrill(thread('1/4-20'))).toBeUndefined();
});
