import { type CrowfootUse, listed, settingInLine } from '../../job/index.ts';
import type { Measure } from '../../model/item.ts';
import { formatQuantity, formatReading, readingCounterpart } from '../../units/format.ts';
import { parseQuantity } from '../../units/parse.ts';
import type { Quantity, QuantityRange } from '../../units/quantity.ts';
import { formatTorque, statedTorques, type TorqueSpec } from '../../units/torque.ts';

/** What the page's script holds a typed value against: a quantity, or words. */
export type TypedCheck = QuantityCheck | WordsCheck;

/** Words, of which what is typed must be one. */
interface WordsCheck {
  readonly words: readonly string[];
  readonly otherwise: string;
}

interface QuantityCheck {
  readonly words: null;
  readonly dimension: string;
  /** A bare number is taken to be in it. */
  readonly unit: string;
  /** Ends in the base unit of the dimension; a value must lie between those of one pair: `23.5..26.5 42.3..47.7`. */
  readonly ranges: string;
  /** What is said of a value that lies in none of them. */
  readonly otherwise: string;
}

/**
 * A reading must lie in its range as either system prints it: what is printed is rounded, and whoever measures in
 * inches goes by the inches that are printed.
 */
export function readingCheck({ expect, words }: Pick<Measure, 'expect' | 'words'>): TypedCheck | null {
  if (words.length > 0) {
    const said = listed(words, 'or');
    return { words, otherwise: `Not “${said}”. Find the cause before you go on.` };
  }
  return expect && rangeCheck(expect.value);
}

function rangeCheck(range: QuantityRange): TypedCheck {
  const { dimension, unit } = range.most;
  const both = [range, readingCounterpart(range) ?? range];
  const least = Math.min(...both.map((one) => printedBase(one.least)));
  const most = Math.max(...both.map((one) => printedBase(one.most)));
  return {
    words: null,
    dimension,
    unit,
    ranges: `${least}..${most}`,
    otherwise: `Outside ${formatReading(range)}. Measure again. If it stays so, find the cause before you go on.`,
  };
}

function printedBase(quantity: Quantity): number {
  const parsed = parseQuantity(formatQuantity(quantity), quantity.dimension, { negative: true });
  return parsed.ok ? parsed.quantity.base : quantity.base;
}

/** What a torque wrench may be off by at the most (ISO 6789-1: 6 % up to 10 N·m, 4 % above; from memory). */
const DEVIATION = 0.06;

/**
 * A torque that was set must be one of those stated, or with a crowfoot lie between the setting in line with it
 * and the stated one; `null` where only an angle is stated.
 */
export function torqueCheck(passes: TorqueSpec, crowfoot: CrowfootUse | null): TypedCheck | null {
  const stated = statedTorques(passes);
  const [first] = stated;
  if (!first) return null;
  const ranges = stated.map((value) => {
    const least = (crowfoot && settingInLine(value, crowfoot)) ?? value;
    return `${least.base * (1 - DEVIATION)}..${value.base * (1 + DEVIATION)}`;
  });
  return {
    words: null,
    dimension: 'torque',
    unit: first.unit,
    ranges: ranges.join(' '),
    otherwise: `Not the stated torque, ${formatTorque(passes)}. Look what the wrench was set to before you go on.`,
  };
}
