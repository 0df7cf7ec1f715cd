import type { HelperCall, Schedule } from '../../model/schedule.ts';
import { DAY, formatRun } from '../../units/estimate.ts';
import { base } from '../../units/quantity.ts';
import { listed } from '../words/noun.ts';

/**
 * "Helper needed from minute 20 to 32 and from minute 41 to 48", of a job beyond a day "from 1 d 5 h to 1 d 5 h 12 min
 * after the start"; empty where the crew suffices.
 */
export function helperWords({ helpers }: Pick<Schedule, 'helpers'>): string {
  if (helpers.length === 0) return '';
  const most = Math.max(...helpers.map(({ people }) => people));
  const beyondDay = helpers.some(({ to }) => Math.ceil(to) > DAY);
  const spans = helpers.map((call) => spanWords(call, most > 1, beyondDay));
  return `${most > 1 ? 'Helpers' : 'Helper'} needed ${listed(spans)}`;
}

function spanWords({ from, to, people }: HelperCall, tellsCount: boolean, beyondDay: boolean): string {
  const [first, last] = [Math.floor(from), Math.ceil(to)];
  const span = beyondDay
    ? `from ${formatRun(base(first))} to ${formatRun(base(last))} after the start`
    : `from minute ${first} to ${last}`;
  return tellsCount ? `${span} (${people})` : span;
}

/**
 * What a larger crew brings, in whole minutes of the schedules: "With a second technician: 71 min instead of
 * 88 min", or that it brings nothing. Says nothing where either schedule is missing.
 */
export function secondTechnicianWords(schedules: readonly Schedule[]): string {
  const alone = schedules.find(({ crew }) => crew === 1);
  const two = schedules.find(({ crew }) => crew === 2);
  if (!alone || !two) return '';
  const [before, after] = [Math.round(alone.elapsed.mean), Math.round(two.elapsed.mean)];
  if (after >= before) return 'A second technician does not make the job shorter';
  const told = (minutes: number) => (before > DAY ? formatRun(base(minutes)) : `${minutes} min`);
  return `With a second technician: ${told(after)} instead of ${told(before)}`;
}
