/** How fasteners lie: at the corners of a frame or in two rows, on a circle, or in one row. */
export type Pattern = 'cross' | 'circle' | 'row';

/** The numbers of fasteners for which an order is worked out. */
export const patternCounts = { least: 3, most: 16 } as const;

/**
 * The order in which the fasteners of a pattern are tightened, as positions counted from 1: clockwise round a
 * circle or a frame, from one end of a row. Circle: opposite pairs, then halve the angle (HSW, Hennig: bolting
 * of flanges); an odd number goes round in a star. Cross: opposite pairs from the middle outwards; row: from the
 * middle outwards (common practice, no source). Undefined outside 3 to 16.
 */
export function tighteningOrder(count: number, pattern: Pattern): readonly number[] | undefined {
  if (!Number.isInteger(count) || count < patternCounts.least || count > patternCounts.most) return undefined;
  if (pattern === 'row') return fromTheMiddle(count);
  if (count % 2 === 1) return star(count, (count - 1) / 2);
  const half = count / 2;
  if (pattern === 'circle') return halved(half).flatMap((first) => [first, first + half]);
  return crosswise(fromTheMiddle(half), count);
}

/** An order of tightening in words, as it was worked out: "in opposite pairs". */
export function orderWords(order: readonly number[], pattern: Pattern): string {
  const count = order.length;
  if (pattern === 'row') return 'from the middle of the row outwards';
  const strides = order.slice(1).map((position, index) => Math.abs(position - (order[index] ?? 0)));
  if (strides.every((stride) => stride === 1)) return 'one after another round the circle';
  const inPairs = strides.every((stride, index) => index % 2 === 1 || stride === count / 2);
  if (!inPairs) return 'each time across, as in a star';
  if (pattern === 'circle') return 'in opposite pairs';
  return count === 4 ? 'crosswise' : 'crosswise, from the middle outwards';
}

/** 1 to `count`, in steps of `stride` round the circle; the two have no common factor. */
function star(count: number, stride: number): number[] {
  return Array.from({ length: count }, (_, turn) => ((turn * stride) % count) + 1);
}

/** The first of each opposite pair, so that each next pair halves the widest angle left. */
function halved(pairs: number): number[] {
  if (pairs % 2 === 0) return halved(pairs / 2).flatMap((first) => [first, first + pairs / 2]);
  // Three pairs in a star would put neighbours one after the other.
  return star(pairs, pairs <= 3 ? 1 : 2);
}

function fromTheMiddle(count: number): number[] {
  const middle = (count + 1) / 2;
  return Array.from({ length: count }, (_, index) => index + 1).sort(
    (a, b) => Math.abs(a - middle) - Math.abs(b - middle) || a - b,
  );
}

/** Each pair begins with the end that does not lie beside the fastener before it, where there is one. */
function crosswise(firsts: readonly number[], count: number): number[] {
  const order: number[] = [];
  for (const first of firsts) {
    const opposite = first + count / 2;
    const before = order.at(-1) ?? opposite;
    const turned = areBeside(before, first, count) && !areBeside(before, opposite, count);
    order.push(...(turned ? [opposite, first] : [first, opposite]));
  }
  return order;
}

function areBeside(a: number, b: number, count: number): boolean {
  const apart = Math.abs(a - b);
  return apart === 1 || apart === count - 1;
}

/** Where a fastener is drawn: x to the right, y down, both from 0 to 1. */
interface PatternPoint {
  readonly x: number;
  readonly y: number;
}

/** Where the fasteners of a pattern lie, in the order of their positions: from the top of a circle, clockwise. */
export function patternPoints(count: number, pattern: Pattern): readonly PatternPoint[] {
  return Array.from({ length: count }, (_, index) => {
    if (pattern === 'row') return { x: count === 1 ? 0.5 : index / (count - 1), y: 0.5 };
    if (pattern === 'cross' && count % 2 === 0) return framePoint(index, count / 2);
    const angle = (2 * Math.PI * index) / count;
    return { x: 0.5 + Math.sin(angle) / 2, y: 0.5 - Math.cos(angle) / 2 };
  });
}

function framePoint(index: number, columns: number): PatternPoint {
  const column = index < columns ? index : 2 * columns - 1 - index;
  return { x: columns === 1 ? 0.5 : column / (columns - 1), y: index < columns ? 0 : 1 };
}

/** How far a fastener of a row may stand beside the line from end to end, as a part of its length. */
const OUT_OF_LINE = 0.15;

/**
 * Points of a picture in the order of the positions of a pattern: clockwise round a circle or a frame, from one end
 * of a row. Undefined where they do not lie in one; a picture at a slant changes neither the order round nor that
 * along.
 *
 * @param points x to the right, y down, in one unit
 */
export function pointsInPattern<P extends PatternPoint>(
  points: readonly P[],
  pattern: Pattern,
): readonly P[] | undefined {
  if (points.length < 3) return undefined;
  if (pattern === 'row') return alongTheRow(points);
  const round = clockwise(points);
  if (!round) return undefined;
  const starts = round.map((_, start) => [...round.slice(start), ...round.slice(0, start)]);
  const lead = ([first]: readonly P[]) => (first ? first.x + first.y : 0);
  if (pattern === 'circle' || points.length % 2 === 1)
    return least(starts, ([first]) => (first ? first.y : 0));
  // Two rows: each half of the way round is one of them, so it is as straight as any half can be.
  const bends = starts.map((one) => bend(one.slice(0, one.length / 2)) + bend(one.slice(one.length / 2)));
  const straight = starts.filter((_, index) => (bends[index] ?? 0) <= Math.min(...bends) + 0.01);
  return least(straight, lead);
}

function least<T>(list: readonly T[], of: (one: T) => number): T | undefined {
  return [...list].sort((a, b) => of(a) - of(b))[0];
}

function alongTheRow<P extends PatternPoint>(points: readonly P[]): readonly P[] | undefined {
  const ends = points.flatMap((a) => points.map((b) => [a, b] as const));
  const pair = least(ends, ([a, b]) => -Math.hypot(b.x - a.x, b.y - a.y));
  if (!pair) return undefined;
  const [from, to] = [...pair].sort((a, b) => a.x - b.x || a.y - b.y);
  if (!from || !to) return undefined;
  const [dx, dy] = [to.x - from.x, to.y - from.y];
  const length = Math.hypot(dx, dy);
  const along = ({ x, y }: P) => ((x - from.x) * dx + (y - from.y) * dy) / length;
  const beside = ({ x, y }: P) => Math.abs((x - from.x) * dy - (y - from.y) * dx) / length;
  if (points.some((point) => beside(point) > OUT_OF_LINE * length)) return undefined;
  return [...points].sort((a, b) => along(a) - along(b));
}

/** Undefined where the middle of the points is not among them, so that none could be said to lie round it. */
function clockwise<P extends PatternPoint>(points: readonly P[]): readonly P[] | undefined {
  const middle = {
    x: points.reduce((sum, { x }) => sum + x, 0) / points.length,
    y: points.reduce((sum, { y }) => sum + y, 0) / points.length,
  };
  const turned = points
    .map((point) => ({ point, angle: Math.atan2(point.y - middle.y, point.x - middle.x) }))
    .sort((a, b) => a.angle - b.angle);
  const gaps = turned.map(({ angle }, index) => {
    const next = turned[index + 1]?.angle ?? (turned[0]?.angle ?? 0) + 2 * Math.PI;
    return next - angle;
  });
  // A hair less than a half turn, so that points on one line are none either.
  return gaps.some((gap) => gap > Math.PI - 0.01) ? undefined : turned.map(({ point }) => point);
}

/** How much longer the way through points is than the straight way from its first to its last: 0 in line. */
function bend(points: readonly PatternPoint[]): number {
  const [first, last] = [points[0], points.at(-1)];
  if (!first || !last) return 0;
  const ways = points.slice(1).map(({ x, y }, index) => {
    const before = points[index] ?? first;
    return Math.hypot(x - before.x, y - before.y);
  });
  return ways.reduce((sum, way) => sum + way, 0) / Math.hypot(last.x - first.x, last.y - first.y) - 1;
}
