import { describe, expect, test } from 'vitest';
import { parseWire } from '../../src/trade/wire.ts';

describe('wire sizes as authors write them', () => {
  test.each(['2.5 mm²', '2.5 mm2', '2.5mm²', '14 AWG', 'AWG 14', '14 sae'])('%s', (typed) =>
    expect(parseWire(typed).ok).toBe(true),
  );

  test.each([
    [
      '14 ga',
      '"14 ga" can be AWG or SAE, and an SAE wire holds less copper; write, for example, "2.5 mm²", "14 AWG" or "14 SAE"',
    ],
    [
      '7 mm²',
      'no vehicle wire is made 7 mm²; the sizes are 0.22, 0.35, 0.5, 0.75, 0.85, 1, 1.25, 1.5, 2, 2.5, 3, 4, 5, 6, 8, 10, 15, 16, 20, 25, 35, 50, 70, 95, 120',
    ],
    ['2,5 mm²', '"2,5 mm²" has a decimal comma; write a decimal point'],
    [
      '30 AWG',
      '30 AWG is too fine for a vehicle\'s wiring; write, for example, "2.5 mm²", "14 AWG" or "14 SAE"',
    ],
    ['13 SAE', '13 SAE is not a wire size known here; write, for example, "2.5 mm²", "14 AWG" or "14 SAE"'],
    ['2.5', '"2.5" is not a wire size; write, for example, "2.5 mm²", "14 AWG" or "14 SAE"'],
    ['', 'the wire size is empty; write, for example, "2.5 mm²", "14 AWG" or "14 SAE"'],
  ])('%s is refused', (typed, message) => expect(parseWire(typed)).toMatchObject({ ok: false, message }));
});
