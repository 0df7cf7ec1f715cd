import { notChecked } from '../../checks/index.ts';
import { helperWords, secondTechnicianWords } from '../../job/index.ts';
import type { Guide } from '../../model/guide.ts';
import type { Plan } from '../../model/job.ts';
import type { Schedule } from '../../model/schedule.ts';
import type { When } from '../../model/when.ts';
import { formatLabour } from '../../trade/labour.ts';
import { formatEstimate, formatMinutes, formatRun } from '../../units/estimate.ts';
import { base } from '../../units/quantity.ts';
import { type GuideContext, shownStep, stepRef } from '../frame/context.ts';
import { always, shownWhen, varying } from '../frame/plans.ts';
import type { StepRef } from '../frame/shared-views.ts';
import type { GlanceRow } from '../guide/guide-views.ts';
import { notCheckedWords } from './not-checked.ts';
import { averageWords, crewWords } from './schedule.ts';

type TextOf = (plan: Plan) => string | null;

/** What a row says of a plan; rows that say nothing of any plan are left out. */
interface Row {
  readonly text: TextOf;
  readonly more?: TextOf;
  readonly steps?: readonly StepRef[];
}

/** Hands-on time, elapsed time, labour, the second person and waiting, told apart by build where they differ. */
export function glanceRows(context: GuideContext, guide: Guide): readonly GlanceRow[] {
  const row = (label: string, { text, more = () => null, steps = [] }: Row): GlanceRow => ({
    label,
    lines: varying(context, text),
    more: varying(context, more),
    steps,
  });
  const crews = [...new Set(context.job.plans.flatMap((plan) => plan.schedules.map(({ crew }) => crew)))];
  return [
    row('Hands-on', {
      text: ({ time }) => formatEstimate(time.job),
      more: ofSchedule(1, ({ handsOn }) => averageWords(handsOn)),
    }),
    ...crews.map((crew) => row(`Elapsed, ${crewWords(crew).toLowerCase()}`, elapsed(crew))),
    row('Labour', {
      text: ofSchedule(1, ({ labour }) => formatLabour(labour)),
      more: ofSchedule(1, ({ tasks }) =>
        tasks.some(({ people }) => people > 1) ? 'everybody’s time' : null,
      ),
    }),
    row('Second person', {
      text: ({ time }) => (time.helper.most > 0 ? formatEstimate(time.helper) : 'not needed'),
      steps: shared(context),
    }),
    row('Waiting', {
      text: ({ time }) => (time.waiting > 0 ? formatMinutes(base<'time'>(time.waiting)) : 'none'),
      more: ({ time, schedules }) =>
        schedules.some(({ elapsed: { mean } }) => mean < time.waiting) ? 'some of it at the same time' : null,
    }),
    notCheckedRow(guide, context),
  ].filter(({ lines }) => lines.length > 0);
}

/** What the checker could not judge: said, so that nobody takes it for sound. */
function notCheckedRow(guide: Guide, context: GuideContext): GlanceRow {
  const lines = notChecked(guide).map((one) => {
    const all: When = { kind: 'and', of: one.whens, at: guide.title.at };
    const text = notCheckedWords(one, guide);
    return { text, ...(one.whens.length > 0 ? shownWhen(context, { value: all }) : always) };
  });
  return { label: 'Not checked', lines, more: [], steps: [] };
}

/** From the start to the end, when more hands are needed, and whether a second technician is worth it. */
function elapsed(crew: number): Row {
  return {
    text: ofSchedule(crew, (schedule) => formatRun(schedule.elapsed.mean)),
    more: (plan) => {
      const helpers = ofSchedule(crew, helperWords)(plan) ?? '';
      const gain = crew === 2 ? secondTechnicianWords(plan.schedules) : '';
      return [gain, helpers].filter((words) => words !== '').join('. ') || null;
    },
  };
}

function ofSchedule(crew: number, textOf: (schedule: Schedule) => string | null): TextOf {
  return ({ schedules }) => {
    const schedule = schedules.find((one) => one.crew === crew);
    return schedule ? textOf(schedule) : null;
  };
}

/** The steps that need a second pair of hands. */
function shared(context: GuideContext): readonly StepRef[] {
  return [...context.steps.values()].flatMap((numbered) => {
    const ref = numbered.step.people > 1 ? stepRef(context, numbered.step.id) : null;
    return ref ? [{ ...ref, ...shownStep(context, numbered) }] : [];
  });
}
