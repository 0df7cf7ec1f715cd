import { chain } from './chain.ts';
import { type Contour, contourBounds, counterClockwise } from './contour.ts';
import { meetings } from './crossings.ts';
import { add, cross, dot, type Point, scale, subtract, unit } from './point.ts';
import {
  directionAt,
  endOf,
  type Line,
  lengthOf,
  line,
  pieceOf,
  pointAt,
  type Segment,
  startOf,
} from './segment.ts';

/** The side of a drawing. */
type Side = 'bottom' | 'top' | 'left' | 'right';

/** An outline of which one side lies on the panel's own edge and is not cut. */
export interface OpenOutline {
  /** The whole area that is cut away, closed along the edge. */
  readonly closed: Contour;
  /** What is really cut, from edge to edge. */
  readonly cut: Contour;
  /** The side that lies on the panel's edge. */
  readonly edge: Line;
}

/** A side steeper than 15° towards the edge is a flank of the cut, not the panel's edge. */
const STEEPEST = Math.sin(Math.PI / 12);

/**
 * Finds the straight side of a closed contour that lies furthest towards an edge, and takes it out of the
 * cut. `null` where no straight side is there.
 */
export function openAt(contour: Contour, side: Side): OpenOutline | null {
  const closed = counterClockwise(contour);
  const towards = outward(side);
  const reach = (p: Point): number => p.x * towards.x + p.y * towards.y;
  const b = contourBounds(closed);
  const furthest = Math.max(reach({ x: b.minX, y: b.minY }), reach({ x: b.maxX, y: b.maxY }));
  let best = -1;
  closed.segments.forEach((segment, i) => {
    if (segment.kind !== 'line' || Math.abs(dot(directionAt(segment, 0), towards)) > STEEPEST) return;
    const known = closed.segments[best];
    if (!known || reach(pointAt(segment, 0.5)) > reach(pointAt(known, 0.5)) + 1e-9) best = i;
  });
  const edge = closed.segments[best];
  if (edge?.kind !== 'line') return null;
  // The side must be what lies furthest out: a notch cannot run on beyond the edge it opens at.
  if (Math.max(reach(edge.from), reach(edge.to)) < furthest - 1e-6) return null;
  const cut = [...closed.segments.slice(best + 1), ...closed.segments.slice(0, best)];
  return { closed, edge, cut: { closed: false, segments: cut } };
}

function outward(side: Side): Point {
  if (side === 'bottom') return { x: 0, y: -1 };
  if (side === 'top') return { x: 0, y: 1 };
  return { x: side === 'left' ? -1 : 1, y: 0 };
}

/**
 * The closed area of an open outline whose two legs are carried on in their own direction until they are
 * `length` mm beyond the panel's edge; a leg that runs nearly along the edge is carried on square to it.
 */
export function carryOn(outline: OpenOutline, length: number): Contour {
  const { edge, cut } = outline;
  const along = unit(subtract(edge.to, edge.from));
  const out = { x: along.y, y: -along.x };
  const beyond = (at: Point, leg: Point): Point => {
    const slope = dot(leg, out);
    return add(at, slope > 0.2 ? scale(leg, length / slope) : scale(out, length));
  };
  const [first, last] = [cut.segments[0] as Segment, cut.segments[cut.segments.length - 1] as Segment];
  const from = beyond(edge.from, directionAt(last, 1));
  const to = beyond(edge.to, scale(directionAt(first, 0), -1));
  const segments = [...cut.segments, line(edge.from, from), line(from, to), line(to, edge.to)];
  return { closed: true, segments };
}

/** Cuts a closed contour along the line of the panel's edge and keeps what lies on the panel. */
export function trimAtEdge(contour: Contour, edge: Line): Contour | null {
  const along = unit(subtract(edge.to, edge.from));
  const far = scale(along, 1e4);
  const knife = line(subtract(edge.from, far), add(edge.to, far));
  const inner = contour.segments
    .flatMap((segment) => splitBy(segment, knife))
    .filter((piece) => cross(along, subtract(pointAt(piece, 0.5), edge.from)) > 1e-6);
  const runs = chain(inner, 1e-5, false);
  const run = runs[0];
  return runs.length === 1 && run && !run.closed ? run : null;
}

function splitBy(segment: Segment, knife: Line): Segment[] {
  const cuts = [0, ...meetings(segment, knife).map((m) => m.first), 1].sort((a, b) => a - b);
  return cuts.slice(1).flatMap((to, i) => {
    const from = cuts[i] ?? 0;
    return (to - from) * lengthOf(segment) > 1e-7 ? [pieceOf(segment, from, to)] : [];
  });
}

/** An open cut and the edge it ends on, closed along that edge. */
export function closeAlongEdge(cut: Contour): Contour {
  const first = cut.segments[0];
  const last = cut.segments.at(-1);
  if (!first || !last) return cut;
  return { closed: true, segments: [...cut.segments, line(endOf(last), startOf(first))] };
}
