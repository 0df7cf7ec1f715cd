import type { Estimate } from '../units/estimate.ts';
import { base, type Minutes } from '../units/quantity.ts';

/** The expected time of work and how far it may stray, in minutes. */
export interface Expectation {
  readonly mean: Minutes;
  /** One standard deviation. */
  readonly spread: Minutes;
}

/** PERT: mean (a + 4m + b)/6, standard deviation (b − a)/6. */
export function expectation({ least, likely, most }: Estimate): Expectation {
  return { mean: base((least + 4 * likely + most) / 6), spread: base((most - least) / 6) };
}

/** Work done one after the other: means add, and so do the squares of the spreads (independent steps). */
export function inSeries(estimates: readonly Estimate[]): Expectation {
  const all = estimates.map(expectation);
  const mean = all.reduce((sum, one) => sum + one.mean, 0);
  const variance = all.reduce((sum, one) => sum + one.spread ** 2, 0);
  return { mean: base(mean), spread: base(Math.sqrt(variance)) };
}

/** Sums least, likely and most each for itself: bounds of the total, not an interval of any likelihood. */
export function addEstimates(estimates: readonly Estimate[]): Estimate {
  const sum = (part: keyof Estimate): Minutes => base(estimates.reduce((total, one) => total + one[part], 0));
  return { least: sum('least'), likely: sum('likely'), most: sum('most') };
}

/**
 * Minutes as tenths of an hour, the trade's unit of labour: all minutes are summed first and rounded once, half
 * upwards, so that ten jobs of 4 min are 0.7 h and not 1.0 h.
 */
export function tenthsOfAnHour(minutes: readonly Minutes[]): number {
  const total = minutes.reduce((sum, one) => sum + one, 0);
  // A billionth forgives binary fractions such as 0.1 + 0.2 just below a half.
  return Math.floor(total / 6 + 0.5 + 1e-9) / 10;
}

/** `1.4 h`: labour as it is billed. */
export function formatLabour(hours: number): string {
  return `${hours.toFixed(1)}\u00a0h`;
}
