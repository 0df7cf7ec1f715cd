import { arcOfBulge } from '../../geometry/bulge.ts';
import type { Point } from '../../geometry/point.ts';
import { type Entity, numberOf, numbersOf, numeric } from './dxf-groups.ts';
import { facingOf, planeOf, refuseTilted } from './dxf-plane.ts';
import { circlePiece, movePiece, type Piece } from './piece.ts';
import { Refused } from './refused.ts';

/** A corner of a polyline, with the bulge of the side that leaves it: the tangent of a quarter of its sweep. */
interface Vertex extends Point {
  readonly bulge: number;
}

const RADIANS = Math.PI / 180;

/** The pieces of a simple entity in units of the file, or `null` for a kind that is not read. */
export function entityPieces(entity: Entity): readonly Piece[] | null {
  switch (entity.kind) {
    case 'LINE':
      refuseTilted(entity, [numberOf(entity, 30, 0), numberOf(entity, 31, 0)]);
      return [{ kind: 'line', from: pointOf(entity, 10), to: pointOf(entity, 11) }];
    case 'CIRCLE':
      return inPlane(entity, [circlePiece(pointOf(entity, 10), radiusOf(entity))]);
    case 'ARC': {
      const [from, to] = [numberOf(entity, 50), numberOf(entity, 51)];
      const turn = ((((to - from) % 360) + 360) % 360 || 360) * RADIANS;
      return inPlane(entity, [circlePiece(pointOf(entity, 10), radiusOf(entity), from * RADIANS, turn)]);
    }
    case 'ELLIPSE':
      return [ellipse(entity)];
    case 'LWPOLYLINE':
      return inPlane(entity, run(lightVertices(entity), (numberOf(entity, 70, 0) & 1) === 1));
    case 'SPLINE':
      return [spline(entity)];
    default:
      return null;
  }
}

/**
 * An old polyline: its own entity and those of its corners. Corners that a smoothing put in (bits 1 and 8) are
 * drawn, the frame that a spline was made from (bit 16) is not.
 */
export function polylinePieces(entity: Entity, corners: readonly Entity[]): readonly Piece[] {
  const flags = numberOf(entity, 70, 0);
  if ((flags & (16 | 64)) !== 0)
    throw new Refused('a POLYLINE is a mesh of faces, not an outline', entity.line);
  const drawn = corners.filter((corner) => (numberOf(corner, 70, 0) & 16) === 0);
  refuseTilted(
    entity,
    drawn.map((corner) => numberOf(corner, 30, 0)),
  );
  const isFlat = (flags & 8) === 0;
  const vertices = drawn.map((corner) => ({
    ...pointOf(corner, 10),
    bulge: isFlat ? numberOf(corner, 42, 0) : 0,
  }));
  const pieces = run(vertices, (flags & 1) === 1);
  // The corners of a polyline in space stand in the drawing's own coordinates.
  return isFlat ? inPlane(entity, pieces) : pieces;
}

function inPlane(entity: Entity, pieces: readonly Piece[]): readonly Piece[] {
  const plane = planeOf(entity);
  return pieces.map((piece) => movePiece(piece, plane));
}

function pointOf(entity: Entity, code: number): Point {
  return { x: numberOf(entity, code), y: numberOf(entity, code + 10) };
}

function radiusOf(entity: Entity): number {
  const radius = numberOf(entity, 40);
  if (radius <= 0) throw new Refused(`a ${entity.kind} has a radius of ${radius}`, entity.line);
  return radius;
}

/** Group 10 begins a corner; what follows belongs to it. */
function lightVertices(entity: Entity): Vertex[] {
  const vertices: { x: number; y: number; bulge: number }[] = [];
  for (const group of entity.groups) {
    const last = vertices.at(-1);
    if (group.code === 10) vertices.push({ x: numeric(entity, group), y: Number.NaN, bulge: 0 });
    else if (group.code === 20 && last) last.y = numeric(entity, group);
    else if (group.code === 42 && last) last.bulge = numeric(entity, group);
  }
  if (vertices.some(({ y }) => Number.isNaN(y)))
    throw new Refused(`a ${entity.kind} has a corner without its y`, entity.line);
  return vertices;
}

function run(vertices: readonly Vertex[], closed: boolean): Piece[] {
  return vertices.flatMap((from, i): Piece[] => {
    const to = vertices[i + 1] ?? (closed ? vertices[0] : undefined);
    if (!to || Math.hypot(to.x - from.x, to.y - from.y) < 1e-9) return [];
    if (from.bulge === 0) return [{ kind: 'line', from: { x: from.x, y: from.y }, to: { x: to.x, y: to.y } }];
    const { centre, radius, start, sweep } = arcOfBulge(from, to, from.bulge);
    return [circlePiece(centre, radius, start, sweep)];
  });
}

/** Centre and long axis stand in the drawing's own coordinates; the short axis follows from the normal. */
function ellipse(entity: Entity): Piece {
  refuseTilted(entity, [0, numberOf(entity, 31, 0)]);
  const facing = facingOf(entity);
  const [u, ratio] = [pointOf(entity, 11), numberOf(entity, 40)];
  const v = { x: -u.y * ratio * facing, y: u.x * ratio * facing };
  const [from, to] = [numberOf(entity, 41, 0), numberOf(entity, 42, 2 * Math.PI)];
  const turn = (to - from) % (2 * Math.PI);
  const sweep = Math.abs(turn) < 1e-9 ? 2 * Math.PI : turn < 0 ? turn + 2 * Math.PI : turn;
  return { kind: 'ellipse', centre: pointOf(entity, 10), u, v, start: from, sweep };
}

function spline(entity: Entity): Piece {
  const [degree, knots] = [numberOf(entity, 71), numbersOf(entity, 40)];
  const [xs, ys] = [numbersOf(entity, 10), numbersOf(entity, 20)];
  const given = numbersOf(entity, 41);
  refuseTilted(entity, numbersOf(entity, 30));
  if (xs.length === 0)
    throw new Refused(
      'a SPLINE has points to pass through and no control points; save it with them, or as arcs',
      entity.line,
    );
  const sound =
    Number.isInteger(degree) &&
    degree >= 1 &&
    degree <= 11 &&
    ys.length === xs.length &&
    xs.length > degree &&
    knots.length === xs.length + degree + 1 &&
    knots.every((knot, i) => i === 0 || knot >= (knots[i - 1] ?? 0)) &&
    (given.length === 0 || (given.length === xs.length && given.every((weight) => weight > 0)));
  const [from = 0, to = 0] = [knots[degree], knots[xs.length]];
  if (!sound || !(to > from))
    throw new Refused('a SPLINE has knots that do not fit its control points', entity.line);
  const controls = xs.map((x, i) => ({ x, y: ys[i] ?? 0 }));
  return {
    kind: 'spline',
    degree,
    controls,
    weights: given.length > 0 ? given : xs.map(() => 1),
    knots,
    from,
    to,
  };
}
