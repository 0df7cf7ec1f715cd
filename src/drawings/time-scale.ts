import { DAY } from '../units/estimate.ts';

/** A stretch of time in minutes. */
interface Span {
  readonly from: number;
  readonly to: number;
}

/** Where minutes lie on an axis; long stretches in which nobody works are drawn short. */
export interface TimeScale {
  /** Place of a minute, as a fraction (0 to 1) of the axis. */
  readonly at: (minute: number) => number;
  /** Minutes that are marked: even, and far enough apart to be lettered. */
  readonly ticks: readonly number[];
  /** Stretches that are not to scale. */
  readonly breaks: readonly Span[];
}

/** Distances between ticks, in minutes, that people count in. */
const TICK_STEPS = [1, 2, 5, 10, 15, 30, 60, 120, 240, 480, 960];
const MOST_TICKS = 6;

/**
 * The scale of an axis from 0 to `end` minutes. A pause longer than half the time worked is drawn as a
 * fifteenth of that time.
 *
 * @param worked when anybody works, in any order
 */
export function timeScale(worked: readonly Span[], end: number): TimeScale {
  const pauses = pausesBetween(worked, end);
  const busy = end - pauses.reduce((sum, pause) => sum + pause.to - pause.from, 0);
  const breaks = pauses.filter((pause) => pause.to - pause.from > busy / 2);
  const drawn = (minute: number) =>
    breaks.reduce((length, { from, to }) => {
      const passed = Math.max(0, Math.min(minute, to) - from);
      return length - passed + (passed / (to - from)) * (busy / 15);
    }, minute);
  const full = drawn(end);
  const step = TICK_STEPS.find((minutes) => full / minutes <= MOST_TICKS) ?? DAY;
  const marked = breaks.length === 0 ? [...multiples(step, 0, end)] : ticksAround(breaks, step, end);
  return { at: (minute) => (full === 0 ? 0 : drawn(minute) / full), ticks: marked, breaks };
}

/** Ticks outside the breaks; those after one stand close to others only where the step allows. */
function ticksAround(breaks: readonly Span[], step: number, end: number): number[] {
  const edges = [0, ...breaks.flatMap(({ from, to }) => [from, to]), end];
  const spans = edges.flatMap((from, index) =>
    index % 2 === 0 ? [{ from, to: edges[index + 1] ?? end }] : [],
  );
  return spans.flatMap(({ from, to }) => multiples(step, from, to));
}

function multiples(step: number, from: number, to: number): number[] {
  const first = Math.ceil(from / step);
  const count = Math.max(0, Math.floor(to / step) - first + 1);
  return Array.from({ length: count }, (_, index) => (first + index) * step);
}

function pausesBetween(worked: readonly Span[], end: number): readonly Span[] {
  const pauses: Span[] = [];
  let free = 0;
  for (const { from, to } of [...worked].sort((a, b) => a.from - b.from)) {
    if (from > free) pauses.push({ from: free, to: from });
    free = Math.max(free, to);
  }
  return end > free ? [...pauses, { from: free, to: end }] : pauses;
}

/** "3:06" for 186 minutes, "1 d 9:19" for 1999: how long after the beginning, to the nearest minute. */
export function clockOf(minutes: number): string {
  const whole = Math.round(minutes);
  const [days, rest] = [Math.floor(whole / DAY), whole % DAY];
  const clock = `${Math.floor(rest / 60)}:${String(rest % 60).padStart(2, '0')}`;
  return days === 0 ? clock : `${days}\u00a0d\u00a0${clock}`;
}
