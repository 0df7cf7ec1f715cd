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
