import type { Guide, Step } from '../../model/guide.ts';
import type { Build } from '../../model/when.ts';
import { expectation } from '../../trade/labour.ts';
import { usesOfStep } from '../uses.ts';
import type { Activity, ToolInUse } from './activity.ts';
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
 * A plan's steps as activities. Two that use one tool are never done at the same time, unless more of it are at
 * hand. The written order binds, except between the two sides of a step that is done on
 * each, and for a step that may be done in any order: that one is free within its section, as far as nothing it
 * handles is handled before or after it. A wait holds up what follows; where its step sets a condition, the wait
 * holds up only what needs the condition.
 */
export function networkOf(guide: Guide, build: Build, done: readonly DoneStep[]): readonly StepActivity[] {
  const links = withoutDetours(stepLinks(guide, build, done));
  const activities: StepActivity[] = [];
  const first: number[] = [];
  done.forEach(({ step }, place) => {
    first.push(activities.length);
    const after = [...(links[place] ?? [])].flatMap(([before, lag]) =>
      sidesOf(done[before]?.step).map((_, side) => ({ index: (first[before] ?? 0) + side, lag })),
    );
    const duration = step.time ? seconds(expectation(step.time.value).mean) : 0;
    const tools = duration > 0 ? toolsInUse(step, guide, build) : [];
    for (const side of sidesOf(step)) {
      activities.push({
        step,
        number: place + 1,
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

/** For each step, the earlier steps that must come first, each with the time to wait after it. */
type StepLinks = readonly ReadonlyMap<number, number>[];

function stepLinks(guide: Guide, build: Build, done: readonly DoneStep[]): StepLinks {
  const touched = done.map(({ step }) => touchOf(step, guide, build));
  return done.map(({ section, step }, place) => {
    const links = new Map<number, number>();
    for (const [before, earlier] of done.slice(0, place).entries()) {
      const [one, other] = [touched[before], touched[place]];
      if (!one || !other) continue;
      const isFree = section === earlier.section && (step.anyOrder || earlier.step.anyOrder);
      if (isFree && !touches(one, other, guide)) continue;
      const carried = one.sets.size > 0;
      const held = !carried || [...one.sets].some((condition) => other.needs.has(condition));
      links.set(before, held ? waitOf(earlier.step) : 0);
    }
    return links;
  });
}

/** Leaves out each link that a step between the two stands for, with as long a wait. */
function withoutDetours(links: StepLinks): StepLinks {
  return links.map((own) => {
    // The step just before stands for most of them.
    const nearestFirst = [...own.keys()].reverse();
    const isDetour = (before: number, lag: number) =>
      nearestFirst.some((between) => (links[between]?.get(before) ?? -1) >= lag);
    return new Map([...own].filter(([before, lag]) => !isDetour(before, lag)));
  });
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
