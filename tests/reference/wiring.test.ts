import { describe, expect, test } from 'vitest';
import { fuseColour } from '../../src/trade/circuit.ts';
import { ampacity, awgArea, voltageDrop } from '../../src/trade/wire.ts';
import { quantityOf } from '../../src/units/format.ts';
import { base } from '../../src/units/quantity.ts';
import { wire } from '../trade/read.ts';

const CIRCULAR_MIL = (Math.PI / 4) * 0.0254 ** 2;
const length = (feet: number) => quantityOf('length', feet, 'ft').base;

// AWG diameters 0.127·92^((36 − n)/39) mm (lrak.net); circular mils as hyperphysics prints them.
test.each([
  [18, 1.0237, 0.823, [1624.3, 1624.3], 20.95],
  [16, 1.2908, 1.309, [2582.7, 2582.9], 13.17],
  [14, 1.6277, 2.081, [4106.7, 4106.8], 8.285],
  [12, 2.0525, 3.309, [6529.9, 6529], 5.211],
  [10, 2.5882, 5.261, [10383, 10381], 3.277],
  [8, 3.2636, 8.366, [16510, 16509], 2.061],
  [6, 4.1154, 13.3, [26251, 26250], 1.296],
] as const)('%d AWG', (gauge, diameter, area, mils, milliohms) => {
  expect(Math.sqrt((awgArea(gauge) * 4) / Math.PI)).toBeCloseTo(diameter, 4);
  expect(awgArea(gauge)).toBeCloseTo(area, 2);
  for (const printed of mils) {
    expect(Math.abs(awgArea(gauge) / CIRCULAR_MIL / printed - 1)).toBeLessThan(5e-4);
  }
  // Copper at 20 °C is what a wire has at best; ours is judged warm, so that no drop is told too low.
  const ours = wire(`${gauge} AWG`).perMetre * 1000;
  expect(ours).toBeGreaterThan(milliohms);
  expect(ours / milliohms).toBeLessThan(1.05);
});

// 4/0 is n = −3: 0.46 in exactly, so 211 600 circular mils.
test('4/0 AWG is 0.46 in thick', () => expect(wire('4/0 AWG').area / CIRCULAR_MIL).toBeCloseTo(211600, 3));

// SAE wire holds less copper than AWG of the same number: sportsmensmarine.com.
test.each([
  [18, 1537],
  [16, 2336],
  [14, 3702],
  [12, 5833],
  [10, 9343],
  // From memory.
  [8, 14810],
  [6, 25910],
])('%d SAE', (gauge, mils) => {
  expect(wire(`${gauge} SAE`).area / CIRCULAR_MIL).toBeCloseTo(mils, 6);
  expect(wire(`${gauge} SAE`).area).toBeLessThan(awgArea(gauge));
});

// Single wires, 105 °C insulation, in an engine space (ABYC E-11 by sportsmensmarine.com); 8 and 6 from memory.
test.each([
  [18, 17],
  [16, 21],
  [14, 30],
  [12, 38],
  [10, 51],
  [8, 68],
  [6, 102],
])('%d gauge carries %d A, as AWG and as SAE', (gauge, amperes) => {
  expect(ampacity(wire(`${gauge} AWG`))).toBe(amperes);
  expect(ampacity(wire(`${gauge} SAE`))).toBe(amperes);
});

test('no ampacity is above that of any other source: chassis wiring (hyperphysics) and 120 °F (truck-lite.com)', () => {
  const chassis = { 18: 16, 16: 22, 14: 32, 12: 41, 10: 55, 8: 73, 6: 101 };
  for (const [gauge, amperes] of Object.entries(chassis)) {
    // The sources differ by an ampere at 18 and 6; more would be a slip of ours.
    expect(ampacity(wire(`${gauge} AWG`))).toBeLessThanOrEqual(amperes + 1);
  }
});

describe('voltage drop, CM = 10.75·I·L/E there and back (ABYC E-11)', () => {
  const needed = (amperes: number, feet: number, volts: number): number => (10.75 * amperes * feet) / volts;

  // sportsmensmarine.com: 10 A, 11 + 10 ft, 3 % of 12 V asks for 6 271 circular mils.
  test('the worked example flips from 12 AWG to 10 SAE', () => {
    const drop = (size: string): number => voltageDrop(base(10), length(21 / 2), wire(size));
    expect(needed(10, 21, 0.36)).toBeCloseTo(6270.8, 1);
    expect(drop('12 AWG')).toBeLessThan(0.36);
    expect(drop('12 SAE')).toBeGreaterThan(0.36);
    expect(drop('10 SAE')).toBeLessThan(0.36);
  });

  // hollandmarine flipbook: 10 % of 12 V asks for 1 881 circular mils, 16 AWG.
  test('at 10 % 16 AWG will do and 18 AWG will not', () => {
    expect(voltageDrop(base(10), length(21 / 2), wire('16 AWG'))).toBeLessThan(1.2);
    expect(voltageDrop(base(10), length(21 / 2), wire('18 AWG'))).toBeGreaterThan(1.2);
  });

  test('12 AWG, 10 A, 21 ft: 0.3457 V by this formula, 0.3335 V by pure copper at 20 °C', () => {
    const drop = voltageDrop(base(10), length(21 / 2), wire('12 AWG'));
    expect(drop).toBeCloseTo(0.3457, 4);
    expect(drop).toBeGreaterThan(0.3335);
  });

  test.each([
    [5, 30, 4479],
    [30, 10, 8958],
  ])('%d A over %d ft at 3 %', (amperes, feet, mils) => {
    expect(needed(amperes, feet, 0.36)).toBeCloseTo(mils, 0);
    // The drop of a gauge is in the ratio of its copper: 12 AWG stands for the size that the formula asks for.
    const known = wire('12 AWG');
    const computed = { ...known, perMetre: (known.perMetre * known.area) / (mils * CIRCULAR_MIL) };
    expect(voltageDrop(base(amperes), length(feet / 2), computed)).toBeCloseTo(0.36, 4);
  });
});

// ISO 6722: greatest resistance of a conductor in mΩ/m at 20 °C (the figures are from memory).
test.each([
  [0.5, 37.1],
  [0.75, 24.7],
  [1, 18.5],
  [1.5, 12.7],
  [2.5, 7.6],
  [4, 4.71],
  [6, 3.14],
])('%d mm² has %d mΩ/m', (area, resistance) => {
  expect(wire(`${area} mm²`).perMetre * 1000).toBeCloseTo(resistance, 9);
});

// Every conductor that ISO 6722 lists is read, and what Japanese vehicles and thin looms have beside them.
test.each([
  '0.22',
  '0.35',
  '0.5',
  '0.75',
  '0.85',
  '1',
  '1.25',
  '1.5',
  '2.5',
  '3',
  '4',
  '6',
  '10',
  '16',
  '120',
])('%s mm² is a size of vehicle wire', (size) => {
  expect(wire(`${size} mm²`).area).toBe(Number(size));
});

// More copper never carries less, up to 120 mm²; thicker than 6 gauge from memory of ABYC E-11, engine space.
test('ampacity grows with the copper', () => {
  const sizes = [0.22, 0.35, 0.5, 0.75, 0.85, 1, 1.25, 1.5, 2, 2.5, 4, 6, 10, 16, 25, 35, 50, 70, 95, 120];
  const carried = sizes.map((size) => Number(ampacity(wire(`${size} mm²`))));
  expect(carried).toEqual([...carried].sort((a, b) => a - b));
  expect([ampacity(wire('16 mm²')), ampacity(wire('4 SAE')), ampacity(wire('4/0 AWG'))]).toEqual([
    102, 136, 378,
  ]);
});

// Blade fuses, ISO 8820-3 colours: fuselayouts.com; 1 A circflow.com.
test.each([
  [1, 'black'],
  [2, 'grey'],
  [3, 'violet'],
  [4, 'pink'],
  [5, 'tan'],
  [7.5, 'brown'],
  [10, 'red'],
  [15, 'blue'],
  [20, 'yellow'],
  [25, 'clear'],
  [30, 'green'],
  [40, 'orange'],
  [12, undefined],
])('a %d A blade fuse is %s', (rating, colour) => expect(fuseColour(base(rating))).toBe(colour));
