import type { Guide, Step } from '../../model/guide.ts';
import type { Build } from '../../model/when.ts';
import { expectation } from '../../trade/labour.ts';
import type { Activity, Link } from './activity.ts';
import { touches, touchOf } from './touch.ts';

/** A step that a plan carries out. */
export interface DoneStep {
  readonly section: string;
  readonly step: Step;
}

/** A step, or one side of it, with what must come before it. */
export interface StepActivity extends Activity {
  readonly step: Step;
  /** The step's number in the plan. */
  readonly number: number;
  readonly side: 'left' | 'right' | null;
}

/**
 * A plan's steps as activities. The written order binds, except between the two sides of a step that is done on
 * each, and for a step that may be done in any order: that one is free within its section, as far as nothing it
 * handles is handled before or after it. A wait holds up what follows; where its step sets a condition, the wait
 * holds up only what needs the condition.
 */
export function networkOf(guide: Guide, build: Build, done: readonly DoneStep[]): readonly StepActivity[] {
  const touched = done.map(({ step }) => touchOf(step, guide, build));
  const activities: StepActivity[] = [];
  const first: number[] = [];
  done.forEach(({ section, step }, place) => {
    first.push(activities.length);
    const after = done.slice(0, place).flatMap((earlier, before): Link[] => {
      const [one, other] = [touched[before], touched[place]];
      if (!one || !other) return [];
      const isFree = section === earlier.section && (step.anyOrder || earlier.step.anyOrder);
      if (isFree && !touches(one, other, guide)) return [];
      const carried = one.sets.size > 0;
      const held = !carried || [...one.sets].some((condition) => other.needs.has(condition));
      const lag = held ? waitOf(earlier.step) : 0;
      return sidesOf(earlier.step).map((_, side) => ({ index: (first[before] ?? 0) + side, lag }));
    });
    for (const side of sidesOf(step)) {
      activities.push({
        step,
        number: place + 1,
        side,
        duration: step.time ? seconds(expectation(step.time.value).mean) : 0,
        people: step.people,
        after,
        wait: waitOf(step),
      });
    }
  });
  return activities;
}

function sidesOf(step: Step): readonly ('left' | 'right' | null)[] {
  return step.side?.value === 'each' ? ['left', 'right'] : [null];
}

function waitOf(step: Step): number {
  return seconds(step.wait?.value ?? 0);
}

function seconds(minutes: number): number {
  return Math.round(minutes * 60);
}
