import type { Contour } from './contour.ts';
import {
  add,
  boundsMeet,
  cross,
  distanceBetween,
  dot,
  grow,
  leftOf,
  type Point,
  SAME_POINT,
  samePoint,
  scale,
  subtract,
  unit,
} from './point.ts';
import {
  type Arc,
  endOf,
  fractionOfAngle,
  type Line,
  lengthOf,
  type Segment,
  segmentBounds,
  startOf,
} from './segment.ts';

/** A point that two segments share, with its fraction along each. */
interface Meeting {
  readonly point: Point;
  readonly first: number;
  readonly second: number;
}

/** The fraction of a segment at which a point on its line or circle lies, or `null` beyond its ends. */
export function fractionAt(segment: Segment, point: Point): number | null {
  if (segment.kind === 'arc') {
    return fractionOfAngle(segment, Math.atan2(point.y - segment.centre.y, point.x - segment.centre.x));
  }
  const along = subtract(segment.to, segment.from);
  const length = Math.hypot(along.x, along.y);
  const at = dot(subtract(point, segment.from), along) / length;
  if (at < -SAME_POINT || at > length + SAME_POINT) return null;
  return Math.min(1, Math.max(0, at / length));
}

/** Where two segments meet. Those that lie on one line or circle give the ends of what they share. */
export function meetings(a: Segment, b: Segment): Meeting[] {
  if (!boundsMeet(grow(segmentBounds(a), SAME_POINT), segmentBounds(b))) return [];
  const found: Meeting[] = [];
  for (const point of carrierMeetings(a, b)) {
    const first = fractionAt(a, point);
    const second = fractionAt(b, point);
    if (first === null || second === null) continue;
    if (!found.some((known) => samePoint(known.point, point))) found.push({ point, first, second });
  }
  return found;
}

/** Where the whole lines or circles of two segments meet. Those that lie on one give the ends of what they share. */
export function carrierMeetings(a: Segment, b: Segment): Point[] {
  if (a.kind === 'line' && b.kind === 'line') return lineLine(a, b);
  if (a.kind === 'line' && b.kind === 'arc') return lineArc(a, b);
  if (a.kind === 'arc' && b.kind === 'line') return lineArc(b, a);
  return arcArc(a as Arc, b as Arc);
}

function sharedEnds(a: Segment, b: Segment, on: (segment: Segment, point: Point) => boolean): Point[] {
  return [
    ...[startOf(a), endOf(a)].filter((p) => on(b, p)),
    ...[startOf(b), endOf(b)].filter((p) => on(a, p)),
  ];
}

function lineLine(a: Line, b: Line): Point[] {
  const u = subtract(a.to, a.from);
  const v = subtract(b.to, b.from);
  const between = subtract(b.from, a.from);
  const turn = cross(u, v);
  if (Math.abs(turn) > 1e-12 * lengthOf(a) * lengthOf(b)) {
    return [add(a.from, scale(u, cross(between, v) / turn))];
  }
  const apart = Math.abs(cross(unit(u), between));
  return apart > SAME_POINT ? [] : sharedEnds(a, b, (s, p) => fractionAt(s, p) !== null);
}

function lineArc(a: Line, b: Arc): Point[] {
  const u = unit(subtract(a.to, a.from));
  const foot = add(a.from, scale(u, dot(subtract(b.centre, a.from), u)));
  const off = distanceBetween(foot, b.centre);
  if (off > b.radius + SAME_POINT) return [];
  const half = halfChord(b.radius, off);
  return [add(foot, scale(u, half)), add(foot, scale(u, -half))];
}

/** Half the chord at a distance from the centre. What only touches, but for rounding, touches in one point. */
function halfChord(radius: number, off: number): number {
  return radius - off < 1e-10 ? 0 : Math.sqrt(radius * radius - off * off);
}

function arcArc(a: Arc, b: Arc): Point[] {
  const between = subtract(b.centre, a.centre);
  const apart = Math.hypot(between.x, between.y);
  if (apart < SAME_POINT) {
    if (Math.abs(a.radius - b.radius) > SAME_POINT) return [];
    return sharedEnds(a, b, (s, p) => fractionAt(s, p) !== null);
  }
  if (apart > a.radius + b.radius + SAME_POINT) return [];
  if (apart < Math.abs(a.radius - b.radius) - SAME_POINT) return [];
  const along = (apart * apart + a.radius * a.radius - b.radius * b.radius) / (2 * apart);
  const half = halfChord(a.radius, Math.abs(along));
  const u = scale(between, 1 / apart);
  const foot = add(a.centre, scale(u, along));
  return [add(foot, scale(leftOf(u), half)), add(foot, scale(leftOf(u), -half))];
}

/** Where a contour touches or crosses itself, other than where one segment hands over to the next. */
export function selfCrossings(contour: Contour): Point[] {
  const { segments, closed } = contour;
  const found: { readonly i: number; readonly j: number; readonly point: Point }[] = [];
  for (const [i, j] of pairsThatMayMeet(segments)) {
    const [a, b] = [segments[i] as Segment, segments[j] as Segment];
    const joints: Point[] = [];
    if (j === i + 1) joints.push(endOf(a));
    if (closed && i === 0 && j === segments.length - 1) joints.push(startOf(a));
    for (const { point } of meetings(a, b)) {
      if (!joints.some((joint) => samePoint(joint, point, 1e-4))) found.push({ i, j, point });
    }
  }
  return found.sort((one, other) => one.i - other.i || one.j - other.j).map(({ point }) => point);
}

/** Pairs of segments whose upright rectangles meet, from a sweep to the right: each names the earlier first. */
function* pairsThatMayMeet(segments: readonly Segment[]): Generator<readonly [number, number]> {
  const boxes = segments.map((segment, i) => ({ i, box: grow(segmentBounds(segment), SAME_POINT) }));
  boxes.sort((a, b) => a.box.minX - b.box.minX);
  let open: typeof boxes = [];
  for (const one of boxes) {
    open = open.filter(({ box }) => box.maxX >= one.box.minX);
    for (const { i, box } of open) {
      if (boundsMeet(box, one.box)) yield i < one.i ? [i, one.i] : [one.i, i];
    }
    open.push(one);
  }
}
