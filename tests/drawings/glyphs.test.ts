import { s } from 'hastscript';
import { describe, expect, test } from 'vitest';
import { driveGlyph } from '../../src/drawings/drive-glyph.ts';
import { fastenerProfile, profileFor } from '../../src/drawings/fastener-profile.ts';
import { safetyAlert, type WearSign, wearSign, wearSignFor } from '../../src/drawings/safety-symbol.ts';
import { hexalobe } from '../../src/drawings/shapes.ts';
import { type Drive, parseDrive } from '../../src/trade/drives.ts';
import type { FastenerShape } from '../../src/trade/glossary/glossary.ts';
import { difference, rendered, svgText } from './draw.ts';

function drive(text: string): Drive {
  const parsed = parseDrive(text);
  if (!parsed.ok) throw new Error(parsed.message);
  return parsed.drive;
}

const drives = [
  'hex 10',
  'hex-socket 5',
  'T30',
  'T30 security',
  'E10',
  'square 2',
  'PH2',
  'PZ2',
  'JIS 2',
  'slotted',
  'push-in',
  'pull-out',
];
const profiles: FastenerShape[] = [
  'hexagon-head',
  'flange-head',
  'socket-head',
  'pan-head',
  'countersunk',
  'nut',
  'flange-nut',
  'rivet-nut',
  'stud',
  'washer',
  'push-in',
  'pull-out',
  'spring-clip',
];
const signs: WearSign[] = ['eyes', 'face', 'ears', 'hands', 'breath', 'feet', 'head', 'general'];

/** The share by which the two most alike of a set differ, in grey, at a size on screen. */
async function leastDifference(drawings: Parameters<typeof rendered>[0][], width: number): Promise<number> {
  const images = await Promise.all(drawings.map((one) => rendered(one, width)));
  const all = images.flatMap((a, index) => images.slice(index + 1).map((b) => difference(a.data, b.data)));
  return Math.min(...all);
}

describe('told apart in black and white, at the size of a line of text', () => {
  test('drives', async () => {
    expect(
      await leastDifference(
        drives.map((text) => driveGlyph(drive(text))),
        22,
      ),
    ).toBeGreaterThan(0.008);
  });

  test('fastener profiles', async () => {
    expect(await leastDifference(profiles.map(fastenerProfile), 28)).toBeGreaterThan(0.02);
  });

  test('signs for protective equipment', async () => {
    expect(await leastDifference(signs.map(wearSign), 32)).toBeGreaterThan(0.02);
  });
});

test('every drawing stays inside its box', async () => {
  const all = [...drives.map((text) => driveGlyph(drive(text))), ...profiles.map(fastenerProfile)];
  for (const drawing of all) {
    const { data, width, height } = await rendered(drawing, 240);
    const edge = [...data.keys()].filter((index) => {
      const [x, y] = [index % width, Math.floor(index / width)];
      return x === 0 || y === 0 || x === width - 1 || y === height - 1;
    });
    expect(edge.filter((index) => (data[index] ?? 255) < 128)).toEqual([]);
  }
});

test('drawings carry no ids, no style and no text, so that any number stand in one page', () => {
  for (const drawing of [
    safetyAlert(),
    ...drives.map((text) => driveGlyph(drive(text))),
    ...signs.map(wearSign),
  ]) {
    expect(svgText(drawing)).not.toMatch(/ id=|style|<text/);
  }
});

/**
 * ISO 10664, sizes over the lobes (A) and over the hollows (B), mm, as published by fastener suppliers;
 * the radius of the lobes is 0.085 A here. A pixel is 0.01 mm.
 */
test.each([
  [2.8, 1.98],
  [3.95, 2.75],
  [5.6, 3.95],
  [8.95, 6.36],
])('a hexalobular outline of A %f and B %f measures so when drawn', async (across, hollow) => {
  const d = hexalobe(across, hollow, across * 0.085, [5, 5]);
  const { data, width } = await rendered(s('svg', { viewBox: '0 0 10 10' }, s('path', { d })), 1000);
  const reach = (degrees: number) => {
    for (let r = 0; r < 500; r += 0.25) {
      const [x, y] = [
        500 + r * Math.cos((degrees * Math.PI) / 180),
        500 + r * Math.sin((degrees * Math.PI) / 180),
      ];
      if ((data[Math.floor(y) * width + Math.floor(x)] ?? 255) > 127) return (2 * r) / 100;
    }
    return Number.NaN;
  };
  for (const turn of [0, 60, 120, 180, 240, 300]) {
    expect(Math.abs(reach(turn) - across)).toBeLessThan(0.05);
    expect(Math.abs(reach(turn + 30) - hollow)).toBeLessThan(0.05);
  }
});

test('profiles are chosen by the words of the trade, then by the drive', () => {
  expect(profileFor('Rivet nut', null)).toBe('rivet-nut');
  expect(profileFor('M8 flange nut', drive('hex 13'))).toBe('flange-nut');
  expect(profileFor('Arch screw', drive('hex 7'))).toBe('hexagon-head');
  expect(profileFor('Liner screw', drive('T15'))).toBe('pan-head');
  expect(profileFor('Centre-pin clip', drive('push-in'))).toBe('push-in');
  expect(profileFor('Something else', null)).toBeNull();
});

test('signs are chosen by the words of the trade', () => {
  expect(
    [
      'Eye protection',
      'Cut-resistant gloves',
      'Ear protection',
      'Dust mask',
      'Safety boots',
      'Face shield',
      'High-visibility vest',
    ].map(wearSignFor),
  ).toEqual(['eyes', 'hands', 'ears', 'breath', 'feet', 'face', 'general']);
});
