import { describe, expect, test } from 'vitest';
import { signalPanel, signalWords } from '../../src/trade/signal-words.ts';

/** Relative luminance and contrast, WCAG 2.2 (threshold 0.04045: w3c.github.io relative-luminance). */
function luminance(hex: string): number {
  const [red = 0, green = 0, blue = 0] = [1, 3, 5]
    .map((at) => Number.parseInt(hex.slice(at, at + 2), 16) / 255)
    .map((value) => (value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4));
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
}

function contrast(a: string, b: string): number {
  const [light = 0, dark = 0] = [luminance(a), luminance(b)].sort((x, y) => y - x);
  return (light + 0.05) / (dark + 0.05);
}

describe('panels of ANSI Z535.6 (safetylabel.com, electromark.com: panel colours; Wikipedia ISO 3864: screen values)', () => {
  test.each([
    ['danger', '#9b2423', '#ffffff', 7.86],
    ['warning', '#d05d29', '#000000', 5.28],
    ['caution', '#f9a800', '#000000', 10.63],
    ['notice', '#005387', '#ffffff', 8.12],
  ] as const)('%s', (word, background, text, printed) => {
    expect(signalPanel(word, 'ansi')).toMatchObject({ background, text, word: word.toUpperCase() });
    expect(contrast(background, text)).toBeCloseTo(printed, 1);
  });

  test('orange carries black text: white on it fails 4.5', () => {
    expect(contrast('#d05d29', '#ffffff')).toBeCloseTo(3.98, 2);
    for (const word of signalWords) {
      const { background, text } = signalPanel(word, 'ansi');
      expect(contrast(background, text)).toBeGreaterThanOrEqual(4.5);
    }
  });

  test('the measure itself: #767676 on white passes 4.5, #777777 does not', () => {
    expect(contrast('#767676', '#ffffff')).toBeCloseTo(4.542, 3);
    expect(contrast('#777777', '#ffffff')).toBeCloseTo(4.478, 3);
  });
});

// ANSI Z535.6 never puts the alert symbol beside NOTICE; ISO 3864-2 has no NOTICE (emc-pstc msg69054).
test('NOTICE is not about injury', () => {
  expect(signalPanel('notice', 'ansi').alert).toBe(false);
  expect(signalPanel('notice', 'ansi').meaning).not.toMatch(/injur|kill/);
  expect(signalPanel('notice', 'iso').word).toBe('');
});
