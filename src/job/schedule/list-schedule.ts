import { type Activity, earliestStart, handsOf } from './activity.ts';

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
  const placed: number[] = [];
  for (const index of list) {
    const activity = activities[index];
    if (!activity) continue;
    const earliest = earliestStart(activity, activities, starts);
    const ends = placed.map((other) => (starts[other] ?? 0) + (activities[other]?.duration ?? 0));
    const candidates = [earliest, ...ends.filter((end) => end > earliest).sort((a, b) => a - b)];
    starts[index] =
      candidates.find((start) => fits(activity, start, placed, { activities, crew, starts })) ?? earliest;
    placed.push(index);
  }
  return starts;
}

interface Sheet {
  readonly activities: readonly Activity[];
  readonly crew: number;
  readonly starts: readonly number[];
}

/** Whether enough of the crew is free all the time; the number of busy hands only rises where work starts. */
function fits(activity: Activity, start: number, placed: readonly number[], sheet: Sheet): boolean {
  const end = start + activity.duration;
  const hands = handsOf(activity, sheet.crew);
  const moments = placed.flatMap((other) => {
    const begun = sheet.starts[other] ?? 0;
    return begun > start && begun < end ? [begun] : [];
  });
  return [start, ...moments].every((moment) => hands + busyAt(moment, placed, sheet) <= sheet.crew);
}

function busyAt(moment: number, placed: readonly number[], { activities, crew, starts }: Sheet): number {
  return placed.reduce((sum, other) => {
    const activity = activities[other];
    const start = starts[other] ?? 0;
    if (!activity || start > moment || start + activity.duration <= moment) return sum;
    return sum + handsOf(activity, crew);
  }, 0);
}
