import { inchFraction } from './fraction.ts';
import { base, type Dimension, type Quantity, type QuantityRange } from './quantity.ts';
import { type Unit, unitNamed } from './table.ts';

/** Keeps a number and its unit, and the words of a unit, on one line. */
const NO_BREAK = '\u00a0';

/** The value of a quantity in another unit of its dimension, named as printed (`lbf·ft`); unrounded. */
export function convert(quantity: Quantity, unit: string): number {
  const target = unitNamed(unit);
  if (target.dimension !== quantity.dimension) throw new Error(`${unit} is no unit of ${quantity.dimension}`);
  return (quantity.base - target.offset) / target.factor;
}

/** A computed quantity in a unit named as printed, written with three significant digits. */
export function quantityOf<D extends Dimension>(dimension: D, value: number, unit: string): Quantity<D> {
  const { factor, offset, dimension: actual } = unitNamed(unit);
  if (actual !== dimension) throw new Error(`${unit} is no unit of ${dimension}`);
  return { dimension, base: base<D>(value * factor + offset), unit, written: significant(value) };
}

/** A number with three significant digits, never in exponent form and without trailing zeros. */
export function significant(value: number): string {
  if (value === 0) return '0';
  const decimals = Math.max(0, 2 - Math.floor(Math.log10(Math.abs(value))));
  const fixed = value.toFixed(Math.min(decimals, 6));
  const short = fixed.includes('.') ? fixed.replace(/\.?0+$/, '') : fixed;
  return short === '-0' ? '0' : short;
}

/** `25 N·m`, `90°`: the number and the unit as the author wrote them, held together by a no-break space. */
export function formatQuantity(quantity: Quantity): string {
  return withUnit(quantity.written, quantity.unit);
}

/** The author's unit first and the other system in parentheses: `25 N·m (18.4 lbf·ft)`. */
export function formatBoth(quantity: Quantity): string {
  const other = counterpart(quantity);
  return other ? `${formatQuantity(quantity)} (${formatQuantity(other)})` : formatQuantity(quantity);
}

/** `10–60 N·m`; both units are printed where they differ. */
export function formatRange({ least, most }: QuantityRange): string {
  if (least.unit !== most.unit || least.unit === 'min' || least.written.startsWith('-')) {
    return `${formatQuantity(least)} to ${formatQuantity(most)}`;
  }
  return withUnit(`${least.written}–${most.written}`, most.unit);
}

/** A range in both systems: `10–60 N·m (7.38–44.3 lbf·ft)`; one unit serves both ends of the converted one. */
export function formatRangeBoth(range: QuantityRange): string {
  const other = rangeCounterpart(range);
  return other ? `${formatRange(range)} (${formatRange(other)})` : formatRange(range);
}

/** A range in the other system, both ends in one unit; undefined where one system serves all. */
function rangeCounterpart(range: QuantityRange): QuantityRange | undefined {
  const most = counterpart(range.most);
  return most ? { least: inSystemUnit(range.least, unitNamed(most.unit)), most } : undefined;
}

/**
 * What a reading should be, in both systems: `0–2 mm (0–5/64 in)`. Whoever measures in inches has a rule of 64ths, so
 * that a small length is given in them too, rounded into the range and never out of it.
 */
export function formatReading(range: QuantityRange): string {
  const other = readingCounterpart(range);
  return other ? `${formatRange(range)} (${formatRange(other)})` : formatRange(range);
}

/** The range of a reading in the other system, both ends in one unit; undefined where one system serves all. */
export function readingCounterpart(range: QuantityRange): QuantityRange | undefined {
  const other = rangeCounterpart(range);
  if (other?.most.unit !== 'in' || Math.abs(other.most.base) < SIXTY_FOURTH) return other;
  const small = (end: Quantity) => end.base >= 0 && end.base < FRACTION_FROM;
  const [from, to] = [
    Math.ceil(other.least.base / SIXTY_FOURTH) * SIXTY_FOURTH,
    Math.floor(other.most.base / SIXTY_FOURTH) * SIXTY_FOURTH,
  ];
  // A range narrower than a rule shows is read otherwise, in decimals.
  if (small(other.most) && from >= to) return other;
  const inside = (end: Quantity, length: number): Quantity =>
    small(end) ? { ...end, written: inchFraction(base<'length'>(length)).text } : end;
  return { least: inside(other.least, from), most: inside(other.most, to) };
}

/** In mm. */
const SIXTY_FOURTH = 25.4 / 64;

/** The quantity in the other system, rounded to what a shop reads; undefined where one system serves all. */
export function counterpart<D extends Dimension>(quantity: Quantity<D>): Quantity<D> | undefined {
  const name = otherUnit(quantity);
  return name === undefined ? undefined : inSystemUnit(quantity, unitNamed(name));
}

function inSystemUnit<D extends Dimension>(quantity: Quantity<D>, unit: Unit): Quantity<D> {
  const value = (quantity.base - unit.offset) / unit.factor;
  return { ...quantity, unit: unit.name, written: writtenIn(quantity, unit, value) };
}

function writtenIn(quantity: Quantity, unit: Unit, value: number): string {
  if (quantity.dimension === 'temperature') return String(Math.round(value) || 0);
  if (unit.name === 'in' && Math.abs(quantity.base) >= FRACTION_FROM) {
    return inchFraction(base<'length'>(quantity.base), roundingOf(quantity)).text;
  }
  return significant(value);
}

/** Below this, in mm, a 64th of an inch is too coarse and decimals of an inch are printed. */
const FRACTION_FROM = 3;

/** How far a conversion may stray, in mm: half the last digit that the author wrote, and at most 0.6 %. */
function roundingOf({ written, base: value, unit }: Quantity): number {
  const decimals = /\.(\d+)$/.exec(written)?.[1]?.length ?? 0;
  const halfDigit = (unitNamed(unit).factor * 10 ** -decimals) / 2;
  return Math.min(halfDigit, 0.006 * Math.abs(value));
}

/** Lengths from here, in mm, are read in feet rather than in inches. */
const LONG = 3000;

/** Torques below this, in N·m, are read in lbf·in on a small wrench (common practice, no source). */
const SMALL_TORQUE = 15;

function otherUnit({ unit, base: value, dimension }: Quantity): string | undefined {
  const size = Math.abs(value);
  switch (dimension) {
    case 'length':
      if (unit === 'in') return 'mm';
      if (unit === 'ft') return 'm';
      return size >= (unit === 'm' ? 1000 : LONG) ? 'ft' : 'in';
    case 'torque':
      if (unit.startsWith('lbf')) return 'N·m';
      return size < SMALL_TORQUE ? 'lbf·in' : 'lbf·ft';
    case 'force':
      if (unit !== 'lbf') return 'lbf';
      return size < 1000 ? 'N' : 'kN';
    default:
      return fixedCounterparts[unit];
  }
}

const fixedCounterparts: { readonly [unit: string]: string } = {
  kg: 'lb',
  g: 'oz',
  t: 'lb',
  lb: 'kg',
  oz: 'g',
  l: 'US qt',
  ml: 'US fl oz',
  'US gal': 'l',
  'US qt': 'l',
  'US pt': 'l',
  'US fl oz': 'ml',
  kPa: 'psi',
  Pa: 'psi',
  MPa: 'psi',
  bar: 'psi',
  psi: 'kPa',
  '°C': '°F',
  '°F': '°C',
  'mm²': 'in²',
  'cm²': 'in²',
  'm²': 'in²',
  'in²': 'cm²',
};

function withUnit(written: string, unit: string): string {
  const number = written.replace(/ /g, NO_BREAK).replace(/^-/, '\u2212');
  return unit === '°' ? `${number}°` : `${number}${NO_BREAK}${unit.replaceAll(' ', NO_BREAK)}`;
}
