import { type Activity, whenAllDone } from './activity.ts';
import { listSchedule } from './list-schedule.ts';
import { candidates, emptySchedule, endBound } from './part-schedule.ts';
import { seenStates } from './seen-states.ts';
import { tailsOf } from './tails.ts';

/** How many activities are looked at, over all part schedules, before the search is cut short. */
const MOST_LOOKS = 200_000;

/** Starts of all activities, and whether no others end earlier. */
export interface Found {
  readonly starts: readonly number[];
  readonly proved: boolean;
}

/**
 * The schedule that ends first, by branch and bound over the orders in which activities can start (the
 * precedence tree of Patterson and others, 1989). A branch is left when its longest chain, or the work that
 * remains for the crew, cannot end before the best schedule found, or when the same activities were begun
 * before and were all done as early. The result is never worse than `known`, nor than the written order.
 */
export function search(activities: readonly Activity[], crew: number, known: readonly number[]): Found {
  const tails = tailsOf(activities);
  const part = emptySchedule(activities, crew);
  const wasSeen = seenStates(activities);
  let best = [
    known,
    listSchedule(activities, crew),
    listSchedule(activities, crew, urgentOrder(tails)),
  ].reduce((a, b) => (whenAllDone(activities, b) < whenAllDone(activities, a) ? b : a));
  let bestEnd = whenAllDone(activities, best);
  const mostNodes = MOST_LOOKS / activities.length;
  let nodes = 0;

  const visit = (placed: number, now: number, last: number | null): void => {
    nodes += 1;
    if (placed === activities.length) {
      best = [...part.starts];
      bestEnd = whenAllDone(activities, best);
      return;
    }
    for (const { index, start } of candidates(part, now, tails)) {
      if (nodes > mostNodes) return;
      // Of activities that start together, only one order is tried.
      if (last !== null && start === now && index < last && !follows(activities[index], last)) continue;
      part.starts[index] = start;
      part.isPlaced[index] = true;
      const isHopeless =
        endBound(part, start, tails) >= bestEnd || wasSeen(part.isPlaced, part.starts, start);
      if (!isHopeless) visit(placed + 1, start, index);
      part.isPlaced[index] = false;
    }
  };
  if (endBound(part, 0, tails) < bestEnd) visit(0, 0, null);
  return { starts: best, proved: nodes <= mostNodes };
}

function follows(activity: Activity | undefined, earlier: number): boolean {
  return activity?.after.some((link) => link.index === earlier) ?? false;
}

/** What leads to most comes first; an activity's tail is never shorter than that of what follows it. */
function urgentOrder(tails: readonly number[]): readonly number[] {
  return tails.map((_, index) => index).sort((a, b) => (tails[b] ?? 0) - (tails[a] ?? 0) || a - b);
}
