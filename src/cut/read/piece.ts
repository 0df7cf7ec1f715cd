import type { Point } from '../../geometry/point.ts';
import { type Affine, apply, applyToVector } from './affine.ts';
import { type Spline, splineAt } from './spline.ts';

/** A piece of an ellipse about `centre`: the point at an angle is centre + u·cos + v·sin, radians. */
export interface EllipseArc {
  readonly kind: 'ellipse';
  readonly centre: Point;
  readonly u: Point;
  readonly v: Point;
  readonly start: number;
  readonly sweep: number;
}

/** What a maker's file draws: kinds that stay of one kind under every affine transform. */
export type Piece = { readonly kind: 'line'; readonly from: Point; readonly to: Point } | EllipseArc | Spline;

/** A piece of a circle, angles in radians. */
export function circlePiece(centre: Point, radius: number, start = 0, sweep = 2 * Math.PI): EllipseArc {
  return { kind: 'ellipse', centre, u: { x: radius, y: 0 }, v: { x: 0, y: radius }, start, sweep };
}

export function movePiece(piece: Piece, by: Affine): Piece {
  switch (piece.kind) {
    case 'line':
      return { kind: 'line', from: apply(by, piece.from), to: apply(by, piece.to) };
    case 'ellipse':
      return {
        ...piece,
        centre: apply(by, piece.centre),
        u: applyToVector(by, piece.u),
        v: applyToVector(by, piece.v),
      };
    case 'spline':
      return { ...piece, controls: piece.controls.map((point) => apply(by, point)) };
  }
}

export function ellipseAt({ centre, u, v }: EllipseArc, angle: number): Point {
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  return { x: centre.x + u.x * cos + v.x * sin, y: centre.y + u.y * cos + v.y * sin };
}

/** Points along a piece, close enough to tell which part of the page it lies on. */
export function pointsAlong(piece: Piece): Point[] {
  if (piece.kind === 'line') return [piece.from, piece.to];
  const count = piece.kind === 'ellipse' ? 32 : 8 * piece.controls.length;
  return Array.from({ length: count + 1 }, (_, i) =>
    piece.kind === 'ellipse'
      ? ellipseAt(piece, piece.start + (piece.sweep * i) / count)
      : splineAt(piece, piece.from + ((piece.to - piece.from) * i) / count).point,
  );
}
