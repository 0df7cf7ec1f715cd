import { describe, expect, test } from 'vitest';
import { formatTorque, greatestTorque, parseTorque } from '../../src/units/torque.ts';

const plain = (text: string): string => text.replace(/\u00a0/g, ' ');

function printed(text: string): string {
  const parsed = parseTorque(text);
  return parsed.ok ? plain(formatTorque(parsed.passes)) : parsed.message;
}

describe('a torque in passes', () => {
  test.each([
    ['25 N·m', '25 N·m (18.4 lbf·ft)'],
    ['20 N·m, 50 N·m, +90°', '20 N·m (14.8 lbf·ft), then 50 N·m (36.9 lbf·ft), then a further 90°'],
    ['20 Nm + 90 deg', '20 N·m (14.8 lbf·ft), then a further 90°'],
    ['15 lbf·ft then 1/4 turn', '15 lbf·ft (20.3 N·m), then a further 1/4 turn'],
  ])('%s', (typed, text) => expect(printed(typed)).toBe(text));

  test.each([
    ['20, 50 N·m', '"20" has no unit; a torque was expected, for example "25 N·m"'],
    ['20..25 N·m', '"20..25 N·m" is a range; a wrench is set to one torque, for example "25 N·m"'],
    ['5 mm', '"5 mm" is a length; a torque was expected, for example "25 N·m"'],
    ['20 N·m,', 'the value is empty; a torque was expected, for example "25 N·m"'],
    ['12,5 N·m', '"12,5 N·m" has a decimal comma; write a decimal point'],
    ['0 N·m', '"0 N·m" does not tighten; a torque is more than zero, for example "25 N·m"'],
    ['20 N·m, -90°', '"-90°" does not tighten; a further turn is more than zero, for example "+90°"'],
  ])('%s is refused', (typed, message) => expect(printed(typed)).toBe(message));

  test('the greatest torque is that of all passes', () => {
    const parsed = parseTorque('20 N·m, 50 N·m, +90°');
    expect(parsed.ok && greatestTorque(parsed.passes)?.base).toBe(50);
    const turns = parseTorque('+90°');
    expect(turns.ok && greatestTorque(turns.passes)).toBeUndefined();
  });
});
