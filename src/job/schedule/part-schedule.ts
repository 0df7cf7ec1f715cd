import { type Activity, earliestStart, handsOf } from './activity.ts';

/** A schedule while it is being made: activities are placed in the order of their starts. */
interface PartSchedule {
  readonly activities: readonly Activity[];
  readonly crew: number;
  /** What each activity takes of the crew. */
  readonly hands: readonly number[];
  /** Of what is placed; the rest does not count. */
  readonly starts: number[];
  readonly isPlaced: boolean[];
}

/** An activity that can be placed next, and when. */
interface Candidate {
  readonly index: number;
  readonly start: number;
}

/** A schedule in which nothing is placed yet. */
export function emptySchedule(activities: readonly Activity[], crew: number): PartSchedule {
  return {
    activities,
    crew,
    hands: activities.map((activity) => handsOf(activity, crew)),
    starts: activities.map(() => 0),
    isPlaced: activities.map(() => false),
  };
}

/** What can start next, no earlier than the last start: soonest first, then what leads to most. */
export function candidates(part: PartSchedule, now: number, tails: readonly number[]): readonly Candidate[] {
  const { activities, starts, isPlaced } = part;
  // Once for all candidates: planning a long job is spent here.
  const running = runningAt(part, now);
  const found: Candidate[] = [];
  for (const [index, activity] of activities.entries()) {
    if (isPlaced[index] || activity.after.some((link) => !isPlaced[link.index])) continue;
    const earliest = Math.max(now, earliestStart(activity, activities, starts));
    found.push({ index, start: whenFree(part, running, index, earliest) });
  }
  const tail = ({ index }: Candidate) => tails[index] ?? 0;
  return found.sort((a, b) => a.start - b.start || tail(b) - tail(a) || a.index - b.index);
}

/** What is under way after a moment, soonest done first. */
interface Running {
  readonly end: number;
  readonly index: number;
}

function runningAt({ activities, starts, isPlaced }: PartSchedule, now: number): readonly Running[] {
  const running: Running[] = [];
  for (const [index, { duration }] of activities.entries()) {
    const end = (starts[index] ?? 0) + duration;
    if (isPlaced[index] && end > now) running.push({ end, index });
  }
  return running.sort((a, b) => a.end - b.end);
}

/** When hands and tools are free for good: all that is placed has begun by then, so they only come free. */
function whenFree(part: PartSchedule, running: readonly Running[], index: number, earliest: number): number {
  let from = running.findIndex(({ end }) => end > earliest);
  if (from < 0) return earliest;
  let start = earliest;
  for (; from < running.length && !hasRoom(part, running, from, index); from += 1)
    start = running[from]?.end ?? start;
  return start;
}

/** Whether an activity finds hands and tools beside what runs on, which is all from a place of the list. */
function hasRoom(
  { activities, crew, hands }: PartSchedule,
  running: readonly Running[],
  from: number,
  index: number,
): boolean {
  let busy = hands[index] ?? 0;
  for (let place = from; place < running.length; place += 1) busy += hands[running[place]?.index ?? -1] ?? 0;
  if (busy > crew) return false;
  for (const { id, atHand } of activities[index]?.tools ?? []) {
    let users = 0;
    for (let place = from; place < running.length; place += 1) {
      const other = activities[running[place]?.index ?? -1];
      if (other?.tools.some((tool) => tool.id === id)) users += 1;
    }
    if (users >= atHand) return false;
  }
  return true;
}

/** No schedule that goes on from here, with nothing more before `now`, ends before this. */
export function endBound(part: PartSchedule, now: number, tails: readonly number[]): number {
  const { activities, crew, hands, starts, isPlaced } = part;
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
    work += (placed ? Math.max(0, start + activity.duration - now) : activity.duration) * (hands[index] ?? 0);
  }
  return Math.max(longest, now + Math.ceil(work / crew));
}
