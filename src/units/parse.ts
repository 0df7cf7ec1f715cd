import { inOneForm, readNumber, type WrittenNumber } from './number.ts';
import { expected, problem, type QuantityProblem, unitList } from './problem.ts';
import { base, type Dimension, type Quantity, type QuantityRange } from './quantity.ts';
import { dimensionWords, findUnit, limits, type Unit } from './table.ts';

/** A quantity, or what is wrong with the text. */
type ParsedQuantity<D extends Dimension> =
  | { readonly ok: true; readonly quantity: Quantity<D> }
  | QuantityProblem;

/** A range, or what is wrong with the text. */
type ParsedRange<D extends Dimension> =
  | { readonly ok: true; readonly range: QuantityRange<D> }
  | QuantityProblem;

interface ParseOptions {
  /**
   * Whether a value below zero is meant: a coordinate, say. By default only temperature, angle, voltage and
   * pressure (a vacuum) may be negative.
   */
  readonly negative?: boolean;
}

const mayBeNegative: ReadonlySet<Dimension> = new Set(['temperature', 'angle', 'voltage', 'pressure']);

/**
 * Reads one quantity as an author types it: `25 N·m`, `18 ft-lb`, `1 1/4 in`, `1¼"`, `1 h 30 min`. The value
 * must carry a unit of the wanted dimension; a decimal comma, a bare number and an absurd value are refused.
 */
export function parseQuantity<D extends Dimension>(
  text: string,
  dimension: D,
  options: ParseOptions = {},
): ParsedQuantity<D> {
  const plain = inOneForm(text);
  const fault = faultOfText(plain, dimension);
  if (fault) return fault;
  const number = readNumber(plain);
  if (!number) return notANumber(plain, dimension);
  if (number.rest === '') {
    return problem('no-unit', `"${plain}" has no unit; ${expected(dimension)}`);
  }
  const clock = dimension === 'time' ? hoursAndMinutes(plain) : undefined;
  if (clock !== undefined) return within(clock as Quantity<D>, plain, options);
  const unit = findUnit(number.rest, dimension);
  if (!unit) return unknownUnit(plain, number, dimension);
  if (unit.dimension !== dimension) {
    const found = dimensionWords[unit.dimension].noun;
    return problem('wrong-kind', `"${plain}" is ${found}; ${expected(dimension)}`);
  }
  return within(quantityIn(number, unit, dimension), plain, options);
}

/** Reads `10..60 N·m`, `10–60 N·m`, `10 to 60 N·m` or `45 min..1 h 30 min`; the least must come first. */
export function parseRange<D extends Dimension>(
  text: string,
  dimension: D,
  options: ParseOptions = {},
): ParsedRange<D> {
  const plain = inOneForm(text);
  const fault = faultOfText(plain, dimension);
  if (fault) return fault;
  const ends = splitRange(plain);
  if (!ends) {
    const { example } = dimensionWords[dimension];
    return problem(
      'not-a-number',
      `"${plain}" is not a range; write the least, two dots and the most, for example "0..${example}"`,
    );
  }
  const most = parseQuantity(ends[1], dimension, options);
  if (!most.ok) return most;
  const first = readNumber(ends[0])?.rest === '' ? `${ends[0]} ${most.quantity.unit}` : ends[0];
  const least = parseQuantity(first, dimension, options);
  if (!least.ok) return least;
  if (least.quantity.base > most.quantity.base) {
    return problem(
      'wrong-way-round',
      `the range "${plain}" runs from the greater value to the lesser; put the least first`,
    );
  }
  return { ok: true, range: { least: least.quantity, most: most.quantity } };
}

/** The two ends of a typed range; undefined where the text is not one. */
export function splitRange(plain: string): readonly [string, string] | undefined {
  const marked = /^(.+?)(?: ?(?:\.{2,3}|…|–|—) ?| to )(.+)$/.exec(plain);
  if (marked?.[1] && marked[2]) return [marked[1].trim(), marked[2].trim()];
  const hyphen = /^(\d+(?:\.\d+)?) ?- ?(\d+(?:\.\d+)?(?!\d*\/).*)$/.exec(plain);
  return hyphen?.[1] && hyphen[2] ? [hyphen[1], hyphen[2]] : undefined;
}

/** Characters. No quantity needs as many, and a bound keeps hostile text from being slow to read. */
const LONGEST = 100;

/** The faults that show before any number is read: nothing there, far too much, or a decimal comma. */
export function faultOfText(plain: string, dimension: Dimension): QuantityProblem | undefined {
  if (plain === '') return problem('empty', `the value is empty; ${expected(dimension)}`);
  if (plain.length > LONGEST) {
    return problem(
      'not-a-number',
      `"${plain.slice(0, 20)}…" is too long for a quantity; ${expected(dimension)}`,
    );
  }
  if (!/\d,\d/.test(plain)) return undefined;
  if (/(^|[^\d.])\d{1,3}(,\d{3})+(?!\d)/.test(plain)) {
    return problem(
      'decimal-comma',
      `the comma in "${plain}" can be read in two ways; write the number without a comma, and a point for the decimals`,
    );
  }
  const mended = plain.replace(/(\d),(?=\d)/g, '$1.');
  return problem(
    'decimal-comma',
    `"${plain}" has a decimal comma; write a decimal point`,
    /\d\.\d+\.\d/.test(mended) ? undefined : mended,
  );
}

function notANumber(plain: string, dimension: Dimension): QuantityProblem {
  return problem('not-a-number', `"${plain}" does not begin with a number; ${expected(dimension)}`);
}

function unknownUnit(plain: string, number: WrittenNumber, dimension: Dimension): QuantityProblem {
  if (/^[e/\d]/i.test(number.rest) && /^(e[+-]?)?[\d/]/i.test(number.rest)) {
    return problem('not-a-number', `"${plain}" is not written as a plain number; ${expected(dimension)}`);
  }
  const known = `${dimensionWords[dimension].noun} is written in ${unitList(dimension)}`;
  return problem(
    'unknown-unit',
    `"${number.rest}" in "${plain}" is not a unit that Baybook knows; ${known}, for example "${dimensionWords[dimension].example}"`,
  );
}

function hoursAndMinutes(plain: string): Quantity<'time'> | undefined {
  const clock = /^(\d+) ?(?:h|hr|hrs|hours?) ?(\d+) ?(?:min|mins|minutes?)?$/i.exec(plain);
  if (!clock) return undefined;
  const [hours, minutes] = [Number(clock[1]), Number(clock[2])];
  return {
    dimension: 'time',
    base: base(60 * hours + minutes),
    unit: 'min',
    written: `${hours} h ${minutes}`,
  };
}

function quantityIn<D extends Dimension>(number: WrittenNumber, unit: Unit, dimension: D): Quantity<D> {
  const value = base<D>(number.value * unit.factor + unit.offset);
  return { dimension, base: value, unit: unit.name, written: number.written };
}

function within<D extends Dimension>(
  quantity: Quantity<D>,
  plain: string,
  options: ParseOptions,
): ParsedQuantity<D> {
  const { dimension } = quantity;
  const [least, most] = limits[dimension];
  const negative = options.negative ?? mayBeNegative.has(dimension);
  if (quantity.base < 0 && !negative) {
    return problem(
      'out-of-range',
      `"${plain}" is below zero, which ${dimensionWords[dimension].noun} here cannot be; ${expected(dimension)}`,
    );
  }
  if (quantity.base < least || quantity.base > most) {
    return problem(
      'out-of-range',
      `"${plain}" is beyond anything on a vehicle; check the number and its unit, ${expected(dimension)}`,
    );
  }
  return { ok: true, quantity };
}
