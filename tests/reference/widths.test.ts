import { describe, expect, test } from 'vitest';
import { toolFitsDrive } from '../../src/trade/drive-fit.ts';
import { widthStandardNamed } from '../../src/trade/widths.ts';
import { drive } from '../trade/read.ts';

/*
 * Widths across flats. Sources: FreeCAD FastenersWB FsData (FC), bd_warehouse data (BD), BOLTS hex.blt and nut.blt,
 * BOSL2 screws.scad (B2), neji-trivia.jp for JIS, astma193gradeb7.com for ASME B18.2.1, mutualscrew.com for inch
 * nuts, mikipulley.co.jp tech10 for JIS B 1176. Numbers only; where the sources disagree, the last part says so.
 */
function width(standard: string, size: string): number | undefined {
  const found = widthStandardNamed(standard);
  if (!found) throw new Error(`${standard} is not known`);
  const across = found.widths.get(size);
  return across === undefined ? undefined : Math.round(across * 1e6) / 1e6;
}

describe('hexagons by standard, in mm', () => {
  const iso = { M5: 8, M6: 10, M8: 13, M10: 16, M12: 18, M14: 21, M16: 24, M20: 30 };
  const din = { M4: 7, M5: 8, M6: 10, M8: 13, M10: 17, M12: 19, M14: 22, M16: 24, M20: 30 };
  test.each([
    ['ISO 4014', { M4: 7, M5: 8, M6: 10, M8: 13, M10: 16, M12: 18, M14: 21, M16: 24, M20: 30 }],
    ['ISO 4017', iso],
    ['ISO 4032', iso],
    ['ISO 8673', iso],
    ['ISO 8765', iso],
    ['DIN 931', din],
    ['DIN 933', din],
    ['DIN 934', din],
    ['JIS small series', { M8: 12, M10: 14, M12: 17, M14: 19, M16: 22, M20: 27 }],
    ['ISO 4162', { M5: 7, M6: 8, M8: 10, M10: 13, M12: 15, M14: 18, M16: 21 }],
    ['EN 1662', { M5: 7, M6: 8, M8: 10, M10: 13, M12: 16, M14: 18, M16: 21 }],
    ['EN 1665', { M5: 8, M6: 10, M8: 13, M10: 16, M12: 18, M14: 21, M16: 24, M20: 30 }],
    ['ISO 4161', { M5: 8, M6: 10, M8: 13, M10: 15, M12: 18, M14: 21, M16: 24, M20: 30 }],
    ['EN 1661', { M5: 8, M6: 10, M8: 13, M10: 16, M12: 18, M14: 21, M16: 24, M20: 30 }],
    ['ISO 21670', { M5: 8, M6: 10, M8: 13, M10: 16, M12: 18, M14: 21 }],
  ])('%s', (standard, widths) => {
    for (const [size, across] of Object.entries(widths))
      expect([size, width(standard, size)]).toEqual([size, across]);
  });
});

describe('hexagon sockets by standard, in mm', () => {
  test.each([
    ['ISO 4762', { M3: 2.5, M4: 3, M5: 4, M6: 5, M8: 6, M10: 8, M12: 10, M14: 12, M16: 14 }],
    ['ISO 10642', { M3: 2, M4: 2.5, M5: 3, M6: 4, M8: 5, M10: 6, M12: 8, M14: 10, M16: 10 }],
    ['ISO 7380-1', { M3: 2, M4: 2.5, M5: 3, M6: 4, M8: 5, M10: 6, M12: 8, M14: undefined, M16: 10 }],
    ['ISO 4026', { M3: 1.5, M4: 2, M5: 2.5, M6: 3, M8: 4, M10: 5, M12: 6, M14: undefined, M16: 8 }],
  ])('%s', (standard, widths) => {
    for (const [size, across] of Object.entries(widths))
      expect([size, width(standard, size)]).toEqual([size, across]);
  });
});

describe('inch hexagons and sockets, in inches', () => {
  test.each([
    [
      'ASME B18.2.1',
      {
        '1/4': 7 / 16,
        '5/16': 1 / 2,
        '3/8': 9 / 16,
        '7/16': 5 / 8,
        '1/2': 3 / 4,
        '9/16': 13 / 16,
        '5/8': 15 / 16,
        '3/4': 9 / 8,
      },
    ],
    [
      'ASME B18.2.2',
      {
        '#6': 5 / 16,
        '#8': 11 / 32,
        '#10': 3 / 8,
        '1/4': 7 / 16,
        '5/16': 1 / 2,
        '3/8': 9 / 16,
        '7/16': 11 / 16,
        '1/2': 3 / 4,
        '9/16': 7 / 8,
        '5/8': 15 / 16,
        '3/4': 9 / 8,
      },
    ],
    ['ASME B18.2.2 heavy', { '1/2': 7 / 8, '5/8': 17 / 16, '3/4': 5 / 4 }],
    [
      'ASME B18.2.1 flange',
      {
        '1/4': 3 / 8,
        '5/16': 1 / 2,
        '3/8': 9 / 16,
        '7/16': 5 / 8,
        '1/2': 3 / 4,
        '5/8': 15 / 16,
        '3/4': 9 / 8,
      },
    ],
    [
      'ASME B18.3',
      {
        '#8': 9 / 64,
        '#10': 5 / 32,
        '1/4': 3 / 16,
        '5/16': 1 / 4,
        '3/8': 5 / 16,
        '7/16': 3 / 8,
        '1/2': 3 / 8,
        '5/8': 1 / 2,
        '3/4': 5 / 8,
      },
    ],
    [
      'ASME B18.3 button',
      { '#10': 1 / 8, '1/4': 5 / 32, '5/16': 3 / 16, '3/8': 7 / 32, '1/2': 5 / 16, '5/8': 3 / 8 },
    ],
    ['ASME B18.3 flat', { '#10': 1 / 8, '1/4': 5 / 32, '5/16': 3 / 16, '3/8': 7 / 32, '1/2': 5 / 16 }],
  ])('%s', (standard, widths) => {
    for (const [size, across] of Object.entries(widths))
      expect((width(standard, size) ?? 0) / 25.4).toBeCloseTo(across, 6);
  });

  // Printed greatest widths of the heads in decimals, ASME B18.2.1 by astma193gradeb7.com.
  test.each([
    ['1/4', 0.438],
    ['5/16', 0.5],
    ['3/8', 0.562],
    ['7/16', 0.625],
    ['1/2', 0.75],
    ['9/16', 0.812],
    ['5/8', 0.938],
    ['3/4', 1.125],
  ])('a %s in cap screw is %d in at most', (size, most) => {
    expect((width('ASME B18.2.1', size) ?? 0) / 25.4).toBeCloseTo(most, 2);
  });
});

describe('where standards and sources disagree', () => {
  test('M10, M12 and M14 differ between ISO and DIN', () => {
    const both = ['M10', 'M12', 'M14'].map((size) => [width('ISO 4017', size), width('DIN 933', size)]);
    expect(both).toEqual([
      [16, 17],
      [18, 19],
      [21, 22],
    ]);
  });

  test('ISO M14 is 21; the 22 in FC ISO 4014 and BOLTS ISO 4017 is a slip of those data', () => {
    expect(width('ISO 4014', 'M14')).toBe(21);
    expect(width('ISO 4017', 'M14')).not.toBe(22);
  });

  test('DIN M10 is 17; a wrench chart (machinecalcs.com) that says 16 for DIN 933 is wrong', () => {
    expect(width('DIN 933', 'M10')).toBe(17);
  });

  test('an M10 flange nut is 15 by ISO 4161 and 16 by EN 1661', () => {
    expect([width('ISO 4161', 'M10'), width('EN 1661', 'M10')]).toEqual([15, 16]);
  });

  test('a small M12 flange bolt is 15 by ISO 4162 and 16 by EN 1662', () => {
    expect([width('ISO 15071', 'M12'), width('EN 1662', 'M12')]).toEqual([15, 16]);
  });

  test('a 7/16 or 9/16 in nut takes a larger wrench than its bolt', () => {
    for (const size of ['7/16', '9/16']) {
      expect((width('ASME B18.2.2', size) ?? 0) - (width('ASME B18.2.1', size) ?? 0)).toBeCloseTo(
        25.4 / 16,
        6,
      );
    }
  });

  test('a 1/4 in flange screw takes a smaller wrench than a plain cap screw', () => {
    expect([width('ASME B18.2.1 flange', '1/4'), width('ASME B18.2.1', '1/4')]).toEqual([9.525, 11.1125]);
  });

  test('Japanese small series: a 2010 vehicle manual has 12, 14, 17, 19 for M8 to M14', () => {
    expect(['M8', 'M10', 'M12', 'M14'].map((size) => width('JIS small series', size))).toEqual([
      12, 14, 17, 19,
    ]);
  });
});

describe('recesses that sources tell apart', () => {
  // ISO 8764 cross recess and JIS B 4633 differ (from memory: the first climbs out of the second).
  test('PH, PZ and JIS are three drives', () => {
    const forms = ['PH2', 'PZ2', 'JIS2'];
    for (const tool of forms)
      for (const item of forms) {
        expect(toolFitsDrive(drive(tool), drive(item)) === 'fits').toBe(tool === item);
      }
  });

  // ISO 14583 M8 is T45 (FC, B2); an old DIN 7985 chart has T40 (anzugsmoment.de). Both are drives; neither fits the other.
  test('T40 and T45 do not serve for each other', () => {
    for (const [tool, item] of [
      ['T40', 'T45'],
      ['T45', 'T40'],
    ] as const) {
      expect(toolFitsDrive(drive(tool), drive(item))).toMatchObject({ accepted: false });
    }
  });

  // ISO 10664 sizes for which FC, BD and B2 give a dimension A; T16 is not among them.
  test('the hexalobular sizes of ISO 10664 exist', () => {
    for (const size of [6, 8, 10, 15, 20, 25, 27, 30, 40, 45, 50, 55, 60])
      expect(drive(`T${size}`)).toMatchObject({ number: size });
    expect(() => drive('T16')).toThrow();
  });
});
