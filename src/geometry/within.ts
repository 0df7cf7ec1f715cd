import type { Contour } from './contour.ts';
import { distanceToContour } from './distance.ts';
import { isInside } from './inside.ts';
import { lengthOf, pointAt } from './segment.ts';

/** How closely a line is looked at, mm. */
const STEP = 1;

/** A line that runs along the other's this near lies on it, mm. */
const ALONG = 0.01;

/** Whether a closed area lies wholly in another; what shares its line, or is the same, does. */
export function liesWithin(inner: Contour, outer: Contour): boolean {
  return inner.segments.every((segment) => {
    const steps = Math.max(4, Math.ceil(lengthOf(segment) / STEP));
    return Array.from({ length: steps }, (_, i) => pointAt(segment, i / steps)).every(
      (point) => isInside(outer, point) || distanceToContour(outer, point) <= ALONG,
    );
  });
}
