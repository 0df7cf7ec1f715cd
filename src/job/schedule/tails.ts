import type { Activity } from './activity.ts';

/** From the start of each activity to the end of the job along the longest chain, waits too. */
export function tailsOf(activities: readonly Activity[]): readonly number[] {
  const after: number[] = activities.map(({ wait }) => wait);
  const tails: number[] = activities.map(() => 0);
  for (const [index, activity] of [...activities.entries()].reverse()) {
    const tail = activity.duration + (after[index] ?? 0);
    tails[index] = tail;
    for (const link of activity.after) {
      after[link.index] = Math.max(after[link.index] ?? 0, link.lag + tail);
    }
  }
  return tails;
}
