import { type Activity, earliestStart, handsOf } from './activity.ts';

/** How many of the crew are busy from a moment to the next level's; the last level lasts for ever. */
interface Level {
  readonly from: number;
  readonly busy: number;
}

/**
 * Starts each activity, in the order of a list, as early as its links and the crew allow (the serial schedule
 * generation scheme of Kelley, 1963). The list must name what comes first before what comes after.
 */
export function listSchedule(
  activities: readonly Activity[],
  crew: number,
  list: readonly number[] = activities.map((_, index) => index),
): readonly number[] {
  const starts: number[] = activities.map(() => 0);
  let levels: readonly Level[] = [{ from: 0, busy: 0 }];
  for (const index of list) {
    const activity = activities[index];
    if (!activity) continue;
    const room = crew - handsOf(activity, crew);
    const start = firstRoom(levels, earliestStart(activity, activities, starts), activity.duration, room);
    starts[index] = start;
    levels = occupied(levels, start, start + activity.duration, handsOf(activity, crew));
  }
  return starts;
}

/** The first moment from which no more than `room` are busy for a while. */
function firstRoom(levels: readonly Level[], earliest: number, duration: number, room: number): number {
  let start = earliest;
  for (const [index, { from, busy }] of levels.entries()) {
    const to = levels[index + 1]?.from ?? Number.POSITIVE_INFINITY;
    if (from >= start + duration) break;
    if (to > start && busy > room) start = to;
  }
  return start;
}

function occupied(levels: readonly Level[], start: number, end: number, hands: number): readonly Level[] {
  if (start === end) return levels;
  return levels.flatMap(({ from, busy }, index): readonly Level[] => {
    const to = levels[index + 1]?.from ?? Number.POSITIVE_INFINITY;
    if (to <= start || from >= end) return [{ from, busy }];
    return [
      ...(from < start ? [{ from, busy }] : []),
      { from: Math.max(from, start), busy: busy + hands },
      ...(end < to ? [{ from: end, busy }] : []),
    ];
  });
}
