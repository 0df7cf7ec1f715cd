import { type Activity, whenAllDone } from './activity.ts';
import { listSchedule } from './list-schedule.ts';
import { type Found, search } from './search.ts';
import { stretchesOf } from './stretches.ts';

/** Finds the starts of activities for a crew. */
export type Solver = typeof solve;

/** Solves what is asked twice once: builds that differ in words or screws alone have one schedule. */
export function rememberingSolver(): Solver {
  const known = new Map<string, Found>();
  return (activities, crew, earlier) => {
    const facts = activities.map(({ duration, people, tools, after, wait }) => [
      duration,
      people,
      tools.map(({ id, atHand }) => [id, atHand]),
      after.map(({ index, lag }) => [index, lag]),
      wait,
    ]);
    const key = JSON.stringify([crew, earlier, facts]);
    const found = known.get(key) ?? solve(activities, crew, earlier);
    known.set(key, found);
    return found;
  };
}

/**
 * The quickest schedule for a crew: exact where the search could finish, and never worse than the written
 * order nor than a known schedule, such as that of a smaller crew.
 */
export function solve(activities: readonly Activity[], crew: number, known?: readonly number[]): Found {
  const written = listSchedule(activities, crew);
  const fallback =
    known && whenAllDone(activities, known) < whenAllDone(activities, written) ? known : written;
  const starts: number[] = [];
  let proved = true;
  let base = 0;
  for (const [from, to] of stretchesOf(activities)) {
    const stretch = activities.slice(from, to).map((activity) => ({
      ...activity,
      after: activity.after.flatMap((link) =>
        link.index < from ? [] : [{ index: link.index - from, lag: link.lag }],
      ),
    }));
    const begin = base;
    const offset = Math.min(...fallback.slice(from, to));
    const found = search(
      stretch,
      crew,
      fallback.slice(from, to).map((start) => start - offset),
    );
    proved &&= found.proved;
    starts.push(...found.starts.map((start) => start + begin));
    base += whenAllDone(stretch, found.starts);
  }
  return { starts: pulledForward(activities, crew, starts), proved };
}

/** The same order with everything as early as it can be. */
function pulledForward(
  activities: readonly Activity[],
  crew: number,
  starts: readonly number[],
): readonly number[] {
  const order = starts.map((_, index) => index).sort((a, b) => (starts[a] ?? 0) - (starts[b] ?? 0) || a - b);
  return listSchedule(activities, crew, order);
}
