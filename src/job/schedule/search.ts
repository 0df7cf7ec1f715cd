import { type Activity, earliestStart, endOf, handsOf } from './activity.ts';
import { listSchedule } from './list-schedule.ts';
import { seenStates } from './seen-states.ts';
import { tailsOf } from './tails.ts';

/** The most part schedules that are looked at before the search is cut short. */
const MOST_NODES = 20_000;

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
  const urgent = urgentOrder(tails);
  let best = [known, listSchedule(activities, crew), listSchedule(activities, crew, urgent)].reduce((a, b) =>
    endOf(activities, b) < endOf(activities, a) ? b : a,
  );
  let bestEnd = endOf(activities, best);
  let nodes = 0;

  const starts: number[] = activities.map(() => 0);
  const isPlaced: boolean[] = activities.map(() => false);
  const wasSeen = seenStates(activities);

  const visit = (placed: number, now: number, last: number | null): void => {
    nodes += 1;
    if (placed === activities.length) {
      best = [...starts];
      bestEnd = endOf(activities, best);
      return;
    }
    for (const { index, start } of startable(now)) {
      if (nodes > MOST_NODES) return;
      // Of activities that start together, only one order is tried.
      if (last !== null && start === now && index < last && !follows(index, last)) continue;
      starts[index] = start;
      isPlaced[index] = true;
      if (bound(start) < bestEnd && !wasSeen(isPlaced, starts, start)) visit(placed + 1, start, index);
      isPlaced[index] = false;
    }
  };

  /** What can start next, soonest first, then what leads to most. */
  const startable = (now: number): { readonly index: number; readonly start: number }[] =>
    activities
      .flatMap((activity, index) => {
        if (isPlaced[index] || activity.after.some((link) => !isPlaced[link.index])) return [];
        const earliest = Math.max(now, earliestStart(activity, activities, starts));
        return [{ index, start: whenFree(activity, earliest) }];
      })
      .sort(
        (a, b) => a.start - b.start || (tails[b.index] ?? 0) - (tails[a.index] ?? 0) || a.index - b.index,
      );

  /** All that is placed has begun by then, so hands only come free. */
  const whenFree = (activity: Activity, earliest: number): number => {
    const running = activities.flatMap((other, index) => {
      const end = (starts[index] ?? 0) + other.duration;
      return isPlaced[index] && end > earliest ? [{ end, hands: handsOf(other, crew) }] : [];
    });
    let free = crew - running.reduce((sum, { hands }) => sum + hands, 0);
    let start = earliest;
    for (const { end, hands } of running.sort((a, b) => a.end - b.end)) {
      if (free >= handsOf(activity, crew)) break;
      free += hands;
      start = end;
    }
    return start;
  };

  const follows = (index: number, earlier: number): boolean =>
    activities[index]?.after.some((link) => link.index === earlier) ?? false;

  /** No schedule that goes on from here ends before this. */
  const bound = (now: number): number => {
    const earliest: number[] = [];
    let longest = now;
    let work = 0;
    for (const [index, activity] of activities.entries()) {
      const start = isPlaced[index]
        ? (starts[index] ?? 0)
        : Math.max(now, earliestStart(activity, activities, earliest));
      earliest.push(start);
      longest = Math.max(longest, start + (tails[index] ?? 0));
      const left = isPlaced[index] ? Math.max(0, start + activity.duration - now) : activity.duration;
      work += left * handsOf(activity, crew);
    }
    return Math.max(longest, now + Math.ceil(work / crew));
  };

  if (bound(0) < bestEnd) visit(0, 0, null);
  return { starts: best, proved: nodes <= MOST_NODES };
}

/** What leads to most comes first; an activity's tail is never shorter than that of what follows it. */
function urgentOrder(tails: readonly number[]): readonly number[] {
  return tails.map((_, index) => index).sort((a, b) => (tails[b] ?? 0) - (tails[a] ?? 0) || a - b);
}
