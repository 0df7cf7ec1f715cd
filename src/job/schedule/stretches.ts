import type { Activity } from './activity.ts';

/**
 * The stretches of the written order that can be scheduled each for itself: everything in one, with its waits,
 * comes before everything in the next. Each is a half-open range of indices.
 */
export function stretchesOf(activities: readonly Activity[]): readonly (readonly [number, number])[] {
  const before = predecessors(activities);
  const stretches: [number, number][] = [];
  let from = 0;
  for (let to = 1; to <= activities.length; to += 1) {
    if (to < activities.length && !isBreak(activities, before, from, to)) continue;
    stretches.push([from, to]);
    from = to;
  }
  return stretches;
}

/** For each activity, the set of all that must come before it, as bits. */
function predecessors(activities: readonly Activity[]): readonly bigint[] {
  const before: bigint[] = [];
  for (const { after } of activities) {
    before.push(after.reduce((set, { index }) => set | (before[index] ?? 0n) | (1n << BigInt(index)), 0n));
  }
  return before;
}

function isBreak(
  activities: readonly Activity[],
  before: readonly bigint[],
  from: number,
  to: number,
): boolean {
  const all = ((1n << BigInt(to - from)) - 1n) << BigInt(from);
  if (before.slice(to).some((set) => (set & all) !== all)) return false;
  // A wait that something else can be done in must not hold up the stretches that follow.
  return activities.slice(from, to).every(({ wait }, place) => {
    if (wait === 0) return true;
    const index = from + place;
    const lags = activities.flatMap(({ after }, other) =>
      after.flatMap((link) => (link.index === index ? [{ lag: link.lag, inside: other < to }] : [])),
    );
    return lags.some(({ lag, inside }) => inside && lag >= wait) || lags.every(({ lag }) => lag >= wait);
  });
}
