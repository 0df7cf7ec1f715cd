import { type ProductDemand, precedenceOf, productDemands, sideTime, workOf } from '../../job/index.ts';
import type { Step } from '../../model/guide.ts';
import { base, type Minutes } from '../../units/quantity.ts';
import type { Subject } from '../rule.ts';

/** A demand of a product in a build, with the time that passes for certain by what the guide states. */
interface TimedDemand extends ProductDemand {
  readonly passed: Minutes;
  readonly appliedIn: Step;
}

/**
 * Every demand of the products of a guide, once for each place, in the build that leaves it the least time: steps
 * at their least, one technician, and each wait where the guide states it.
 */
export function timedDemands({ guide, job }: Subject): readonly TimedDemand[] {
  const found = new Map<string, TimedDemand>();
  for (const [build] of job.plans.map(({ builds }) => builds)) {
    if (!build) continue;
    const done = workOf(guide, build, true);
    const steps = done.map(({ step }) => step);
    const demands = productDemands(guide, build, steps);
    if (demands.length === 0 || steps.some(({ unknown }) => unknown.has('wait') || unknown.has('time')))
      continue;
    const { starts, ends } = course(steps, precedenceOf(guide, build, done, true));
    for (const demand of demands) {
      const appliedIn = steps[demand.from];
      if (!appliedIn) continue;
      const passed = demand.from === demand.to ? 0 : (starts[demand.to] ?? 0) - (ends[demand.from] ?? 0);
      const key = `${demand.kind} ${demand.applied.at.start} ${demand.applied.at.file} ${demand.at.file} ${demand.at.start}`;
      const known = found.get(key);
      if (known && known.passed <= passed) continue;
      found.set(key, { ...demand, passed: base<'time'>(passed), appliedIn });
    }
  }
  return [...found.values()];
}

/** When each step begins and ends, one after the other in the written order. */
function course(steps: readonly Step[], links: ReturnType<typeof precedenceOf>) {
  const starts: number[] = [];
  const ends: number[] = [];
  for (const [place, step] of steps.entries()) {
    const after = [...(links[place] ?? [])].map(([before, lag]) => (ends[before] ?? 0) + lag);
    const start = Math.max(0, ends[place - 1] ?? 0, ...after);
    const sides = step.side?.value === 'each' ? 2 : 1;
    starts.push(start);
    ends.push(start + (sideTime(step)?.least ?? 0) * sides);
  }
  return { starts, ends };
}
