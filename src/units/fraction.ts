import { base, type Millimetres } from './quantity.ts';

const INCH = 25.4;

/** A length as a rule shows it: whole inches and a reduced fraction, at most 64ths. */
interface InchFraction {
  /** `2 3/8`, `25/64`, `3`, `-1/2`. */
  readonly text: string;
  /** What the fraction is too long (positive) or too short, in mm. */
  readonly error: Millimetres;
}

/**
 * The coarsest fraction of an inch within `tolerance` (mm), or the nearest 64th where none is. A 64th is the
 * finest that a shop rule shows, so the error is never more than 0.2 mm beyond the tolerance asked for.
 */
export function inchFraction(length: Millimetres, tolerance = 0): InchFraction {
  let best = nearestFraction(length, 1);
  for (const denominator of [2, 4, 8, 16, 32, 64]) {
    if (Math.abs(best.error) <= tolerance) return best;
    best = nearestFraction(length, denominator);
  }
  return best;
}

/** The nearest fraction with this denominator (a power of two), reduced. */
export function nearestFraction(length: Millimetres, denominator: number): InchFraction {
  const parts = Math.round((Math.abs(length) / INCH) * denominator);
  const sign = length < 0 && parts > 0 ? '-' : '';
  const whole = Math.floor(parts / denominator);
  const error = base<'length'>((parts / denominator) * INCH - Math.abs(length));
  return { text: sign + mixedText(whole, parts % denominator, denominator), error };
}

function mixedText(whole: number, top: number, bottom: number): string {
  if (top === 0) return String(whole);
  if (top % 2 === 0) return mixedText(whole, top / 2, bottom / 2);
  return whole === 0 ? `${top}/${bottom}` : `${whole} ${top}/${bottom}`;
}
