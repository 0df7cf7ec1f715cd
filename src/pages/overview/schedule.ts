import { scheduleCharts } from '../../drawings/schedule-chart.ts';
import type { Markup } from '../../html/markup.ts';
import { stringify } from '../../html/stringify.ts';
import { helperWords, secondTechnicianWords } from '../../job/index.ts';
import type { Schedule } from '../../model/schedule.ts';
import type { Expectation } from '../../trade/labour.ts';
import { formatMinutes, formatRun } from '../../units/estimate.ts';
import type { GuideContext } from '../frame/context.ts';
import { sharedRows } from '../frame/plans.ts';
import type { Shown } from '../frame/shared-views.ts';

/** How the time runs for a set of builds. */
export interface ScheduleView extends Shown {
  readonly crews: readonly CrewView[];
  /** What is said of larger crews that are no quicker, and thus have no chart. */
  readonly noGain: readonly string[];
}

/** The schedule of one crew. */
interface CrewView {
  /** "One technician". */
  readonly title: string;
  readonly lines: readonly string[];
  readonly charts: readonly Markup[];
}

/** The schedules of all plans; a crew has a chart where it is quicker than every smaller one. */
export function scheduleViews(context: GuideContext): readonly ScheduleView[] {
  const timed = sharedRows(context, ({ schedules }) => (schedules.length > 0 ? [schedules] : []));
  return timed.map(({ row, shown }) => ({
    ...shown,
    crews: quickerEach(row).map((schedule) => crewView(schedule, context)),
    noGain: quickerEach(row).some(({ crew }) => crew === 2) ? [] : [`${secondTechnicianWords(row)}.`],
  }));
}

/** "One technician", "2 technicians". */
export function crewWords(crew: number): string {
  if (crew === 1) return 'One technician';
  return crew === 2 ? 'Two technicians' : `${crew} technicians`;
}

/** "2 h 28 min on average, give or take 5 min": a mean and its standard deviation. */
export function averageWords({ mean, spread }: Expectation): string {
  const average = `${formatRun(mean)} on average`;
  return spread > 0 ? `${average}, give or take ${formatMinutes(spread)}` : average;
}

/** Schedules, smallest crew first, without those that take as many whole minutes as a smaller crew does. */
function quickerEach(schedules: readonly Schedule[]): readonly Schedule[] {
  const minutes = ({ elapsed }: Schedule) => Math.round(elapsed.mean);
  return schedules.filter((one, index) =>
    schedules.slice(0, index).every((smaller) => minutes(one) < minutes(smaller)),
  );
}

function crewView(schedule: Schedule, context: GuideContext): CrewView {
  return {
    title: crewWords(schedule.crew),
    lines: [
      `${averageWords(schedule.elapsed)}, from the start to the end.`,
      restWords(schedule),
      schedule.helpers.length > 0 ? `${helperWords(schedule)}.` : null,
      schedule.proved ? null : 'A quicker order may exist.',
    ].filter((line) => line !== null),
    charts: scheduleCharts(
      numberedForPage(schedule, context),
      (step) => titleOf(step, schedule, context),
      context.guide.words,
    ).map((chart) => stringify([chart])),
  };
}

/** A wait that only the vehicle sits out. */
function restWords({ workEnds, elapsed }: Schedule): string | null {
  if (Math.round(workEnds) >= Math.round(elapsed.mean)) return null;
  return `The work is done after ${formatRun(workEnds)}; the rest is waiting.`;
}

/** Steps as they are numbered on the page on which all builds stand; the page's script knows each build's. */
function numberedForPage(schedule: Schedule, { steps }: GuideContext): Schedule {
  const tasks = schedule.tasks.map((task) => ({
    ...task,
    number: task.number === null ? null : (steps.get(task.step)?.number ?? task.number),
  }));
  return { ...schedule, tasks };
}

function titleOf(step: string, { tasks }: Schedule, { steps }: GuideContext): string {
  const proof = tasks.find((task) => task.step === step)?.title;
  return steps.get(step)?.step.titleText ?? proof ?? step;
}
