import type { Step } from '../model/guide.ts';
import type { TimeTotals } from '../model/job.ts';
import type { Estimate } from '../units/estimate.ts';
import { base } from '../units/quantity.ts';

const noTime: Estimate = { least: base<'time'>(0), likely: base<'time'>(0), most: base<'time'>(0) };

/**
 * The time of a step on one side, minutes: as often as it is done. One that ends with a reading takes one round at
 * least and all of them at most; the likely number is the middle, as that of a range is. `null` where none is stated.
 */
export function sideTime({ time, times, until }: Pick<Step, 'time' | 'times' | 'until'>): Estimate | null {
  if (!time) return null;
  const { least, likely, most } = time.value;
  const rounds = times?.value ?? 1;
  return {
    least: base<'time'>(least * (until ? 1 : rounds)),
    likely: base<'time'>(likely * (until ? (1 + rounds) / 2 : rounds)),
    most: base<'time'>(most * rounds),
  };
}

/** The time of a step in all, minutes: the stated time is per side. `null` where none is stated. */
export function stepTime(step: Step): Estimate | null {
  const time = sideTime(step);
  return time && step.side?.value === 'each' ? sumOf([time, time]) : time;
}

/** The sums of the steps that are done, each under its section. Waiting is not hands-on time. */
export function timeTotals(done: readonly { readonly section: string; readonly step: Step }[]): TimeTotals {
  const timed = done.flatMap(({ section, step }) => {
    const time = stepTime(step);
    return time ? [{ section, step, time }] : [];
  });
  const sections = [...new Set(timed.map(({ section }) => section))];
  return {
    job: sumOf(timed.map(({ time }) => time)),
    sections: sections.map((section) => ({
      section,
      estimate: sumOf(timed.filter((one) => one.section === section).map(({ time }) => time)),
    })),
    helper: sumOf(timed.filter(({ step }) => step.people > 1).map(({ time }) => time)),
    waiting: done.reduce((sum, { step }) => sum + (step.wait?.value ?? 0), 0),
    from: timed.flatMap(({ step }) => (step.time ? [step.time.at] : [])),
    untimed: done.filter(({ step }) => !step.time).map(({ step }) => step.id),
  };
}

/** The sum of estimates: least with least, likely with likely, most with most. */
function sumOf(estimates: readonly Estimate[]): Estimate {
  return estimates.reduce(
    (sum, one) => ({
      least: base<'time'>(sum.least + one.least),
      likely: base<'time'>(sum.likely + one.likely),
      most: base<'time'>(sum.most + one.most),
    }),
    noTime,
  );
}
