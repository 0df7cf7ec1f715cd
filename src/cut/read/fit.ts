import { nearestOn } from '../../geometry/distance.ts';
import {
  add,
  cross,
  distanceBetween,
  dot,
  leftOf,
  midpoint,
  type Point,
  scale,
  subtract,
  unit,
} from '../../geometry/point.ts';
import {
  type Arc,
  arc,
  arcThrough,
  endOf,
  line,
  pointAt,
  type Segment,
  startOf,
} from '../../geometry/segment.ts';
import { type EllipseArc, ellipseAt, type Piece } from './piece.ts';
import { spansOf, splineAt } from './spline.ts';

/** A curve that lies this near to one line, arc or circle is taken as that, mm. */
const TAKEN_WITHIN = 0.005;

/** Any other curve becomes arcs that lie this near to it, mm. */
const FIT_WITHIN = 0.003;

/** Halving a curve this often must bring its arcs near enough. */
const MOST_HALVINGS = 14;

/** Points at which a stretch of curve is held against the arcs that stand for it. */
const PROBES = 12;

/** Lines and arcs that stand for a piece, and how far they lie from it, mm: 0 for what is a line or an arc. */
interface Fitted {
  readonly segments: readonly Segment[];
  readonly error: number;
}

/** A smooth curve, and its direction of travel, over a range of its parameter. */
interface Curve {
  readonly at: (t: number) => Point;
  /** `before` is the direction in which a parameter is reached, else that in which it is left. */
  readonly direction: (t: number, before: boolean) => Point;
}

/** The lines and arcs of a piece in millimetres; `null` where no arcs come near enough. */
export function fitPiece(piece: Piece): Fitted | null {
  if (piece.kind === 'line') {
    const long = distanceBetween(piece.from, piece.to) > 1e-9;
    return { segments: long ? [line(piece.from, piece.to)] : [], error: 0 };
  }
  if (piece.kind === 'ellipse') {
    const round = asArc(piece);
    if (round) return { segments: halved(round), error: 0 };
    return fitCurve(ellipseCurve(piece), quarters(piece));
  }
  const curve: Curve = {
    at: (t) => splineAt(piece, t).point,
    direction: (t, before) => unit(splineAt(piece, t, before).derivative),
  };
  return fitCurve(curve, spansOf(piece));
}

/** The arc of a circle that a piece of an ellipse is. */
function asArc({ centre, u, v, start, sweep }: EllipseArc): Arc | null {
  const [a, b] = [Math.hypot(u.x, u.y), Math.hypot(v.x, v.y)];
  const slack = Math.max(1e-4, 1e-7 * a);
  if (Math.abs(a - b) > slack || Math.abs(dot(u, v)) > slack * a) return null;
  const turn = Math.atan2(u.y, u.x);
  return cross(u, v) > 0
    ? arc(centre, (a + b) / 2, turn + start, sweep)
    : arc(centre, (a + b) / 2, turn - start, -sweep);
}

/** A full turn has no ends of its own, so it is two halves. */
function halved(whole: Arc): Arc[] {
  if (Math.abs(whole.sweep) < 2 * Math.PI - 1e-6) return [whole];
  const half = whole.sweep / 2;
  return [
    arc(whole.centre, whole.radius, whole.start, half),
    arc(whole.centre, whole.radius, whole.start + half, half),
  ];
}

function ellipseCurve(piece: EllipseArc): Curve {
  const { u, v, sweep } = piece;
  const forward = Math.sign(sweep);
  return {
    at: (angle) => ellipseAt(piece, angle),
    direction: (angle) =>
      scale(unit(subtract(scale(v, Math.cos(angle)), scale(u, Math.sin(angle)))), forward),
  };
}

/** An ellipse is fitted a quarter at a time, so that its arcs lie as evenly as it does. */
function quarters({ start, sweep }: EllipseArc): number[] {
  const pieces = Math.max(1, Math.ceil(Math.abs(sweep) / (Math.PI / 2) - 1e-9));
  return Array.from({ length: pieces + 1 }, (_, i) => start + (sweep * i) / pieces);
}

function fitCurve(curve: Curve, spans: readonly number[]): Fitted | null {
  const whole = asOne(curve, spans);
  if (whole) return whole;
  const segments: Segment[] = [];
  let error = 0;
  for (const [i, to] of spans.slice(1).entries()) {
    const fitted = fitSpan(curve, spans[i] ?? to, to, MOST_HALVINGS);
    if (!fitted) return null;
    segments.push(...fitted.segments);
    error = Math.max(error, fitted.error);
  }
  return { segments, error };
}

/** The one line, arc or circle that a curve is, for all that can be measured. */
function asOne({ at }: Curve, spans: readonly number[]): Fitted | null {
  const probes = spans.slice(1).flatMap((to, i) => probesBetween(at, spans[i] ?? to, to));
  const [from, to] = [at(spans[0] ?? 0), at(spans.at(-1) ?? 0)];
  const third = (n: number): Point => probes[Math.floor((probes.length * n) / 3)] ?? from;
  const closed = distanceBetween(from, to) < 1e-6;
  if (closed && distanceBetween(third(1), third(2)) < 1e-6) return null;
  const middle = at(((spans[0] ?? 0) + (spans.at(-1) ?? 0)) / 2);
  const halves = closed
    ? circleThrough(from, third(1), third(2))
    : [isFlat(from, to, probes) ? line(from, to) : arcThrough(from, middle, to)];
  const error = furthest(halves, probes);
  return error <= TAKEN_WITHIN && isInOrder(halves, probes) ? { segments: halves, error: 0 } : null;
}

/** A curve that is as good as straight is a line: an arc of some kilometres would be no help. */
function isFlat(from: Point, to: Point, probes: readonly Point[]): boolean {
  return furthest([line(from, to)], probes) < TAKEN_WITHIN / 10;
}

/** The circle through three points, from the first round to itself. */
function circleThrough(a: Point, b: Point, c: Point): Segment[] {
  const found = arcThrough(a, b, c);
  if (found.kind !== 'arc') return [found];
  return halved(arc(found.centre, found.radius, found.start, 2 * Math.PI * Math.sign(found.sweep)));
}

/** A curve that doubles back, or goes round more than once, lies near an arc and is none. */
function isInOrder(segments: readonly Segment[], probes: readonly Point[]): boolean {
  const [first] = segments;
  if (!first) return false;
  if (first.kind === 'line') {
    const along = subtract(first.to, first.from);
    return probes.every((p, i) => i === 0 || dot(subtract(p, probes[i - 1] ?? p), along) >= 0);
  }
  const turned = probes.slice(1).map((p, i) => {
    const [a, b] = [subtract(probes[i] ?? p, first.centre), subtract(p, first.centre)];
    return Math.atan2(cross(a, b), dot(a, b)) * Math.sign(first.sweep);
  });
  return turned.every((angle) => angle >= -1e-9) && turned.reduce((sum, one) => sum + one, 0) < 2 * Math.PI;
}

function probesBetween(at: (t: number) => Point, from: number, to: number): Point[] {
  return Array.from({ length: PROBES }, (_, i) => at(from + ((to - from) * (i + 0.5)) / PROBES));
}

function furthest(segments: readonly Segment[], probes: readonly Point[]): number {
  return probes.reduce(
    (far, point) =>
      Math.max(far, Math.min(...segments.map((s) => distanceBetween(nearestOn(s, point), point)))),
    0,
  );
}

/** Two arcs that leave and arrive as the curve does; where they stray from it, each half of it gets its own. */
function fitSpan(curve: Curve, from: number, to: number, halvings: number): Fitted | null {
  const { at } = curve;
  const probes = probesBetween(at, from, to);
  const [a, b] = [at(from), at(to)];
  if (!Number.isFinite(a.x + a.y + b.x + b.y)) return null;
  const pair = isFlat(a, b, probes)
    ? [line(a, b)]
    : twoArcs(a, directionFrom(curve, from, to), b, directionTo(curve, from, to));
  const error = pair ? furthest(pair, probes) : Infinity;
  if (pair && error <= FIT_WITHIN) return { segments: pair.filter(isLong), error };
  if (halvings === 0) return null;
  const middle = (from + to) / 2;
  const [first, second] = [
    fitSpan(curve, from, middle, halvings - 1),
    fitSpan(curve, middle, to, halvings - 1),
  ];
  if (!first || !second) return null;
  return { segments: [...first.segments, ...second.segments], error: Math.max(first.error, second.error) };
}

function isLong(segment: Segment): boolean {
  return distanceBetween(startOf(segment), endOf(segment)) > 1e-9;
}

/** Where control points fall together a curve has no derivative; a hair further on it has a direction. */
function directionFrom({ at, direction }: Curve, from: number, to: number): Point {
  const there = direction(from, false);
  return isUnit(there) ? there : unit(subtract(at(from + (to - from) * 1e-4), at(from)));
}

function directionTo({ at, direction }: Curve, from: number, to: number): Point {
  const there = direction(to, true);
  return isUnit(there) ? there : unit(subtract(at(to), at(to - (to - from) * 1e-4)));
}

function isUnit({ x, y }: Point): boolean {
  return Math.abs(Math.hypot(x, y) - 1) < 1e-6;
}

/**
 * Two arcs that join smoothly, leave the first point in its direction and reach the second in its own: the
 * pair whose joint is equally far, along the tangents, from both ends.
 */
function twoArcs(a: Point, leaving: Point, b: Point, arriving: Point): Segment[] | null {
  const chord = subtract(b, a);
  const both = add(leaving, arriving);
  const k = 2 * (1 - dot(leaving, arriving));
  const along = dot(chord, both);
  const square = dot(chord, chord);
  const reach = k < 1e-12 ? square / (2 * along) : (Math.sqrt(along * along + k * square) - along) / k;
  if (!Number.isFinite(reach) || reach <= 0) return null;
  const joint = midpoint(add(a, scale(leaving, reach)), subtract(b, scale(arriving, reach)));
  const [first, last] = [arcLeaving(a, leaving, joint), arcLeaving(b, scale(arriving, -1), joint)];
  if (!first || !last) return null;
  return [
    first,
    last.kind === 'line'
      ? line(joint, b)
      : arc(last.centre, last.radius, last.start + last.sweep, -last.sweep),
  ];
}

/** The arc from a point to another that leaves the first in a direction; `null` for more than half a turn. */
function arcLeaving(from: Point, direction: Point, to: Point): Segment | null {
  const chord = subtract(to, from);
  const side = leftOf(direction);
  const rise = dot(side, chord);
  const length = Math.hypot(chord.x, chord.y);
  if (dot(direction, chord) <= 0) return null;
  if (Math.abs(rise) < 1e-9 * length) return line(from, to);
  const radius = (length * length) / (2 * rise);
  const centre = add(from, scale(side, radius));
  const turn = 2 * Math.atan2(rise, dot(direction, chord));
  const made = arc(centre, Math.abs(radius), Math.atan2(from.y - centre.y, from.x - centre.x), turn);
  return distanceBetween(pointAt(made, 1), to) < 1e-6 ? made : null;
}
