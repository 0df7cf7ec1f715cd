import type { Report } from '../../diagnostics/report.ts';
import { finding } from '../../diagnostics/rule-card.ts';
import { type Contour, contourBounds } from '../../geometry/contour.ts';
import type { Curve } from '../../geometry/curved.ts';
import { boundsOf } from '../../geometry/point.ts';
import type { CutTemplate } from '../../model/cut-template.ts';
import type { Span } from '../../source/span.ts';
import { mm } from './resolved.ts';
import { CURVE_TOO_TIGHT } from './rules.ts';

/**
 * The share of its radius up to which a straight projection can be laid on a curve. There, a millimetre of the
 * projection is three on the panel; at the radius itself the panel is seen on edge, and nothing can be told.
 */
const MOST_OF_RADIUS = 0.95;

/** Whether a curve is too tight for what is drawn on it; reported once, at its radius, with the least that fits. */
export function isTooTight(
  { keepOuts, curveRadius, at }: CutTemplate,
  shapes: readonly { readonly label: string; readonly area: Contour; readonly at: Span }[],
  { radius, crown, axis }: Curve,
  report: Report,
): boolean {
  const drawn = [
    ...shapes.map(({ label, area, at }) => ({ label, at, ...contourBounds(area) })),
    ...keepOuts.map(({ label, points, at }) => ({ label, at, ...boundsOf(points) })),
  ].map((one) => {
    const ends = axis === 'vertical' ? [one.minX, one.maxX] : [one.minY, one.maxY];
    return { ...one, reach: Math.max(...ends.map((end) => Math.abs(end - crown))) };
  });
  const furthest = drawn.reduce((far, one) => (one.reach > (far?.reach ?? 0) ? one : far), drawn[0]);
  if (!furthest || furthest.reach <= radius * MOST_OF_RADIUS) return false;
  const least = Math.ceil(furthest.reach / MOST_OF_RADIUS);
  const message = `a curve of ${mm(radius)} mm is too tight for this template: “${furthest.label}” reaches ${mm(furthest.reach)} mm from the ${axis === 'vertical' ? 'upright' : 'level'} datum, which asks for a radius of at least ${least} mm`;
  const notes = [{ message: 'this reaches the furthest', at: furthest.at }];
  report(finding(CURVE_TOO_TIGHT, curveRadius?.at ?? at, message, { notes }));
  return true;
}
