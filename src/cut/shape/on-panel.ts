import { area, type Contour } from '../../geometry/contour.ts';
import { isInside } from '../../geometry/inside.ts';
import type { Point } from '../../geometry/point.ts';
import { MIRROR, moveContour, movePoint, translation } from '../../geometry/transform.ts';
import type { CutTemplate } from '../../model/cut-template.ts';
import type { Span } from '../../source/span.ts';
import { resolve } from './resolve.ts';

/** A cut where it lies on its panel: measured from the datums, seen from outside, on one side of the vehicle. */
export interface PanelCut {
  /** Where the feature is declared that makes it. */
  readonly at: Span;
  readonly side: 'left' | 'right' | null;
  readonly area: Contour;
  /** Corners of an outline, the centre of a hole, the centres of a slot's ends. */
  readonly points: readonly Point[];
}

/**
 * What two templates must share for their places to be compared: the panel, both datums by their words, and
 * the curve. `null` where a template lacks one of the first three.
 */
export function panelFrame({ panel, datums, curveRadius }: CutTemplate): string | null {
  const [across, up] = ['vertical', 'horizontal'].map((axis) => datums.find((one) => one.axis === axis));
  if (!panel || !across || !up) return null;
  const words = [across, up].map(({ label }) => label.trim().toLowerCase());
  return JSON.stringify([panel.value, ...words, curveRadius?.value ?? null]);
}

/** The cuts of a template on its panel; one for each side is mirrored for the right. */
export function cutsOnPanel(template: CutTemplate): readonly PanelCut[] {
  const { origin, cuts } = resolve(template).resolved;
  const home = translation(-origin.x, -origin.y);
  const sides = template.side === 'each' ? (['left', 'right'] as const) : [template.side];
  return sides.flatMap((side) => {
    const turned = (template.face === 'inside') !== (template.side === 'each' && side === 'right');
    return cuts.map(({ at, area: flat, stations }): PanelCut => {
      const moved = moveContour(flat, home);
      const points = stations.map(({ point }) => movePoint(point, home));
      return turned
        ? { at, side, area: moveContour(moved, MIRROR), points: points.map((p) => movePoint(p, MIRROR)) }
        : { at, side, area: moved, points };
    });
  });
}

/**
 * Whether a cut would be made in what another has taken away. One that is larger than the other opens it up,
 * as a hole is bored over its pilot hole.
 */
export function isCutAway(later: PanelCut, removed: PanelCut): boolean {
  const apart = later.side !== null && removed.side !== null && later.side !== removed.side;
  if (apart || area(later.area) > area(removed.area) + 1e-6) return false;
  return later.points.length > 0 && later.points.every((point) => isInside(removed.area, point));
}
