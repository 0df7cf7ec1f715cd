import { describe, expect, test } from 'vitest';
import { checkPrint, correctionCommand } from '../../src/trade/print-check.ts';

function causes(across: number, up = across): string[] {
  const result = checkPrint(across, up);
  return result.kind === 'setting' ? result.causes.map((c) => c.cause) : [result.kind];
}

// What 100.0 mm became on paper: measured with Chromium, Firefox and cups-filters.
describe('a setting is named by what it does to 100 mm', () => {
  test.each([66.6, 72.4, 62.8, 65.4, 71.9])('%d mm: the web page', (side) => {
    expect(causes(side)).toEqual(['the template was printed from the web page']);
  });
  test('85.5 mm: A4 on Letter', () => expect(causes(85.5)[0]).toContain('Letter paper'));
  test('91.4 mm: margins', () => expect(causes(91.4)[0]).toContain('margins'));
  test('94.0 mm: two causes, both told', () => expect(causes(94)).toHaveLength(2));
  test('97.1 mm lies near 96.8 and 97.3: every cause that fits is told', () => {
    expect(causes(97.1)).toHaveLength(3);
  });
});

// Fit to page by the sizes alone: A4 → Letter 279.4/297 = 0.9407, Letter → A4 210/215.9 = 0.9727.
test('the arithmetic of paper sizes is among the causes', () => {
  expect(279.4 / 297).toBeCloseTo(0.940741, 6);
  expect(210 / 215.9).toBeCloseTo(0.972673, 6);
  expect(causes((100 * 279.4) / 297)).toContain('the A4 file was fitted to Letter paper');
  expect(causes((100 * 210) / 215.9)).toContain('the Letter file was fitted to A4 paper');
});

test('a cause must fit within 0.4 mm', () => {
  expect(causes(91.8)[0]).toContain('margins');
  expect(causes(91.9)).toEqual(['refused']);
  expect(causes(73.4)[0]).toContain('web page');
  expect(causes(73.5)).toEqual(['refused']);
});

test('a setting scales both sides: one side alone proves none', () => {
  expect(causes(97.3, 99.9)).toEqual(['correct']);
  expect(causes(63, 72)).toEqual(['refused']);
});

test('100 mm within 0.2 mm is true', () => {
  expect(checkPrint(100, 100)).toEqual({ kind: 'true' });
  expect(checkPrint(99.8, 100.2)).toEqual({ kind: 'true' });
  expect(checkPrint(99.7, 100).kind).toBe('correct');
});

// Nominal over measured.
test.each([
  [99.2, 1.008065],
  [98, 1.020408],
  [100.5, 0.995025],
])('a printer that makes %d mm is corrected by %d', (side, factor) => {
  const result = checkPrint(side, side);
  expect(result.kind === 'correct' ? result.correction.x : null).toBeCloseTo(factor, 6);
});

test('a correction is per axis', () => {
  const result = checkPrint(99.6, 100);
  expect(result).toEqual({ kind: 'correct', correction: { x: 100 / 99.6, y: 1 } });
});

test('beyond 97.0 to 103.0 mm it is refused', () => {
  expect(checkPrint(103, 103).kind).toBe('correct');
  expect(checkPrint(103.1, 100).kind).toBe('refused');
  expect(checkPrint(96.9, 100).kind).toBe('refused');
  expect(checkPrint(97, 100).kind).toBe('correct');
});

test.each([
  [0, 100],
  [-1, 100],
  [Number.NaN, 100],
  [100, Number.POSITIVE_INFINITY],
])('%d × %d is no measurement', (across, up) => {
  expect(checkPrint(across, up).kind).toBe('refused');
});

test('the command names the guide, the template and both sides', () => {
  expect(correctionCommand('lamp-cradle', 'notch', 99.2, 100.05)).toBe(
    'baybook cut lamp-cradle notch --measured 99.2,100.05',
  );
});
