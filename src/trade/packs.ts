import type { Quantity } from '../units/quantity.ts';

/**
 * How many whole packages hold so much of a product; `null` where the two are of different kinds, or nothing is in a
 * package. A hair over a whole number, as the arithmetic of decimals leaves it, asks for no other package.
 */
export function packsFor(wanted: Quantity, pack: Quantity): number | null {
  if (pack.dimension !== wanted.dimension || pack.base <= 0) return null;
  return Math.max(1, Math.ceil((wanted.base / pack.base) * (1 - 1e-9)));
}
