import { area, type Contour, contourBounds } from '../../geometry/contour.ts';
import { boundsMeet, type Point } from '../../geometry/point.ts';
import { MIRROR, type Move, moveContour, movePoint, translation } from '../../geometry/transform.ts';
import { liesWithin } from '../../geometry/within.ts';
import type { CutTemplate } from '../../model/cut-template.ts';
import type { Span } from '../../source/span.ts';
import { resolve } from './resolve.ts';
import type { Resolved, ResolvedCut } from './resolved.ts';

/** A cut where it lies on its panel: measured from the datums, seen from outside, on one side of the vehicle. */
export interface PanelCut extends Pick<ResolvedCut, 'kind' | 'mark' | 'label' | 'area' | 'at'> {
  readonly side: 'left' | 'right' | null;
  /** Corners of an outline, the centre of a hole, the centres of a slot's ends. */
  readonly points: readonly Point[];
}

/** What one template says of its panel on one side of the vehicle, all in the panel's own places. */
export interface PanelSide {
  readonly side: 'left' | 'right' | null;
  readonly cuts: readonly PanelCut[];
  readonly keepOuts: readonly { readonly label: string; readonly area: Contour; readonly at: Span }[];
  /** The panel's own outline, where the template carries it. */
  readonly panel: Contour | null;
}

/**
 * What two templates must share for their places to be compared: the panel, both datums by their words, and
 * the curve. `null` where a template lacks one of the first three.
 */
export function panelFrame({ panel, datums, curveRadius, curveAxis }: CutTemplate): string | null {
  const [across, up] = ['vertical', 'horizontal'].map((axis) => datums.find((one) => one.axis === axis));
  if (!panel || !across || !up) return null;
  const words = [across, up].map(({ label }) => label.trim().toLowerCase());
  return JSON.stringify([panel.value, ...words, curveRadius && [curveRadius.value, curveAxis]]);
}

/** A template on its panel; one for each side is mirrored for the right. */
export function sidesOnPanel(
  { side: made, face }: Pick<CutTemplate, 'side' | 'face'>,
  { origin, cuts, keepOuts, panel }: Resolved,
): readonly PanelSide[] {
  const home = translation(-origin.x, -origin.y);
  const sides = made === 'each' ? (['left', 'right'] as const) : [made];
  return sides.map((side) => {
    const turned = (face === 'inside') !== (made === 'each' && side === 'right');
    const moves: readonly Move[] = turned ? [home, MIRROR] : [home];
    const placed = (contour: Contour): Contour => moves.reduce(moveContour, contour);
    return {
      side,
      cuts: cuts.map(({ kind, mark, label, at, area: flat, stations }) => ({
        kind,
        mark,
        label,
        at,
        side,
        area: placed(flat),
        points: stations.map(({ point }) => moves.reduce(movePoint, point)),
      })),
      keepOuts: keepOuts.map((one) => ({ ...one, area: placed(one.area) })),
      panel: panel && placed(panel),
    };
  });
}

/** The cuts of a template on its panel, on every side that it is made for. */
export function cutsOnPanel(template: CutTemplate): readonly PanelCut[] {
  return sidesOnPanel(template, resolve(template).resolved).flatMap(({ cuts }) => cuts);
}

/** Whether two things lie on sides of the vehicle that have nothing to do with each other. */
export function onOtherSides(a: Pick<PanelCut, 'side'>, b: Pick<PanelCut, 'side'>): boolean {
  return a.side !== null && b.side !== null && a.side !== b.side;
}

/**
 * Whether a cut would be made in what another has taken away. One that is larger than the other opens it up,
 * as a hole is bored over its pilot hole; one that runs out over the other's line is told as a clash of the two.
 */
export function isCutAway(later: PanelCut, removed: PanelCut): boolean {
  if (onOtherSides(later, removed) || area(later.area) > area(removed.area) + 1e-6) return false;
  if (!boundsMeet(contourBounds(later.area), contourBounds(removed.area))) return false;
  return later.points.length > 0 && liesWithin(later.area, removed.area);
}
