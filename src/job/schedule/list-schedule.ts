import { type Activity, earliestStart, handsOf } from './activity.ts';

/** How many of the crew, or of a tool, are busy from a moment to the next level's; the last lasts for ever. */
interface Level {
  readonly from: number;
  readonly busy: number;
}

/**
 * Starts each activity, in the order of a list, as early as its links, the crew and its tools allow (the serial
 * schedule generation scheme of Kelley, 1963). The list must name what comes first before what comes after.
 */
export function listSchedule(
  activities: readonly Activity[],
  crew: number,
  list: readonly number[] = activities.map((_, index) => index),
): readonly number[] {
  const starts: number[] = activities.map(() => 0);
  const idle: readonly Level[] = [{ from: 0, busy: 0 }];
  let levels = idle;
  const ofTool = new Map<string, readonly Level[]>();
  for (const index of list) {
    const activity = activities[index];
    if (!activity) continue;
    const { duration, tools } = activity;
    const needs = [
      { levels, room: crew - handsOf(activity, crew) },
      ...tools.map(({ id, atHand }) => ({ levels: ofTool.get(id) ?? idle, room: atHand - 1 })),
    ];
    const start = firstRoomForAll(needs, earliestStart(activity, activities, starts), duration);
    starts[index] = start;
    levels = occupied(levels, start, start + duration, handsOf(activity, crew));
    for (const { id } of tools) ofTool.set(id, occupied(ofTool.get(id) ?? idle, start, start + duration, 1));
  }
  return starts;
}

/** The first moment at which none of several needs has to wait for another. */
function firstRoomForAll(
  needs: readonly { readonly levels: readonly Level[]; readonly room: number }[],
  earliest: number,
  duration: number,
): number {
  const later = needs.reduce((start, { levels, room }) => firstRoom(levels, start, duration, room), earliest);
  return later === earliest ? earliest : firstRoomForAll(needs, later, duration);
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
