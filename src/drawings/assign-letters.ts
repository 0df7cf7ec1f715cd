import { type DrawingPoint, distance, distanceToLeader, type Leader, leadersCross } from './leader.ts';

/** How near a leader may pass another mark's dot before that counts against it, in units of the overlay. */
const CLEARANCE = 26;

/** How far a leader should lean, as a part of its length: one that is upright or level passes for a line of the picture. */
const LEAN = 0.12;

/** What an upright or level leader costs; less as it leans. */
const UPRIGHT = 40;

/** What a crossing costs: more than any detour. */
const CROSSING = 1e6;

/** Rounds of improvement; nearly all pictures settle within five. */
const MAX_ROUNDS = 12;

/**
 * Gives every point a slot of its own for its letter, so that no two leaders cross, leaders are short, lean a
 * little (ISO 128 prefers leader lines at an angle), and none runs over another mark's dot.
 *
 * Whenever two leaders cross, exchanging their slots shortens the two together (triangle inequality), so
 * exchanging ends, and ends without a crossing. What follows only takes steps that cost less.
 *
 * @returns the index of a slot for each point
 */
export function assignLetters(
  points: readonly DrawingPoint[],
  slots: readonly DrawingPoint[],
): { slots: number[]; cost: number } {
  const chosen = uncross(nearestFree(points, slots), points, slots);
  let best = cost(chosen, points, slots);
  for (let round = 0; round < MAX_ROUNDS; round += 1) {
    const before = best;
    for (let mark = 0; mark < points.length; mark += 1) {
      for (let slot = 0; slot < slots.length; slot += 1) {
        const tried = moved(chosen, mark, slot);
        const price = cost(tried, points, slots);
        if (price >= best - 1e-9) continue;
        best = price;
        chosen.splice(0, chosen.length, ...tried);
      }
    }
    if (best === before) break;
  }
  return { slots: chosen, cost: best };
}

function nearestFree(points: readonly DrawingPoint[], slots: readonly DrawingPoint[]): number[] {
  const free = new Set(slots.keys());
  return points.map((point) => {
    let nearest = -1;
    let least = Number.POSITIVE_INFINITY;
    for (const slot of free) {
      const length = distance(point, slots[slot] ?? point);
      if (length >= least) continue;
      least = length;
      nearest = slot;
    }
    free.delete(nearest);
    return nearest;
  });
}

function uncross(
  chosen: number[],
  points: readonly DrawingPoint[],
  slots: readonly DrawingPoint[],
): number[] {
  for (let again = true; again; ) {
    again = false;
    for (let a = 0; a < chosen.length; a += 1) {
      for (let b = a + 1; b < chosen.length; b += 1) {
        const now = [leader(a, chosen, points, slots), leader(b, chosen, points, slots)] as const;
        if (!leadersCross(...now)) continue;
        const swapped = moved(chosen, a, chosen[b] ?? 0);
        const then = [leader(a, swapped, points, slots), leader(b, swapped, points, slots)] as const;
        if (length(then) >= length(now) - 1e-9) continue;
        chosen.splice(0, chosen.length, ...swapped);
        again = true;
      }
    }
  }
  return chosen;
}

/** A mark moved to a slot; whoever held it takes the slot that the mark leaves. */
function moved(chosen: readonly number[], mark: number, slot: number): number[] {
  const left = chosen[mark] ?? 0;
  return chosen.map((held, index) => (index === mark ? slot : held === slot ? left : held));
}

function cost(
  chosen: readonly number[],
  points: readonly DrawingPoint[],
  slots: readonly DrawingPoint[],
): number {
  const leaders = chosen.map((_, mark) => leader(mark, chosen, points, slots));
  let total = length(leaders);
  leaders.forEach((one, mark) => {
    total += UPRIGHT * Math.max(0, 1 - lean(one) / LEAN);
    points.forEach((point, other) => {
      if (other === mark) return;
      const near = distanceToLeader(point, one);
      if (near < CLEARANCE) total += (CLEARANCE - near) * 30;
    });
    for (const other of leaders.slice(mark + 1)) if (leadersCross(one, other)) total += CROSSING;
  });
  return total;
}

/** The smaller of a leader's two extents, as a part of its length. */
function lean({ from, to }: Leader): number {
  const smaller = Math.min(Math.abs(to.x - from.x), Math.abs(to.y - from.y));
  return smaller / Math.max(1, distance(from, to));
}

function leader(
  mark: number,
  chosen: readonly number[],
  points: readonly DrawingPoint[],
  slots: readonly DrawingPoint[],
): Leader {
  const to = points[mark] ?? { x: 0, y: 0 };
  return { from: slots[chosen[mark] ?? 0] ?? to, to };
}

function length(leaders: readonly Leader[]): number {
  return leaders.reduce((sum, { from, to }) => sum + distance(from, to), 0);
}
