import type { Contour } from './contour.ts';
import { cross, dot, type Point, samePoint } from './point.ts';
import { arc, directionAt, endOf, line, reversed, type Segment, startOf } from './segment.ts';

/**
 * Joins loose segments end to end into contours. With `turnable`, a segment may be run backwards to fit
 * (files of other programs list them in any order). What closes is closed; the rest stays open.
 */
export function chain(loose: readonly Segment[], tolerance: number, turnable: boolean): Contour[] {
  const left = new LooseEnds(loose, tolerance);
  const contours: Contour[] = [];
  for (let first = left.takeFirst(); first; first = left.takeFirst()) {
    const after = [first];
    const before: Segment[] = [];
    let [head, tail] = [startOf(first), endOf(first)];
    const closes = (): boolean =>
      (before.length + after.length > 1 || first.kind === 'arc') && samePoint(head, tail, tolerance);
    while (!closes()) {
      const next = left.takeFrom(tail, turnable);
      if (next) {
        after.push(next);
        tail = endOf(next);
        continue;
      }
      const previous = left.takeTo(head, turnable);
      if (!previous) break;
      before.push(previous);
      head = startOf(previous);
    }
    contours.push({ segments: [...before.toReversed(), ...after], closed: closes() });
  }
  return contours;
}

/** Segments that no contour has yet, found by where they end: a grid of cells as wide as the tolerance. */
class LooseEnds {
  private readonly segments: readonly Segment[];
  private readonly tolerance: number;
  private readonly taken: boolean[];
  private readonly starts = new Map<string, number[]>();
  private readonly ends = new Map<string, number[]>();
  private next = 0;

  constructor(segments: readonly Segment[], tolerance: number) {
    this.segments = segments;
    this.tolerance = tolerance;
    this.taken = segments.map(() => false);
    segments.forEach((segment, i) => {
      this.put(this.starts, startOf(segment), i);
      this.put(this.ends, endOf(segment), i);
    });
  }

  takeFirst(): Segment | null {
    while (this.taken[this.next]) this.next++;
    return this.take(this.next < this.segments.length ? this.next : null);
  }

  /** The first that begins at a point, or that ends there and is run backwards. */
  takeFrom(point: Point, turnable: boolean): Segment | null {
    const found = this.take(this.near(this.starts, point));
    if (found || !turnable) return found;
    const back = this.take(this.near(this.ends, point));
    return back && reversed(back);
  }

  /** The first that ends at a point, or that begins there and is run backwards. */
  takeTo(point: Point, turnable: boolean): Segment | null {
    const found = this.take(this.near(this.ends, point));
    if (found || !turnable) return found;
    const back = this.take(this.near(this.starts, point));
    return back && reversed(back);
  }

  private take(index: number | null): Segment | null {
    if (index === null) return null;
    this.taken[index] = true;
    return this.segments[index] ?? null;
  }

  private put(cells: Map<string, number[]>, { x, y }: Point, index: number): void {
    const key = `${Math.floor(x / this.tolerance)} ${Math.floor(y / this.tolerance)}`;
    const cell = cells.get(key);
    if (cell) cell.push(index);
    else cells.set(key, [index]);
  }

  /** The lowest number of a free segment whose end lies within the tolerance of a point. */
  private near(cells: ReadonlyMap<string, number[]>, point: Point): number | null {
    const [column, row] = [Math.floor(point.x / this.tolerance), Math.floor(point.y / this.tolerance)];
    let best: number | null = null;
    for (let i = column - 1; i <= column + 1; i++) {
      for (let j = row - 1; j <= row + 1; j++) {
        const cell = cells.get(`${i} ${j}`);
        if (!cell) continue;
        // Those that are gone leave the cell, so that many that meet in one point are not gone through again.
        while (cell.length > 0 && this.taken[cell[0] as number]) cell.shift();
        for (const index of cell) {
          const segment = this.segments[index] as Segment;
          const end = cells === this.starts ? startOf(segment) : endOf(segment);
          if (this.taken[index] || !samePoint(end, point, this.tolerance)) continue;
          if (best === null || index < best) best = index;
          break;
        }
      }
    }
    return best;
  }
}

/** The contour with neighbouring pieces of one line, or of one circle, made into one. */
export function mergePieces(contour: Contour): Contour {
  const merged: Segment[] = [];
  for (const segment of contour.segments) {
    const last = merged.at(-1);
    const both = last ? mergeTwo(last, segment) : null;
    if (both) merged[merged.length - 1] = both;
    else merged.push(segment);
  }
  const [first, last] = [merged[0], merged.at(-1)];
  const around = contour.closed && merged.length > 2 && first && last ? mergeTwo(last, first) : null;
  return { closed: contour.closed, segments: around ? [around, ...merged.slice(1, -1)] : merged };
}

function mergeTwo(a: Segment, b: Segment): Segment | null {
  if (a.kind === 'line' && b.kind === 'line') {
    const turn = cross(directionAt(a, 1), directionAt(b, 0));
    return Math.abs(turn) < 1e-9 && dot(directionAt(a, 1), directionAt(b, 0)) > 0 ? line(a.from, b.to) : null;
  }
  if (a.kind !== 'arc' || b.kind !== 'arc') return null;
  const alike =
    samePoint(a.centre, b.centre) && Math.abs(a.radius - b.radius) < 1e-9 && a.sweep * b.sweep > 0;
  const sweep = a.sweep + b.sweep;
  return alike && Math.abs(sweep) < 2 * Math.PI - 1e-9 ? arc(a.centre, a.radius, a.start, sweep) : null;
}
