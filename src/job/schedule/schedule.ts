import type { Guide } from '../../model/guide.ts';
import type { HelperCall, Schedule, ScheduledTask } from '../../model/schedule.ts';
import type { Build } from '../../model/when.ts';
import { inSeries, tenthsOfAnHour } from '../../trade/labour.ts';
import { base, type Minutes } from '../../units/quantity.ts';
import type { DoneStep, Precedence } from '../precedence.ts';
import { sideTime } from '../time.ts';
import { whenAllDone } from './activity.ts';
import { chainOf } from './chain.ts';
import { assignHands } from './hands.ts';
import { networkOf, type StepActivity } from './network.ts';
import { type Solver, solve } from './solve.ts';

/**
 * The schedules of a plan for one technician, for two, and for the shop's crew, smallest crew first. A larger
 * crew is never slower. Steps that state no time take none, so that the times are then least values; where no
 * step states one there is nothing to schedule.
 *
 * @param solver may remember what it has solved
 */
export function schedulesOf(
  guide: Guide,
  build: Build,
  done: readonly DoneStep[],
  crew: number,
  precedence: Precedence,
  solver: Solver = solve,
): readonly Schedule[] {
  if (done.every(({ step }) => step.time === null)) return [];
  const activities = networkOf(guide, build, done, precedence);
  const crews = [...new Set([1, 2, crew])].sort((a, b) => a - b);
  let known: readonly number[] | undefined;
  return crews.map((people) => {
    const { starts, proved } = solver(activities, people, known);
    known = starts;
    return scheduleOf(activities, starts, people, proved);
  });
}

/** Of what starts together, a proof comes after the steps, which have numbers. */
const LAST = Number.MAX_SAFE_INTEGER;

function scheduleOf(
  activities: readonly StepActivity[],
  starts: readonly number[],
  crew: number,
  proved: boolean,
): Schedule {
  const chain = chainOf(activities, starts);
  const hands = assignHands(activities, starts, crew);
  const tasks = activities.map((activity, index): ScheduledTask => {
    const start = starts[index] ?? 0;
    return {
      step: activity.step.id,
      title: activity.step.titleText,
      number: activity.number,
      side: activity.side,
      start: minutes(start),
      finish: minutes(start + activity.duration),
      wait: minutes(activity.wait),
      people: activity.people,
      hands: hands[index] ?? [],
      critical: chain.includes(index),
    };
  });
  return {
    crew,
    tasks: tasks.sort((a, b) => a.start - b.start || (a.number ?? LAST) - (b.number ?? LAST)),
    elapsed: {
      mean: minutes(whenAllDone(activities, starts)),
      spread: inSeries(chain.flatMap((index) => timeOf(activities[index]))).spread,
    },
    workEnds: base(tasks.reduce((end, { finish }) => Math.max(end, finish), 0)),
    handsOn: inSeries(activities.flatMap(timeOf)),
    labour: tenthsOfAnHour(activities.map(({ duration, people }) => minutes(duration * people))),
    helpers: helperCalls(tasks, crew),
    proved,
  };
}

function timeOf(activity: StepActivity | undefined) {
  const time = activity ? sideTime(activity.step) : null;
  return time ? [time] : [];
}

/** Work that takes more than the crew is done alone, so that calls never overlap. */
function helperCalls(tasks: readonly ScheduledTask[], crew: number): readonly HelperCall[] {
  const calls: HelperCall[] = [];
  for (const { start, finish, people } of tasks) {
    if (people <= crew || finish === start) continue;
    const last = calls.at(-1);
    if (last && last.to === start && last.people === people - crew) {
      calls[calls.length - 1] = { ...last, to: finish };
    } else {
      calls.push({ from: start, to: finish, people: people - crew });
    }
  }
  return calls;
}

function minutes(seconds: number): Minutes {
  return base(seconds / 60);
}
