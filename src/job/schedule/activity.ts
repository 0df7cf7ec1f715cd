/** A piece of work that is done without a break. Times are whole seconds, so that sums compare exactly. */
export interface Activity {
  readonly duration: number;
  readonly people: number;
  /** The tools that it keeps in use. */
  readonly tools: readonly ToolInUse[];
  /** What must be done first. Links point backwards in the written order, which is thus always possible. */
  readonly after: readonly Link[];
  /** Time nobody works after it; the job ends no earlier. */
  readonly wait: number;
}

/** A tool, and how many of it are at hand. */
export interface ToolInUse {
  readonly id: string;
  readonly atHand: number;
}

/** An earlier activity, and how long before this one it must have been finished. */
interface Link {
  readonly index: number;
  readonly lag: number;
}

/**
 * The hands that an activity takes from the crew; where it asks for more, helpers come in for it. What takes no
 * time takes no hands.
 */
export function handsOf({ duration, people }: Activity, crew: number): number {
  return duration === 0 ? 0 : Math.min(people, crew);
}

/** When everything is done, waits too, for activities that start at these times. */
export function whenAllDone(activities: readonly Activity[], starts: readonly number[]): number {
  return activities.reduce(
    (end, { duration, wait }, index) => Math.max(end, (starts[index] ?? 0) + duration + wait),
    0,
  );
}

/** The earliest start that an activity's links allow. */
export function earliestStart(
  { after }: Activity,
  activities: readonly Activity[],
  starts: readonly number[],
): number {
  let start = 0;
  for (const { index, lag } of after)
    start = Math.max(start, (starts[index] ?? 0) + (activities[index]?.duration ?? 0) + lag);
  return start;
}
