import { anyTraitsInWords, traitsOf, whenInWords } from '../../job/builds/build-words.ts';
import { holds } from '../../job/builds/when.ts';
import type { Guide } from '../../model/guide.ts';
import type { Job, Plan } from '../../model/job.ts';
import type { When } from '../../model/when.ts';
import type { Shown, VaryingView } from './shared-views.ts';

/**
 * What it takes to say for which builds something stands. A page without a job (a platform's) has no plans;
 * what is conditional there is told in words alone.
 */
export interface Planned {
  readonly guide: Pick<Guide, 'builds'>;
  readonly job: Pick<Job, 'plans' | 'decidingOptions'>;
}

/** Stands for every build. */
export const always: Shown = { plans: null, only: null };

/** For which plans a condition holds, told in the author's own logic; `null` is no condition. */
export function shownWhen({ guide, job }: Planned, when: { readonly value: When } | null): Shown {
  if (when === null) return always;
  const plans = job.plans.filter((plan) => plan.builds.some((build) => holds(when.value, build)));
  if (plans.length === job.plans.length && plans.length > 0) return always;
  return { plans: positions(plans), only: whenInWords(when.value, guide.builds.options) };
}

/** For which plans something computed stands, told by the options that set these plans apart. */
export function shownIn({ guide, job }: Planned, plans: readonly Plan[]): Shown {
  const others = job.plans.filter((plan) => !plans.includes(plan));
  if (others.length === 0) return always;
  const options = guide.builds.options.filter((option) => job.decidingOptions.includes(option.id));
  const traits = traitsOf(buildsOf(plans), buildsOf(others), options);
  return { plans: positions(plans), only: anyTraitsInWords(traits) };
}

/** A text worked out for each plan, with equal ones told once; `null` where a plan has none. */
export function varying(planned: Planned, textOf: (plan: Plan) => string | null): readonly VaryingView[] {
  const byText = new Map<string, Plan[]>();
  for (const plan of planned.job.plans) {
    const text = textOf(plan);
    if (text !== null) byText.set(text, [...(byText.get(text) ?? []), plan]);
  }
  return [...byText].map(([text, plans]) => ({ text, ...shownIn(planned, plans) }));
}

/** Rows of all plans, those that are alike in several plans once, in the order in which they first come. */
export function sharedRows<R>(planned: Planned, rowsOf: (plan: Plan) => readonly R[]) {
  const byText = new Map<string, { readonly row: R; readonly plans: Plan[] }>();
  for (const plan of planned.job.plans) {
    for (const row of rowsOf(plan)) {
      const text = JSON.stringify(row);
      const found = byText.get(text);
      if (found) found.plans.push(plan);
      else byText.set(text, { row, plans: [plan] });
    }
  }
  const all = planned.job.plans.length;
  return [...byText.values()].map(({ row, plans }) => ({
    row,
    shown: plans.length === all ? always : shownIn(planned, plans),
  }));
}

function positions(plans: readonly Plan[]): string {
  return plans.map((plan) => plan.index).join(' ');
}

function buildsOf(plans: readonly Plan[]) {
  return plans.flatMap((plan) => plan.builds);
}
