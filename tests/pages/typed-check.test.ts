import { describe, expect, it } from 'vitest';
import type { CrowfootUse } from '../../src/job/actions/crowfoot.ts';
import { torqueCheck } from '../../src/pages/steps/typed-check.ts';
import { parseQuantity } from '../../src/units/parse.ts';
import { parseTorque } from '../../src/units/torque.ts';
import * as make from '../job/builder.ts';

function length(text: string) {
  const parsed = parseQuantity(text, 'length');
  if (!parsed.ok) throw new Error(parsed.message);
  return make.written(parsed.quantity);
}

const crowfoot = {
  wrench: { ...make.tool('wrench'), length: length('280 mm') },
  crowfoot: { ...make.tool('crowfoot'), offset: length('40 mm') },
} as CrowfootUse;

/** What a typed torque may be, in N·m. */
function ends(text: string, use: CrowfootUse | null = null) {
  const parsed = parseTorque(text);
  if (!parsed.ok) throw new Error(parsed.message);
  const check = torqueCheck(parsed.passes, use);
  return check?.words === null
    ? check.ranges.split(' ').map((pair) => pair.split('..').map(Number))
    : undefined;
}

// A torque wrench may be off by 6 % up to 10 N·m, and by 4 % above (ISO 6789-1, from memory).
describe('a torque that was set', () => {
  it('is one of those stated, within what a wrench may be off by', () => {
    expect(ends('25 N·m')).toEqual([[23.5, 26.5]]);
    expect(ends('25 N·m, 50 N·m, +90°')).toEqual([
      [23.5, 26.5],
      [47, 53],
    ]);
    expect(ends('+90°')).toBeUndefined();
  });

  it('may with a crowfoot be as low as the setting in line with the wrench', () => {
    const [[least, most] = []] = ends('30 N·m', crowfoot) ?? [];
    // 30 N·m × 280 mm ÷ (280 mm + 40 mm) = 26.25 N·m.
    expect(least).toBeCloseTo(26.25 * 0.94, 9);
    expect(most).toBeCloseTo(30 * 1.06, 9);
  });
});
