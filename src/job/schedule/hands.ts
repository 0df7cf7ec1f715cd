import type { Activity } from './activity.ts';

/**
 * Who does what: for each activity the people on it, counted from 1. Whoever comes first in the count and is
 * free takes it, so that the first technician's work has the fewest gaps; people beyond the crew are helpers.
 * Nobody is on what takes no time.
 */
export function assignHands(
  activities: readonly Activity[],
  starts: readonly number[],
  crew: number,
): readonly (readonly number[])[] {
  const busyUntil: number[] = Array.from({ length: crew }, () => 0);
  const hands: (readonly number[])[] = activities.map(() => []);
  const order = starts.map((_, index) => index).sort((a, b) => (starts[a] ?? 0) - (starts[b] ?? 0) || a - b);
  for (const index of order) {
    const { duration = 0, people = 1 } = activities[index] ?? {};
    if (duration === 0) continue;
    const start = starts[index] ?? 0;
    const free = busyUntil.flatMap((until, person) => (until <= start ? [person] : []));
    const own = free.slice(0, people);
    for (const person of own) busyUntil[person] = start + duration;
    const helpers = Array.from({ length: Math.max(0, people - crew) }, (_, extra) => crew + extra);
    hands[index] = [...own, ...helpers].map((person) => person + 1);
  }
  return hands;
}
