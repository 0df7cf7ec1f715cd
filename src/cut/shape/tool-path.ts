import type { Contour } from '../../geometry/contour.ts';
import { offset } from '../../geometry/offset.ts';
import { carryOn, trimAtEdge } from '../../geometry/open-edge.ts';
import { add, distanceBetween, midpoint, scale, subtract, unit } from '../../geometry/point.ts';
import { type Line, line } from '../../geometry/segment.ts';

/** How far past the panel's edge the rim of the cutter runs before it is lifted, mm. */
const RUN_OFF = 1;

/**
 * Where the middle of a round cutter runs so that it takes away the waste up to the line and no more; `null` where
 * the waste has no room for it. A closed path begins in the middle of its longest straight side, where a plunge
 * leaves the least mark; one that is open at the panel's edge begins and ends beyond it, in the air.
 */
export function toolPathOf(
  { area, cut, edge }: { readonly area: Contour; readonly cut: Contour; readonly edge: Line | null },
  diameter: number,
): Contour | null {
  const radius = diameter / 2;
  if (radius <= 0) return null;
  if (!edge) {
    const [path, ...others] = offset(area, -radius) ?? [];
    return path && others.length === 0 ? fromLongestSide(path) : null;
  }
  // Beyond the edge the waste is carried on, and the path is cut off there: it leaves no ears at the edge.
  const beyond = radius + RUN_OFF;
  const [path, ...others] =
    offset(carryOn({ closed: area, cut, edge }, beyond + radius + RUN_OFF), -radius) ?? [];
  if (!path || others.length > 0) return null;
  const along = unit(subtract(edge.to, edge.from));
  const out = scale({ x: along.y, y: -along.x }, beyond);
  return trimAtEdge(path, line(add(edge.from, out), add(edge.to, out)));
}

/** The same closed path, begun in the middle of its longest straight side; one of arcs alone stays as it is. */
function fromLongestSide(path: Contour): Contour {
  const { segments } = path;
  const longest = segments.reduce((best, side, i) => {
    const known = segments[best];
    const length = (one: typeof side | undefined): number =>
      one?.kind === 'line' ? distanceBetween(one.from, one.to) : 0;
    return length(side) > length(known) + 1e-9 ? i : best;
  }, 0);
  const side = segments[longest];
  if (side?.kind !== 'line') return path;
  const start = midpoint(side.from, side.to);
  const rest = [...segments.slice(longest + 1), ...segments.slice(0, longest)];
  return { closed: true, segments: [line(start, side.to), ...rest, line(side.from, start)] };
}
