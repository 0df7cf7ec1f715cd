import type { Guide, Step } from '../../model/guide.ts';
import type { Build } from '../../model/when.ts';
import { expectation } from '../../trade/labour.ts';
import { usesOfStep } from '../actions/uses.ts';
import { type DoneStep, type Precedence, withoutDetours } from '../precedence.ts';
import { sideTime } from '../time.ts';
import type { Activity, ToolInUse } from './activity.ts';

/** A step, or one side of it, with what must come before it. */
export interface StepActivity extends Activity {
  readonly step: Step;
  /** The step's number in the plan; `null` for a proof. */
  readonly number: number | null;
  readonly side: 'left' | 'right' | null;
}

/**
 * A plan's steps as activities. Two that use one tool are never done at the same time, unless more of it are at
 * hand; otherwise the precedence binds.
 */
export function networkOf(
  guide: Guide,
  build: Build,
  done: readonly DoneStep[],
  precedence: Precedence,
): readonly StepActivity[] {
  const links = withoutDetours(precedence);
  const activities: StepActivity[] = [];
  const first: number[] = [];
  let steps = 0;
  done.forEach(({ step, isProof }, place) => {
    if (!isProof) steps += 1;
    first.push(activities.length);
    const after = [...(links[place] ?? [])].flatMap(([before, lag]) =>
      sidesOf(done[before]?.step).map((_, side) => ({
        index: (first[before] ?? 0) + side,
        lag: seconds(lag),
      })),
    );
    const time = sideTime(step);
    const duration = time ? seconds(expectation(time).mean) : 0;
    const tools = duration > 0 ? toolsInUse(step, guide, build) : [];
    for (const side of sidesOf(step)) {
      activities.push({
        step,
        number: isProof ? null : steps,
        side,
        duration,
        tools,
        people: step.people,
        after,
        wait: waitOf(step),
      });
    }
  });
  return activities;
}

/** The tools that a step names or that its actions take. What serves as well is not counted in their stead. */
function toolsInUse(step: Step, guide: Guide, build: Build): readonly ToolInUse[] {
  const used = new Set(usesOfStep(step, guide, build).map(({ item }) => item));
  return [...used].flatMap((id) => {
    const item = guide.items.get(id);
    return item?.kind === 'tool' ? [{ id, atHand: item.atHand }] : [];
  });
}

function sidesOf(step: Step | undefined): readonly ('left' | 'right' | null)[] {
  return step?.side?.value === 'each' ? ['left', 'right'] : [null];
}

function waitOf(step: Step): number {
  return seconds(step.wait?.value ?? 0);
}

function seconds(minutes: number): number {
  return Math.round(minutes * 60);
}
