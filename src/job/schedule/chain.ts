import { type Activity, whenAllDone } from './activity.ts';

/**
 * The critical chain of a schedule, first activity first: each starts when the one before lets it, by what must
 * come first or by coming free, and the last one ends the job. Links count before freed hands.
 */
export function chainOf(activities: readonly Activity[], starts: readonly number[]): readonly number[] {
  const end = whenAllDone(activities, starts);
  const finish = (index: number) => (starts[index] ?? 0) + (activities[index]?.duration ?? 0);
  const chain: number[] = [];
  let at = activities.findIndex(({ wait }, index) => finish(index) + wait === end);
  while (at >= 0 && !chain.includes(at)) {
    chain.unshift(at);
    const start = starts[at] ?? 0;
    if (start === 0) break;
    const link = activities[at]?.after.find(({ index, lag }) => finish(index) + lag === start);
    at = link ? link.index : activities.findIndex((_, index) => index !== at && finish(index) === start);
  }
  return chain;
}
