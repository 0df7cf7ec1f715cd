import type { Side } from '../../model/item.ts';

/** Whether two things can touch: what has no side touches both. */
export function sharesSide(a: Side | null, b: Side | null): boolean {
  return a === null || b === null || a === 'each' || b === 'each' || a === b;
}
