import { type Activity, earliestStart, handsOf } from './activity.ts';

/** A schedule while it is being made: activities are placed in the order of their starts. */
export interface PartSchedule {
  readonly activities: readonly Activity[];
  readonly crew: number;
  /** Of what is placed; the rest does not count. */
  readonly starts: number[];
  readonly isPlaced: boolean[];
}

/** An activity that can be placed next, and when. */
interface Candidate {
  readonly index: number;
  readonly start: number;
}

/** What can start next, no earlier than the last start: soonest first, then what leads to most. */
export function candidates(part: PartSchedule, now: number, tails: readonly number[]): readonly Candidate[] {
  const { activities, starts, isPlaced } = part;
  const found = activities.flatMap((activity, index): Candidate[] => {
    if (isPlaced[index] || activity.after.some((link) => !isPlaced[link.index])) return [];
    const earliest = Math.max(now, earliestStart(activity, activities, starts));
    return [{ index, start: whenFree(part, activity, earliest) }];
  });
  const tail = ({ index }: Candidate) => tails[index] ?? 0;
  return found.sort((a, b) => a.start - b.start || tail(b) - tail(a) || a.index - b.index);
}

/** When hands and tools are free for good: all that is placed has begun by then, so they only come free. */
function whenFree(
  { activities, crew, starts, isPlaced }: PartSchedule,
  activity: Activity,
  earliest: number,
): number {
  const running = activities
    .flatMap((other, index) => {
      const end = (starts[index] ?? 0) + other.duration;
      return isPlaced[index] && end > earliest ? [{ end, other }] : [];
    })
    .sort((a, b) => a.end - b.end);
  let start = earliest;
  while (running.length > 0 && !hasRoom(running, activity, crew)) start = running.shift()?.end ?? start;
  return start;
}

function hasRoom(
  running: readonly { readonly other: Activity }[],
  activity: Activity,
  crew: number,
): boolean {
  const busy = running.reduce((sum, { other }) => sum + handsOf(other, crew), 0);
  if (busy + handsOf(activity, crew) > crew) return false;
  return activity.tools.every(({ id, atHand }) => {
    const users = running.filter(({ other }) => other.tools.some((tool) => tool.id === id));
    return users.length < atHand;
  });
}

/** No schedule that goes on from here, with nothing more before `now`, ends before this. */
export function endBound(part: PartSchedule, now: number, tails: readonly number[]): number {
  const { activities, crew, starts, isPlaced } = part;
  const earliest: number[] = [];
  let longest = now;
  let work = 0;
  for (const [index, activity] of activities.entries()) {
    const placed = isPlaced[index] ?? false;
    const start = placed
      ? (starts[index] ?? 0)
      : Math.max(now, earliestStart(activity, activities, earliest));
    earliest.push(start);
    longest = Math.max(longest, start + (tails[index] ?? 0));
    work +=
      (placed ? Math.max(0, start + activity.duration - now) : activity.duration) * handsOf(activity, crew);
  }
  return Math.max(longest, now + Math.ceil(work / crew));
}
