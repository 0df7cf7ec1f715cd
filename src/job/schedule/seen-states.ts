import type { Activity } from './activity.ts';

/** Most states that are kept for one set of activities. */
const MOST_KEPT = 8;

interface State {
  readonly now: number;
  readonly starts: readonly number[];
}

/**
 * Remembers part schedules. The answer is whether one with the same activities begun is no later in anything
 * that can still matter, so that this one need not be followed (the cutset rule of Demeulemeester and
 * Herroelen, 1992); otherwise this one is remembered.
 */
export function seenStates(
  activities: readonly Activity[],
): (isPlaced: readonly boolean[], starts: readonly number[], now: number) => boolean {
  const lags = longestLags(activities);
  const seen = new Map<string, State[]>();
  return (isPlaced, starts, now) => {
    const key = isPlaced.map((placed) => (placed ? '1' : '0')).join('');
    const states = seen.get(key) ?? [];
    const isNoLater = (other: State): boolean =>
      other.now <= now &&
      activities.every(({ duration }, index) => {
        if (!isPlaced[index]) return true;
        const before = other.starts[index] ?? 0;
        return before <= (starts[index] ?? 0) || before + duration + (lags[index] ?? 0) <= now;
      });
    if (states.some(isNoLater)) return true;
    if (states.length < MOST_KEPT) seen.set(key, [...states, { now, starts: [...starts] }]);
    return false;
  };
}

/** How long after its end each activity can hold something up: its own wait, or a link's. */
function longestLags(activities: readonly Activity[]): readonly number[] {
  const lags: number[] = activities.map(({ wait }) => wait);
  for (const { after } of activities) {
    for (const { index, lag } of after) lags[index] = Math.max(lags[index] ?? 0, lag);
  }
  return lags;
}
