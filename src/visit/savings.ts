import type { Guide } from '../model/guide.ts';
import type { Job, Plan } from '../model/job.ts';
import type { VisitSaving, VisitTimes } from '../model/visit.ts';
import type { Build } from '../model/when.ts';
import type { VisitNames } from './names.ts';

/** A guide of a visit, with its own job. */
export interface VisitedGuide {
  readonly guide: Guide;
  readonly job: Job;
}

/** The crews whose elapsed times are told. */
const crews: readonly number[] = [1, 2];

/**
 * What a visit saves against its guides one after the other, for each of its plans.
 *
 * @param builds all builds that it is for, with every option
 */
export function savingsOf(
  job: Job,
  guides: readonly VisitedGuide[],
  names: ReadonlyMap<string, VisitNames>,
  builds: readonly Build[],
): readonly VisitSaving[] {
  return job.plans.map((plan) => {
    const [told = {}] = plan.builds;
    const whole = builds.find((build) => job.decidingOptions.every((id) => build[id] === told[id])) ?? told;
    return {
      together: timesOf(plan),
      apart: guides.map((one) => timesOf(planFor(one, whole, names.get(one.guide.id)))),
    };
  });
}

/** The plan of a guide by itself for a build of the visit. */
function planFor({ job }: VisitedGuide, build: Build, by: VisitNames | undefined): Plan | undefined {
  const agrees = (candidate: Build) =>
    job.decidingOptions.every((id) => build[by?.option(id) ?? id] === candidate[id]);
  return job.plans.find((plan) => plan.builds.some(agrees)) ?? job.plans[0];
}

function timesOf(plan: Plan | undefined): VisitTimes {
  const schedules = plan?.schedules ?? [];
  const alone = schedules.find(({ crew }) => crew === 1);
  return {
    handsOn: alone?.handsOn.mean ?? 0,
    personMinutes: (alone?.tasks ?? []).reduce(
      (sum, { start, finish, people }) => sum + (finish - start) * people,
      0,
    ),
    labour: alone?.labour ?? 0,
    elapsed: crews.map((crew) => ({
      crew,
      minutes: schedules.find((one) => one.crew === crew)?.elapsed.mean ?? 0,
    })),
  };
}

/** The times of several jobs one after the other. */
function inARow(times: readonly VisitTimes[]): VisitTimes {
  const sum = (of: (one: VisitTimes) => number) => times.reduce((total, one) => total + of(one), 0);
  return {
    handsOn: sum(({ handsOn }) => handsOn),
    personMinutes: sum(({ personMinutes }) => personMinutes),
    // Each job is quoted in whole tenths; the sum of two of these is one again.
    labour: Math.round(sum(({ labour }) => labour) * 10) / 10,
    elapsed: crews.map((crew) => ({
      crew,
      minutes: sum(({ elapsed }) => elapsed.find((one) => one.crew === crew)?.minutes ?? 0),
    })),
  };
}

/** Whether a visit takes no longer than its guides one after the other, for each plan and crew. */
export function isNeverLonger(savings: readonly VisitSaving[]): boolean {
  return savings.every(({ together, apart }) => {
    const row = inARow(apart);
    return (
      together.handsOn <= row.handsOn + ROUNDING &&
      together.elapsed.every(({ crew, minutes }) => {
        const before = row.elapsed.find((one) => one.crew === crew)?.minutes ?? 0;
        return minutes <= before + ROUNDING;
      })
    );
  });
}

/** Minutes: times are summed in whole seconds, and each step's is rounded once. */
const ROUNDING = 0.5;
