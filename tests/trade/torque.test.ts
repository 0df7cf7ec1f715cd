import { describe, expect, test } from 'vitest';
import { strengthOf } from '../../src/trade/strength.ts';
import {
  crowfootSetting,
  judgeTorque,
  judgeUngraded,
  parseFriction,
  stretchesGreased,
  wrenchFits,
} from '../../src/trade/torque.ts';
import { base } from '../../src/units/quantity.ts';
import { plain, quantity, range, thread } from './read.ts';

function judge(torque: string, on: string, grade: string): string {
  const found = judgeTorque(quantity(torque, 'torque'), thread(on), grade);
  return found ? `${found.verdict}: ${plain(found.message)}` : 'not known';
}

describe('a stated torque against proof load', () => {
  test.each([
    [
      '25 N·m',
      'M8x1.25',
      '8.8',
      'plausible: 25 N·m (18.4 lbf·ft) loads the fastener to 74 % of its proof load (M8x1.25, 8.8, K = 0.20 assumed)',
    ],
    [
      '75 lbf·ft',
      '1/2-13',
      'grade 5',
      'plausible: 75 lbf·ft (102 N·m) loads the fastener to 75 % of its proof load (1/2-13, SAE grade 5, K = 0.20 assumed)',
    ],
    [
      '2 N·m',
      'M8',
      '8.8',
      'low: 2 N·m (17.7 lbf·in) loads the fastener to 6 % of its proof load (M8x1.25, 8.8, K = 0.20 assumed), so it hardly clamps; check the number and its unit',
    ],
    [
      '31 N·m',
      'M8',
      '8.8',
      'high: 31 N·m (22.9 lbf·ft) loads the fastener to 91 % of its proof load (M8x1.25, 8.8, K = 0.20 assumed), more than is usual; check the number, its unit and the grade',
    ],
    [
      '90 N·m',
      'M8',
      '8.8',
      'over-proof: 90 N·m (66.4 lbf·ft) loads the fastener to 265 % of its proof load (M8x1.25, 8.8, K = 0.20 assumed), so it is stretched for good or breaks; check the number, its unit and the grade',
    ],
    ['25 N·m', 'M8', 'blue', 'not known'],
  ])('%s on %s, %s', (torque, on, grade, expected) => expect(judge(torque, on, grade)).toBe(expected));

  test('the unit slipped: 25 lbf·ft typed for 25 N·m is told on an M8 of class 8.8', () => {
    expect(judge('25 lbf·ft', 'M8', '8.8')).toMatch(/^high/);
  });

  test('no message names a torque that the author did not state', () => {
    for (const torque of ['1 N·m', '25 N·m', '31 N·m', '200 N·m']) {
      const message = judgeTorque(quantity(torque, 'torque'), thread('M8'), '8.8')?.message ?? '';
      expect(plain(message).match(/[\d.]+ (?:N·m|lbf·\w+)/g)).toHaveLength(2);
    }
  });

  test('the friction is the stated one, and is told', () => {
    const stated = (words: string) => {
      const reading = parseFriction(words);
      if (!reading.ok) throw new Error(reading.message);
      return judgeTorque(quantity('25 N·m', 'torque'), thread('M8'), '8.8', reading.friction);
    };
    expect(stated('oiled')?.assumption).toBe('M8x1.25, 8.8, K = 0.15, oiled');
    expect(stated('0.16')?.assumption).toBe('M8x1.25, 8.8, K = 0.16 stated');
    expect(stated('oiled')?.share).toBeCloseTo(((stated('dry')?.share ?? 0) * 0.2) / 0.15, 9);
    expect(parseFriction('0,16')).toMatchObject({ ok: false, suggestion: '0.16' });
    expect(parseFriction('greasy')).toMatchObject({
      ok: false,
      message: '"greasy" was found where dry, oiled, waxed or a nut factor from 0.08 to 0.4 was expected',
    });
  });

  test('without a grade, only what is too much for every bolt is told', () => {
    const ungraded = (torque: string, on: string) => judgeUngraded(quantity(torque, 'torque'), thread(on));
    expect(ungraded('20 N·m', 'M6')).toBeUndefined();
    expect(plain(ungraded('80 N·m', 'M6')?.message ?? '')).toBe(
      '80 N·m (59 lbf·ft) loads the fastener to 342 % of its proof load (M6x1, even if it is of class 12.9, K = 0.20 assumed), so it is stretched for good or breaks; check the number, its unit and the grade',
    );
    expect(ungraded('400 lbf·ft', '1/2-13')?.verdict).toBe('over-proof');
  });

  test('a torque that only a greased thread would turn into too much is known', () => {
    const greased = (torque: string, grade: string, friction?: { words: string; k: number }) =>
      stretchesGreased(quantity(torque, 'torque'), thread('M8'), grade, friction);
    expect(greased('27 N·m', '8.8')).toBe(true);
    expect(greased('18 N·m', '8.8')).toBe(false);
    expect(greased('27 N·m', '8.8', { words: 'oiled', k: 0.15 })).toBe(false);
    // Too much already: that is a finding, and no remark.
    expect(greased('40 N·m', '8.8')).toBe(false);
  });

  test('a nut is as strong as the bolt that it is made for; a metric 8 is not an SAE 8', () => {
    expect(strengthOf(thread('M8'), '8')?.name).toBe('8.8');
    expect(strengthOf(thread('M8'), 'class 10')?.name).toBe('10.9');
    expect(strengthOf(thread('1/2-13'), 'Grade 8')?.name).toBe('SAE grade 8');
    expect(strengthOf(thread('1/2-13'), '8.8')).toBeUndefined();
  });
});

describe('the wrench and its scale', () => {
  const onScale = (torque: string, scale: string): string => {
    const found = wrenchFits(quantity(torque, 'torque'), range(scale, 'torque'));
    return found.verdict === 'within' ? 'within' : plain(found.message);
  };

  test('from its lowest mark where one is stated', () => {
    expect(onScale('10 N·m', '10..60 N·m')).toBe('within');
    expect(onScale('60 N·m', '10..60 N·m')).toBe('within');
    expect(onScale('8 N·m', '10..60 N·m')).toBe(
      "8 N·m (70.8 lbf·in) is less than the wrench's lowest mark, 10 N·m, where it cannot be trusted",
    );
    expect(onScale('100 lbf·ft', '10..60 N·m')).toBe(
      "100 lbf·ft (136 N·m) is more than the wrench's greatest mark, 60 N·m",
    );
  });

  test('else from a fifth of its greatest', () => {
    expect(onScale('12 N·m', '0..60 N·m')).toBe('within');
    expect(onScale('11 N·m', '0..60 N·m')).toBe(
      "11 N·m (97.4 lbf·in) is less than 20 % of the wrench's greatest mark, 60 N·m, where it cannot be trusted",
    );
  });
});

test('a crowfoot that reaches back past the grip cannot be set', () => {
  expect(() => crowfootSetting(base(50), base(300), base(400), base(180))).toThrow('must reach forward');
});
