import type { Bounds } from '../../geometry/point.ts';
import { OVERLAP } from './layout.ts';
import type { SheetWindow } from './tiling.ts';

/** Where two sheets overlap: one is trimmed at the middle of the overlap and laid on the other. */
export interface Join {
  /** The sheet that is trimmed, and the one that it is laid on, by their places in the list. */
  readonly trimmed: number;
  readonly under: number;
  /** On which edge of each the other lies. */
  readonly edge: { readonly trimmed: Edge; readonly under: Edge };
  /** An upright seam stands at an x and runs along y. */
  readonly upright: boolean;
  readonly at: number;
  readonly from: number;
  readonly to: number;
}

export type Edge = 'left' | 'right' | 'above' | 'below';

/** The seams between windows. Windows that share a corner alone are not joined there. */
export function joinsOf(windows: readonly SheetWindow[]): Join[] {
  return windows.flatMap(({ at: a }, i) =>
    windows.flatMap(({ at: b }, j): Join[] => {
      if (j <= i) return [];
      const [left, right] = [Math.max(a.minX, b.minX), Math.min(a.maxX, b.maxX)];
      const [low, high] = [Math.max(a.minY, b.minY), Math.min(a.maxY, b.maxY)];
      const [wide, tall] = [right - left, high - low];
      if (Math.min(wide, tall) < OVERLAP - 0.5 || Math.max(wide, tall) < OVERLAP + 1) return [];
      const upright = wide < tall;
      // First the one at the left or above: it is trimmed where both could be, at an edge that lies in the overlap.
      const first = upright ? a.minX <= b.minX : a.maxY >= b.maxY;
      const [lead, other] = first ? [i, j] : [j, i];
      const [leadAt, otherAt] = first ? [a, b] : [b, a];
      const along = (w: Bounds): number => (upright ? w.maxY - w.minY : w.maxX - w.minX);
      const leads = along(leadAt) <= along(otherAt) + 0.5;
      const [leadEdge, otherEdge]: [Edge, Edge] = upright ? ['right', 'left'] : ['below', 'above'];
      return [
        {
          trimmed: leads ? lead : other,
          under: leads ? other : lead,
          edge: { trimmed: leads ? leadEdge : otherEdge, under: leads ? otherEdge : leadEdge },
          upright,
          at: upright ? (left + right) / 2 : (low + high) / 2,
          from: upright ? low : left,
          to: upright ? high : right,
        },
      ];
    }),
  );
}

/** What is left of each window that no neighbour shows: its seams are its edges. */
export function trimmedWindows(windows: readonly SheetWindow[], joins: readonly Join[]): Bounds[] {
  return windows.map(({ at }, i) => {
    const seams = joins.flatMap((join) => {
      if (join.trimmed === i) return [{ edge: join.edge.trimmed, at: join.at }];
      return join.under === i ? [{ edge: join.edge.under, at: join.at }] : [];
    });
    const on = (edge: Edge): number[] => seams.filter((s) => s.edge === edge).map((s) => s.at);
    return {
      minX: Math.max(at.minX, ...on('left')),
      maxX: Math.min(at.maxX, ...on('right')),
      minY: Math.max(at.minY, ...on('below')),
      maxY: Math.min(at.maxY, ...on('above')),
    };
  });
}
