import type { Contour } from './contour.ts';
import { cross, dot, type Point, samePoint } from './point.ts';
import { arc, directionAt, endOf, line, reversed, type Segment, startOf } from './segment.ts';

/**
 * Joins loose segments end to end into contours. With `turnable`, a segment may be run backwards to fit
 * (files of other programs list them in any order). What closes is closed; the rest stays open.
 */
export function chain(loose: readonly Segment[], tolerance: number, turnable: boolean): Contour[] {
  const left = [...loose];
  const contours: Contour[] = [];
  for (let first = left.shift(); first; first = left.shift()) {
    const run = [first];
    while (
      !closes(run, tolerance) &&
      (extend(run, left, tolerance, turnable) || prepend(run, left, tolerance, turnable))
    );
    contours.push({ segments: run, closed: closes(run, tolerance) });
  }
  return contours;
}

function ends(run: readonly Segment[]): readonly [Point, Point] {
  return [startOf(run[0] as Segment), endOf(run[run.length - 1] as Segment)];
}

function closes(run: readonly Segment[], tolerance: number): boolean {
  const [from, to] = ends(run);
  return (run.length > 1 || run[0]?.kind === 'arc') && samePoint(from, to, tolerance);
}

function extend(run: Segment[], left: Segment[], tolerance: number, turnable: boolean): boolean {
  const [, tail] = ends(run);
  const next = take(left, (s) => samePoint(startOf(s), tail, tolerance));
  if (next) return run.push(next) > 0;
  const back = turnable ? take(left, (s) => samePoint(endOf(s), tail, tolerance)) : null;
  return back ? run.push(reversed(back)) > 0 : false;
}

function prepend(run: Segment[], left: Segment[], tolerance: number, turnable: boolean): boolean {
  const [head] = ends(run);
  const next = take(left, (s) => samePoint(endOf(s), head, tolerance));
  if (next) return run.unshift(next) > 0;
  const back = turnable ? take(left, (s) => samePoint(startOf(s), head, tolerance)) : null;
  return back ? run.unshift(reversed(back)) > 0 : false;
}

function take(left: Segment[], fits: (segment: Segment) => boolean): Segment | null {
  const at = left.findIndex(fits);
  return at < 0 ? null : (left.splice(at, 1)[0] ?? null);
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
