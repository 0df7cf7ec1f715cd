import { actionsOf, holds, optionsIn } from '../../job/index.ts';
import type { Step } from '../../model/guide.ts';
import type { InspectionItem } from '../../model/item.ts';
import { type GuideContext, stepRef } from '../frame/context.ts';
import { shownWhen } from '../frame/plans.ts';
import type { StepRef } from '../frame/shared-views.ts';
import type { InspectionView } from './step-views.ts';

/** What a step inspects, with the steps that hang on each outcome. */
export function inspectionsOf(step: Step, context: GuideContext): readonly InspectionView[] {
  return actionsOf(step).flatMap(({ node, whens }) => {
    const item = context.guide.items.get(node.target.value);
    if (item?.kind !== 'inspection') return [];
    const narrowest = whens.at(-1);
    return {
      ...shownWhen(context, narrowest ? { value: narrowest } : item.when),
      id: item.id,
      name: item.noun.label,
      outcomes: item.outcomes.map(({ value }) => ({
        value,
        name: value.replaceAll('-', ' '),
        steps: stepsAfter(item, value, step, context),
      })),
    };
  });
}

/**
 * Where the work goes on: the steps that hang on the finding, or the one that comes next with it. Every build in which
 * a step may be done is tried with this finding in it.
 */
function stepsAfter(
  { id }: InspectionItem,
  outcome: string,
  inspecting: Step,
  context: GuideContext,
): readonly StepRef[] {
  const all = [...context.steps.values()];
  const done = all.filter(({ step: { when }, plans }) =>
    plans.some(({ builds }) =>
      builds.some((build) => build[id] === outcome && (!when || holds(when.value, build))),
    ),
  );
  const hanging = done.filter(({ step: { when } }) => when && optionsIn(when.value).includes(id));
  const place = all.findIndex(({ step }) => step.id === inspecting.id);
  const next = done.filter((one) => all.indexOf(one) > place).slice(0, 1);
  return (hanging.length > 0 ? hanging : next).flatMap(({ step }) => stepRef(context, step.id) ?? []);
}
