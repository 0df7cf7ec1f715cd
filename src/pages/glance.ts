import type { Plan } from '../model/job.ts';
import { formatLabour, tenthsOfAnHour } from '../trade/labour.ts';
import { formatEstimate, formatMinutes } from '../units/estimate.ts';
import { base } from '../units/quantity.ts';
import { type GuideContext, shownStep, stepRef } from './context.ts';
import type { GlanceRow } from './guide-views.ts';
import { varying } from './plans.ts';
import type { StepRef } from './shared-views.ts';

/** Hands-on time, labour, the second person and waiting, told apart by build where they differ. */
export function glanceRows(context: GuideContext): readonly GlanceRow[] {
  const row = (label: string, textOf: (plan: Plan) => string | null, steps: readonly StepRef[] = []) => ({
    label,
    lines: varying(context, textOf),
    steps,
  });
  return [
    row('Hands-on', ({ time }) => formatEstimate(time.job)),
    row('Labour', ({ time }) => `${formatLabour(tenthsOfAnHour([time.job.likely]))}, likely`),
    row(
      'Second person',
      ({ time }) => (time.helper.most > 0 ? formatEstimate(time.helper) : 'not needed'),
      shared(context),
    ),
    row('Waiting', ({ time }) => (time.waiting > 0 ? formatMinutes(base<'time'>(time.waiting)) : 'none')),
  ];
}

/** The steps that need a second pair of hands. */
function shared(context: GuideContext): readonly StepRef[] {
  return [...context.steps.values()].flatMap((numbered) => {
    const ref = numbered.step.people > 1 ? stepRef(context, numbered.step.id) : null;
    return ref ? [{ ...ref, ...shownStep(context, numbered) }] : [];
  });
}
