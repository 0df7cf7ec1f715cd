import type { Dimension } from './quantity.ts';
import { dimensionWords, units } from './table.ts';

/** What can be wrong with a typed quantity. */
type QuantityFault =
  | 'empty'
  | 'no-unit'
  | 'unknown-unit'
  | 'wrong-kind'
  | 'decimal-comma'
  | 'not-a-number'
  | 'out-of-range'
  | 'wrong-way-round';

/** A typed quantity that cannot be used: what was found, what was expected, and the likely mend. */
export interface QuantityProblem {
  readonly ok: false;
  readonly problem: QuantityFault;
  /** Plain English, without a closing full stop. */
  readonly message: string;
  /** Text to put in the place of the whole value, where there is one likely meaning. */
  readonly suggestion?: string;
}

/** Makes a problem. */
export function problem(fault: QuantityFault, message: string, suggestion?: string): QuantityProblem {
  return { ok: false, problem: fault, message, ...(suggestion === undefined ? {} : { suggestion }) };
}

/** "a torque was expected, for example "25 N·m"". */
export function expected(dimension: Dimension): string {
  const { noun, example } = dimensionWords[dimension];
  return `${noun} was expected, for example "${example}"`;
}

/** The printed units of a dimension as a phrase: "mm, cm, m, µm, in or ft". */
export function unitList(dimension: Dimension): string {
  const names = units.filter((unit) => unit.dimension === dimension).map((unit) => unit.name);
  return names.length < 2 ? names.join('') : `${names.slice(0, -1).join(', ')} or ${names.at(-1)}`;
}
