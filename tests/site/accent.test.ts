import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { accentStyle, contrast, grounds, legible, rgb } from '../../src/site/device/accent.ts';

describe('contrast', () => {
  it('is that of published pairs (WCAG 2.2; computed with wcag-contrast)', () => {
    expect(contrast(rgb('#000000'), rgb('#ffffff'))).toBeCloseTo(21, 6);
    expect(contrast(rgb('#767676'), rgb('#fff'))).toBeCloseTo(4.542, 3);
    expect(contrast(rgb('#777777'), rgb('#fff'))).toBeCloseTo(4.478, 3);
    expect(contrast(rgb('#d05d29'), rgb('#000'))).toBeCloseTo(5.28, 2);
  });
});

describe('the accent of a shop', () => {
  it('can be read on both grounds, whatever the shop chooses', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 0xffffff }),
        fc.constantFrom(...(['light', 'dark'] as const)),
        (value, scheme) => {
          const colour = legible(`#${value.toString(16).padStart(6, '0')}`, grounds[scheme]);
          // WCAG 2.2: 1.4.3 by day, 1.4.6 in the dark.
          const least = { light: 4.5, dark: 7 }[scheme];
          expect(contrast(rgb(colour), rgb(grounds[scheme]))).toBeGreaterThanOrEqual(least);
        },
      ),
    );
  });

  it('is left as it is where it can be read', () => {
    expect(legible('#0b6e5f', grounds.light)).toBe('#0b6e5f');
    expect(legible('#0b6e5f', grounds.dark)).not.toBe('#0b6e5f');
  });

  it('colours screens alone: paper is black and white', () => {
    expect(accentStyle('#0b6e5f').match(/@media (\w+)/g)).toEqual(['@media screen', '@media screen']);
    expect(accentStyle(null)).not.toContain('{');
  });
});
