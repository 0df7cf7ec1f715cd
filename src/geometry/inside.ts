import type { Contour } from './contour.ts';
import type { Point } from './point.ts';
import { type Arc, endOf, pieceOf, positiveAngle, type Segment, startOf } from './segment.ts';

/**
 * True where a point lies within a closed contour, by counting what a ray to the right crosses. On the line
 * itself either answer may come.
 */
export function isInside(contour: Contour, point: Point): boolean {
  let inside = false;
  for (const rising of piecesOf(contour)) if (crossesRay(rising, point)) inside = !inside;
  return inside;
}

/** A piece of a contour that only rises or only falls. */
interface Rising {
  readonly piece: Segment;
  readonly from: Point;
  readonly to: Point;
}

/** Cut up once for all points that are asked about: a sheet tries hundreds for each of its words. */
function piecesOf(contour: Contour): readonly Rising[] {
  const known = knownPieces.get(contour);
  if (known) return known;
  const pieces = contour.segments
    .flatMap(risingPieces)
    .map((piece) => ({ piece, from: startOf(piece), to: endOf(piece) }));
  knownPieces.set(contour, pieces);
  return pieces;
}

const knownPieces = new WeakMap<Contour, readonly Rising[]>();

/** Cuts an arc at its highest and lowest point, so that each piece only rises or only falls. */
function risingPieces(segment: Segment): Segment[] {
  if (segment.kind === 'line') return [segment];
  const cuts = [Math.PI / 2, (3 * Math.PI) / 2]
    .map((angle) => positiveAngle(segment.sweep > 0 ? angle - segment.start : segment.start - angle))
    .map((along) => along / Math.abs(segment.sweep))
    .filter((t) => t > 1e-12 && t < 1 - 1e-12)
    .sort((a, b) => a - b);
  const ends = [0, ...cuts, 1];
  return ends.slice(1).map((to, i) => pieceOf(segment, ends[i] ?? 0, to));
}

function crossesRay({ piece, from, to }: Rising, point: Point): boolean {
  if (from.y <= point.y === to.y <= point.y) return false;
  if (piece.kind === 'arc') return arcAtHeight(piece, point.y) > point.x;
  return from.x + ((point.y - from.y) / (to.y - from.y)) * (to.x - from.x) > point.x;
}

/** The x at which a rising piece of an arc passes a height. */
function arcAtHeight(piece: Arc, y: number): number {
  const up = y - piece.centre.y;
  const half = Math.sqrt(Math.max(0, piece.radius * piece.radius - up * up));
  const rightHalf = Math.cos(piece.start + piece.sweep / 2) > 0;
  return piece.centre.x + (rightHalf ? half : -half);
}
