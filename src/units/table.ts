import type { Dimension } from './quantity.ts';

/** Which side of the Atlantic a unit belongs to; `both` for those that need no counterpart. */
type UnitSystem = 'metric' | 'us' | 'both';

/** One unit: how it is printed, how it is typed, and how it becomes the base unit of its dimension. */
export interface Unit {
  readonly dimension: Dimension;
  /** The spelling that Baybook prints. */
  readonly name: string;
  readonly system: UnitSystem;
  /** Base units in one of this unit. */
  readonly factor: number;
  /** Added after the factor; only temperatures have one. */
  readonly offset: number;
  /** Typed forms, already through `unitKey`; the printed name need not be repeated. */
  readonly spellings: readonly string[];
  /** True where the case carries the meaning: MPa and mPa, MΩ and mΩ. */
  readonly exactCase: boolean;
}

type Row = readonly [name: string, system: UnitSystem, factor: number, spellings?: string];

/*
 * Exact factors: inch 25.4 mm and pound 0.453 592 37 kg by the international yard and pound agreement (1959),
 * g 9.806 65 m/s² by the CGPM (1901); the rest follow. The rounded forms are in NIST SP 811, appendix B.8.
 * Volumes are US liquid measure: gallon 231 in³.
 */
const INCH = 25.4;
const POUND = 0.45359237;
const GRAVITY = 9.80665;
const POUND_FORCE = POUND * GRAVITY;
const GALLON = 3.785411784;

const rows: { readonly [D in Dimension]: readonly Row[] } = {
  length: [
    ['mm', 'metric', 1, 'millimetre millimetres millimeter millimeters'],
    ['cm', 'metric', 10, 'centimetre centimetres centimeter centimeters'],
    ['m', 'metric', 1000, 'metre metres meter meters'],
    ['µm', 'metric', 0.001, 'um μm micron microns'],
    ['in', 'us', INCH, 'inch inches "'],
    ['ft', 'us', 304.8, "foot feet '"],
  ],
  mass: [
    ['kg', 'metric', 1, 'kilogram kilograms'],
    ['g', 'metric', 0.001, 'gram grams'],
    ['t', 'metric', 1000, 'tonne tonnes'],
    ['lb', 'us', POUND, 'lbs lbm pound pounds'],
    ['oz', 'us', POUND / 16, 'ounce ounces'],
  ],
  volume: [
    ['l', 'metric', 1, 'litre litres liter liters'],
    ['ml', 'metric', 0.001, 'millilitre millilitres milliliter milliliters cc cm3'],
    ['US gal', 'us', GALLON, 'gal gallon gallons'],
    ['US qt', 'us', GALLON / 4, 'qt quart quarts'],
    ['US pt', 'us', GALLON / 8, 'pt pint pints'],
    ['US fl oz', 'us', GALLON / 128, 'floz fluidounce fluidounces'],
  ],
  time: [
    ['min', 'both', 1, 'mins minute minutes'],
    ['s', 'both', 1 / 60, 'sec secs second seconds'],
    ['h', 'both', 60, 'hr hrs hour hours'],
    ['d', 'both', 1440, 'day days'],
  ],
  torque: [
    ['N·m', 'metric', 1, 'newtonmetre newtonmetres newtonmeter newtonmeters'],
    [
      'lbf·ft',
      'us',
      POUND_FORCE * 0.3048,
      'lbft ftlb ftlbf ftlbs lbsft footpound footpounds poundfoot poundfeet',
    ],
    ['lbf·in', 'us', POUND_FORCE * 0.0254, 'lbin inlb inlbf inlbs lbsin inchpound inchpounds poundinch'],
    ['kgf·m', 'metric', GRAVITY, 'kgm mkg mkgf kpm'],
    ['kgf·cm', 'metric', GRAVITY / 100, 'kgcm'],
  ],
  force: [
    ['N', 'metric', 1, 'newton newtons'],
    ['kN', 'metric', 1000, 'kilonewton kilonewtons'],
    ['kgf', 'metric', GRAVITY, 'kp'],
    ['lbf', 'us', POUND_FORCE, 'poundforce poundsforce'],
  ],
  pressure: [
    ['kPa', 'metric', 1, 'kilopascal kilopascals'],
    ['Pa', 'metric', 0.001],
    ['MPa', 'metric', 1000],
    ['bar', 'metric', 100, 'bars'],
    ['psi', 'us', (POUND_FORCE / INCH ** 2) * 1000, 'lbf/in2 lb/in2'],
  ],
  angle: [
    ['°', 'both', 1, 'deg degree degrees'],
    ['turn', 'both', 360, 'turns revolution revolutions'],
    ['rad', 'both', 180 / Math.PI, 'radian radians'],
  ],
  temperature: [
    ['°C', 'metric', 1, 'c degc degreesc celsius degreescelsius'],
    ['°F', 'us', 5 / 9, 'f degf degreesf fahrenheit degreesfahrenheit'],
  ],
  area: [
    ['mm²', 'metric', 1, 'sqmm'],
    ['cm²', 'metric', 100, 'sqcm'],
    ['m²', 'metric', 1e6, 'sqm'],
    ['in²', 'us', INCH ** 2, 'sqin'],
  ],
  current: [
    ['A', 'both', 1, 'amp amps ampere amperes'],
    ['mA', 'both', 0.001, 'milliamp milliamps'],
  ],
  charge: [
    ['A·h', 'both', 1, 'ah amphour amphours amperehour amperehours'],
    ['mA·h', 'both', 0.001, 'mah milliamphour milliamphours'],
  ],
  voltage: [
    ['V', 'both', 1, 'volt volts vdc'],
    ['mV', 'both', 0.001, 'millivolt millivolts'],
    ['kV', 'both', 1000, 'kilovolt kilovolts'],
  ],
  power: [
    ['W', 'both', 1, 'watt watts'],
    ['kW', 'both', 1000, 'kilowatt kilowatts'],
  ],
  resistance: [
    ['Ω', 'both', 1, 'ohm ohms'],
    ['mΩ', 'both', 0.001, 'milliohm milliohms'],
    ['kΩ', 'both', 1000, 'kohm kiloohm kiloohms'],
    ['MΩ', 'both', 1e6, 'megohm megohms'],
  ],
  percentage: [['%', 'both', 1, 'percent']],
};

const caseMatters = new Set(['Pa', 'MPa', 'mV', 'mA', 'mΩ', 'MΩ']);

function unit(dimension: Dimension, [name, system, factor, spellings]: Row): Unit {
  return {
    dimension,
    name,
    system,
    factor,
    offset: name === '°F' ? -160 / 9 : 0,
    spellings: spellings?.split(' ') ?? [],
    exactCase: caseMatters.has(name),
  };
}

/** Every unit that Baybook knows. */
export const units: readonly Unit[] = Object.entries(rows).flatMap(([dimension, list]) =>
  list.map((row) => unit(dimension as Dimension, row)),
);

/** A typed unit with its joints removed, so that `N·m`, `N m`, `N-m` and `N.m` are one. */
function unitKey(text: string): string {
  return text
    .replace(/²/g, '2')
    .replace(/³/g, '3')
    .replace(/[\s.\-·*×]/g, '');
}

/** The unit that a typed text means, preferring the wanted dimension; undefined where none does. */
export function findUnit(text: string, wanted: Dimension): Unit | undefined {
  const key = unitKey(text);
  const means = [...(byName.get(key) ?? []), ...(byLowerCase.get(key.toLowerCase()) ?? [])];
  const inOrder = means.sort((a, b) => units.indexOf(a) - units.indexOf(b));
  return inOrder.find((one) => one.dimension === wanted) ?? inOrder[0];
}

const byName = indexed((one) => [unitKey(one.name)]);
const byLowerCase = indexed((one) =>
  one.exactCase ? one.spellings : [...one.spellings, unitKey(one.name).toLowerCase()],
);

function indexed(keysOf: (unit: Unit) => readonly string[]): ReadonlyMap<string, readonly Unit[]> {
  const index = new Map<string, Unit[]>();
  for (const one of units) for (const key of keysOf(one)) index.set(key, [...(index.get(key) ?? []), one]);
  return index;
}

/** The unit with this printed name; throws for a name that is not in the table, which is our own fault. */
export function unitNamed(name: string): Unit {
  const found = units.find((one) => one.name === name);
  if (!found) throw new Error(`no unit is named ${name}`);
  return found;
}

/** How a dimension is named in a message, and a value to show as an example. */
export const dimensionWords: {
  readonly [D in Dimension]: { readonly noun: string; readonly example: string };
} = {
  length: { noun: 'a length', example: '25 mm' },
  mass: { noun: 'a mass', example: '12 kg' },
  volume: { noun: 'a volume', example: '50 ml' },
  time: { noun: 'a time', example: '5 min' },
  torque: { noun: 'a torque', example: '25 N·m' },
  force: { noun: 'a force', example: '200 N' },
  pressure: { noun: 'a pressure', example: '220 kPa' },
  angle: { noun: 'an angle', example: '90°' },
  temperature: { noun: 'a temperature', example: '20 °C' },
  area: { noun: 'an area', example: '2.5 mm²' },
  current: { noun: 'a current', example: '10 A' },
  charge: { noun: 'a charge', example: '75 A·h' },
  voltage: { noun: 'a voltage', example: '12 V' },
  power: { noun: 'a power', example: '55 W' },
  resistance: { noun: 'a resistance', example: '0.5 Ω' },
  percentage: { noun: 'a percentage', example: '80 %' },
};

/**
 * The least and the most that a guide can mean, in base units. Common practice, no source: wide enough for
 * any vehicle, narrow enough to catch a slipped digit or a wrong unit.
 */
export const limits: { readonly [D in Dimension]: readonly [least: number, most: number] } = {
  length: [-1e6, 1e6],
  mass: [0, 1e5],
  volume: [0, 1e4],
  time: [0, 525_600],
  torque: [0, 1e4],
  force: [0, 1e7],
  pressure: [-101.325, 1e7],
  angle: [-3600, 3600],
  temperature: [-100, 1500],
  area: [0, 1e9],
  current: [0, 1e4],
  charge: [0, 1e5],
  voltage: [-1e4, 1e4],
  power: [0, 1e6],
  resistance: [0, 1e9],
  percentage: [0, 1000],
};
