import { readNumber } from '../../../src/units/number.ts';
import { parseQuantity } from '../../../src/units/parse.ts';
import type { Dimension } from '../../../src/units/quantity.ts';

/**
 * What someone has typed beside a gauge, in the base unit of its dimension; `null` for what is none. A decimal
 * comma is taken as it is meant.
 *
 * @param unitOf the unit of a bare number
 */
export function readMeasured(
  text: string,
  dimension: Dimension,
  unitOf: (bare: number) => string,
): number | null {
  const typed = text.trim().replace(',', '.');
  const bare = readNumber(typed);
  const parsed = parseQuantity(bare?.rest === '' ? `${typed} ${unitOf(bare.value)}` : typed, dimension);
  return parsed.ok ? parsed.quantity.base : null;
}
