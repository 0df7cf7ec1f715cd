import { describe, expect, test } from 'vitest';
import { clashOfWidth, widthStandardNamed } from '../../src/trade/widths.ts';
import { flats, plain, thread } from './read.ts';

const clash = (drive: string, on: string, standard?: string): string | undefined => {
  const found = clashOfWidth(
    flats(drive),
    thread(on),
    standard === undefined ? undefined : widthStandardNamed(standard),
  );
  return found && plain(found);
};

describe('a stated width on a stated thread', () => {
  test('is accepted where any standard has it: four widths of M10', () => {
    for (const width of ['hex 16', 'hex 17', 'hex 15', 'hex 14']) expect(clash(width, 'M10')).toBeUndefined();
  });

  test('is a clash where none has it', () => {
    expect(clash('hex 18', 'M10')).toBe(
      'no standard known here gives M10x1.5 a hexagon of 18 mm; it is 13 mm by ISO 4162 (small flange bolt), EN 1662 (small flange bolt); 14 mm by JIS small series (bolt or nut, Japanese vehicles); 15 mm by ISO 4161 (flange nut); 16 mm by ISO 4014 (bolt or nut), EN 1665 (flange bolt), EN 1661 (flange nut), ISO 21670 (weld nut with flange); 17 mm by DIN 931 (bolt or nut, older series)',
    );
    expect(clash('hex-socket 7', 'M8')).toBe(
      'no standard known here gives M8x1.25 a hexagon socket of 7 mm; it is 4 mm by ISO 4026 (set screw); 5 mm by ISO 10642 (countersunk socket screw), ISO 7380 (button-head screw); 6 mm by ISO 4762 (socket-head screw)',
    );
    expect(clash('hex 11/16 in', '1/2-13')).toMatch(/it is 3\/4 in by ASME B18.2.1 \(cap screw\)/);
  });

  test('is held to the standard that the author names', () => {
    expect(clash('hex 17', 'M10', 'ISO 4017')).toBe(
      'ISO 4014 does not give M10x1.5 a hexagon of 17 mm; it is 16 mm by ISO 4014 (bolt or nut)',
    );
    expect(clash('hex 17', 'M10', 'din 933')).toBeUndefined();
  });

  test('is left alone where no standard here knows the size', () =>
    expect(clash('hex 41', 'M27')).toBeUndefined());

  test('fine pitch does not change it', () => expect(clash('hex 13', 'M8x1')).toBeUndefined());
});
