import { asCircle, type Contour } from '../../geometry/contour.ts';
import { isSmooth } from '../../geometry/fillet.ts';
import { add, type Point, scale } from '../../geometry/point.ts';
import {
  type Arc,
  directionAt,
  endOf,
  lengthOf,
  pointAt,
  type Segment,
  startOf,
} from '../../geometry/segment.ts';
import { mm, type Station } from './resolved.ts';

/** What is shorter than this, mm, is left by the arithmetic of a curve or a set-back, and nobody can mark it out. */
const TOO_SHORT = 0.05;

/** An arc that bows out less than this from the straight line between its ends, mm, is marked out as that line. */
const FLAT = 0.01;

/** A rounded corner that turns by more than this is told as an arc: its point would lie far away. */
const MOST_TURN = 2.6;

/**
 * The points from which a line to cut can be drawn again, in order along it: each corner, with the radius that
 * rounds it, and for every other arc the point halfway along it (`arc r 120`), between its two ends.
 */
export function stationsAlong(cut: Contour, mark: string): Station[] {
  const round = asCircle(cut);
  if (round) return [{ mark, point: round.centre, size: `Ø ${mm(2 * round.radius)}` }];
  const { closed } = cut;
  const segments = cut.segments.filter((segment) => lengthOf(segment) > TOO_SHORT);
  const places: Omit<Station, 'mark'>[] = [];
  segments.forEach((segment, i) => {
    const before = segments[i - 1] ?? (closed ? segments.at(-1) : undefined);
    const after = segments[i + 1] ?? (closed ? segments[0] : undefined);
    const corner = roundedCorner(before, segment, after);
    const second = closed || i > 1 ? segments.at(i - 2) : undefined;
    const joined = before !== undefined && roundedCorner(second, before, segment) !== null;
    if (corner) {
      places.push(corner);
      return;
    }
    if (!joined) places.push({ point: startOf(segment), size: '' });
    if (segment.kind === 'arc' && bowOf(segment) > FLAT)
      places.push({ point: pointAt(segment, 0.5), size: `arc r ${roughly(segment.radius)}` });
    if (!after) places.push({ point: endOf(segment), size: '' });
  });
  return places.map((place, i) => ({ mark: `${mark}${i + 1}`, ...place }));
}

/** How far an arc stands out from the chord between its ends, mm. */
function bowOf({ radius, sweep }: Arc): number {
  return radius * (1 - Math.cos(Math.min(Math.PI, Math.abs(sweep) / 2)));
}

/** The radius of an arc that its three points give: as many figures as its column holds. */
function roughly(radius: number): string {
  const step = radius < 100 ? 0.01 : radius < 1000 ? 0.1 : 1;
  return mm(Math.round(radius / step) * step);
}

/** The corner that an arc rounds: where the straight sides before and after it would meet. */
function roundedCorner(
  before: Segment | undefined,
  segment: Segment,
  after: Segment | undefined,
): Omit<Station, 'mark'> | null {
  if (segment.kind !== 'arc' || before?.kind !== 'line' || after?.kind !== 'line') return null;
  if (Math.abs(segment.sweep) > MOST_TURN || !isSmooth(before, segment) || !isSmooth(segment, after))
    return null;
  return {
    point: tangentPoint(segment),
    on: pointAt(segment, 0.5),
    size: `r ${mm(segment.radius)}`,
  };
}

function tangentPoint(arc: Arc): Point {
  const reach = arc.radius * Math.tan(Math.abs(arc.sweep) / 2);
  return add(startOf(arc), scale(directionAt(arc, 0), reach));
}
