import { type Activity, earliestStart, handsOf } from './activity.ts';

/** How many of the crew, or of a tool, are busy from each moment to the next; the last lasts for ever. */
interface Levels {
  readonly from: number[];
  readonly busy: number[];
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
  const crewLevels = idle();
  const ofTool = new Map<string, Levels>();
  for (const index of list) {
    const activity = activities[index];
    if (!activity) continue;
    const { duration, tools } = activity;
    const hands = handsOf(activity, crew);
    const needs = [{ levels: crewLevels, room: crew - hands }];
    for (const { id, atHand } of tools) needs.push({ levels: levelsOf(id, ofTool), room: atHand - 1 });
    const start = firstRoomForAll(needs, earliestStart(activity, activities, starts), duration);
    starts[index] = start;
    occupy(crewLevels, start, start + duration, hands);
    for (const { id } of tools) occupy(levelsOf(id, ofTool), start, start + duration, 1);
  }
  return starts;
}

function idle(): Levels {
  return { from: [0], busy: [0] };
}

function levelsOf(tool: string, ofTool: Map<string, Levels>): Levels {
  const levels = ofTool.get(tool) ?? idle();
  ofTool.set(tool, levels);
  return levels;
}

/** The first moment at which none of several needs has to wait for another. */
function firstRoomForAll(
  needs: readonly { readonly levels: Levels; readonly room: number }[],
  earliest: number,
  duration: number,
): number {
  const later = needs.reduce((start, { levels, room }) => firstRoom(levels, start, duration, room), earliest);
  return later === earliest ? earliest : firstRoomForAll(needs, later, duration);
}

/** The first moment from which no more than `room` are busy for a while. */
function firstRoom({ from, busy }: Levels, earliest: number, duration: number, room: number): number {
  let start = earliest;
  for (let index = 0; index < from.length; index += 1) {
    if ((from[index] ?? 0) >= start + duration) break;
    const to = from[index + 1] ?? Number.POSITIVE_INFINITY;
    if (to > start && (busy[index] ?? 0) > room) start = to;
  }
  return start;
}

function occupy(levels: Levels, start: number, end: number, hands: number): void {
  if (start === end) return;
  const first = levelAt(levels, start);
  const after = levelAt(levels, end);
  for (let index = first; index < after; index += 1) levels.busy[index] = (levels.busy[index] ?? 0) + hands;
}

/** The level that begins at a moment; where none does, the one that lasts over it is parted there. */
function levelAt({ from, busy }: Levels, moment: number): number {
  let index = from.length - 1;
  while ((from[index] ?? 0) > moment) index -= 1;
  if (from[index] === moment) return index;
  from.splice(index + 1, 0, moment);
  busy.splice(index + 1, 0, busy[index] ?? 0);
  return index + 1;
}
