import type { Contour } from './contour.ts';
import { type Fillet, filletOf, isSmooth } from './fillet.ts';
import { add, cross, dot, leftOf, type Point, samePoint, scale, subtract, unit } from './point.ts';
import { type Arc, arcAround, lengthOf, line, type Segment } from './segment.ts';

/** A corner of a polygon; radius 0 leaves it sharp. */
export interface Corner {
  readonly point: Point;
  readonly radius: number;
}

/** For each corner, the arc that its side to the next corner is bent into; `null` for a straight side. */
export type BentSides = readonly (Arc | null)[];

/** A radius that does not fit: the two sides have less length left than the rounding takes. */
interface CornerMisfit {
  readonly corner: number;
  /** The largest radius that would fit with the other corners left as they are, mm. */
  readonly largest: number;
}

/** A corner as it is drawn: where its rounding begins and ends, and how much of each side that takes. */
interface DrawnCorner {
  readonly enter: Point;
  readonly leave: Point;
  readonly rounding: Arc | null;
  readonly before: number;
  readonly after: number;
}

/** The corners whose radius does not fit between its neighbours; an empty list where all fit. */
export function cornerMisfits(corners: readonly Corner[], bent: BentSides = []): CornerMisfit[] {
  const n = corners.length;
  const at = (i: number): number => (i + n) % n;
  const drawn = corners.map((_, i) => cornerOf(corners, bent, i));
  const length = (i: number): number => lengthOf(sideOf(corners, bent, i));
  return corners.flatMap(({ radius }, i) => {
    if (radius <= 0) return [];
    const before = length(i - 1) - (drawn[at(i - 1)]?.after ?? 0);
    const after = length(i) - (drawn[at(i + 1)]?.before ?? 0);
    const fits = (one: DrawnCorner | null | undefined): boolean =>
      !!one && one.before <= before + 1e-9 && one.after <= after + 1e-9;
    if (fits(drawn[i])) return [];
    if (!bent[at(i - 1)] && !bent[i]) {
      const takes = (drawn[i]?.before ?? 0) / radius;
      return [{ corner: i, largest: Math.max(0, Math.min(before, after)) / (takes || 1) }];
    }
    const trial = (smaller: number) =>
      cornerOf(corners.with(i, { ...(corners[i] as Corner), radius: smaller }), bent, i);
    return [{ corner: i, largest: largestThat((smaller) => fits(trial(smaller)), radius) }];
  });
}

/** The closed contour through some corners, each rounded by its radius. The radii must fit. */
export function polygon(corners: readonly Corner[], bent: BentSides = []): Contour {
  const n = corners.length;
  const sharp = ({ point }: Corner): DrawnCorner => ({
    enter: point,
    leave: point,
    rounding: null,
    before: 0,
    after: 0,
  });
  const ends = corners.map((corner, i) => cornerOf(corners, bent, i) ?? sharp(corner));
  const segments: Segment[] = [];
  ends.forEach(({ leave, rounding }, i) => {
    if (rounding) segments.push(rounding);
    const next = ends[(i + 1) % n] as (typeof ends)[number];
    if (samePoint(leave, next.enter, 1e-9)) return;
    const side = bent[i];
    if (!side) segments.push(line(leave, next.enter));
    else if (!rounding && !next.rounding) segments.push(side);
    else segments.push(arcAround(side.centre, leave, next.enter, side.sweep > 0));
  });
  return { segments, closed: true };
}

function sideOf(corners: readonly Corner[], bent: BentSides, i: number): Segment {
  const n = corners.length;
  const from = (i + n) % n;
  return bent[from] ?? line((corners[from] as Corner).point, (corners[(from + 1) % n] as Corner).point);
}

/** `null` where no rounding of the radius touches both sides. */
function cornerOf(corners: readonly Corner[], bent: BentSides, i: number): DrawnCorner | null {
  const { point, radius } = corners[i] as Corner;
  const [incoming, outgoing] = [sideOf(corners, bent, i - 1), sideOf(corners, bent, i)];
  const sharp = { enter: point, leave: point, rounding: null, before: 0, after: 0 };
  if (radius <= 0) return sharp;
  if (incoming.kind === 'line' && outgoing.kind === 'line')
    return straightCorner(incoming.from, point, outgoing.to, radius) ?? sharp;
  if (isSmooth(incoming, outgoing)) return sharp;
  const fillet = filletOf(incoming, outgoing, radius);
  return fillet && { ...fillet, ...takenBy(fillet, incoming, outgoing) };
}

function takenBy({ before, after }: Fillet, incoming: Segment, outgoing: Segment) {
  return { before: (1 - before) * lengthOf(incoming), after: after * lengthOf(outgoing) };
}

/** The rounding between two straight sides; `null` where they lie on one line. */
function straightCorner(before: Point, at: Point, after: Point, radius: number): DrawnCorner | null {
  const [incoming, outgoing] = [unit(subtract(at, before)), unit(subtract(after, at))];
  const turn = Math.atan2(cross(incoming, outgoing), dot(incoming, outgoing));
  const takes = Math.tan(Math.abs(turn) / 2);
  if (takes < 1e-12) return null;
  const left = turn > 0;
  const enter = add(at, scale(unit(subtract(before, at)), takes * radius));
  const leave = add(at, scale(unit(subtract(after, at)), takes * radius));
  const inward = scale(leftOf(incoming), left ? radius : -radius);
  const rounding = arcAround(add(enter, inward), enter, leave, left);
  return { enter, leave, rounding, before: takes * radius, after: takes * radius };
}

/** The largest value below `most` that still fits, by halving; smaller ones always do. */
function largestThat(fits: (value: number) => boolean, most: number): number {
  let [low, high] = [0, most];
  for (let i = 0; i < 40; i++) {
    const middle = (low + high) / 2;
    if (fits(middle)) low = middle;
    else high = middle;
  }
  return low;
}
