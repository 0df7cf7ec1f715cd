import type { Guide, Step } from '../model/guide.ts';
import type { VisitWork } from '../model/visit.ts';
import type { Build } from '../model/when.ts';
import { touches, touchOf } from './actions/touch.ts';
import { productDemands } from './drying.ts';

/** A step that a plan carries out. */
export interface DoneStep {
  readonly section: string;
  readonly step: Step;
  /** Whether it stands for a proof that takes time: it has no number. */
  readonly isProof?: boolean;
}

/** For each step of a plan, the earlier steps that must come first, each with the minutes to wait after it. */
export type Precedence = readonly ReadonlyMap<number, number>[];

/**
 * What must come before what in a plan; everything that reorders work asks here. The written order binds, except
 * that a step marked `any-order` is free within its section as far as the ledger, which sees what steps have their
 * hands on, and its own `after=` allow. A wait holds up what follows; where its step sets a condition, the wait holds
 * up only what needs the condition, and where it puts on what dries or cures, only what must not come before that.
 * Two sides of one step are free of each other. In a visit, steps of different guides are free of each other in the
 * same way: no author has written them in one order.
 *
 * @param asStated with the waits that the guide states, and not with the times of its products
 */
export function precedenceOf(
  guide: Guide,
  build: Build,
  done: readonly DoneStep[],
  asStated = false,
): Precedence {
  const steps = done.map(({ step }) => step);
  const demands = productDemands(guide, build, steps).filter(({ kind }) => kind !== 'open-time');
  const touched = done.map(({ step }) => touchOf(step, guide, build));
  return done.map(({ section, step }, place) => {
    const links = new Map<number, number>();
    for (const [before, earlier] of done.slice(0, place).entries()) {
      const [one, other] = [touched[before], touched[place]];
      if (!one || !other) continue;
      const freedom = freedomBetween({ section, step }, earlier, guide);
      const asked = demands.filter(({ from, to }) => from === before && to === place);
      const isLinked = asked.length > 0 || step.after.some(({ value }) => value === earlier.step.id);
      // Sealant of one guide on its own part is nothing to the other guide, whoever's is named first.
      const alike = freedom !== 'of two guides';
      if (freedom !== 'bound' && !isLinked && !touches(one, other, alike)) continue;
      const wait = earlier.step.wait?.value ?? 0;
      const carried = one.sets.size > 0 || demands.some(({ from }) => from === before);
      const held =
        !carried || asked.length > 0 || [...one.sets].some((condition) => other.needs.has(condition));
      const times = asStated ? [] : asked.map(({ time }) => Number(time.base));
      links.set(before, Math.max(held ? wait : 0, ...times));
    }
    return links;
  });
}

/** Why no author binds the order of two steps: one of a section is marked, or they are of different guides of a visit. */
function freedomBetween(
  one: DoneStep,
  other: DoneStep,
  { visit }: Guide,
): 'bound' | 'marked' | 'of two guides' {
  const [work, others] = [workIn(visit, one), workIn(visit, other)];
  if (work && others && !work.guides.some((guide) => others.guides.includes(guide))) return 'of two guides';
  const isOneSection = (work?.section ?? one.section) === (others?.section ?? other.section);
  return isOneSection && (one.step.anyOrder || other.step.anyOrder) ? 'marked' : 'bound';
}

/** Whose work a step of a visit is; a proof is that of its section. */
function workIn(visit: Guide['visit'], { section, step }: DoneStep): VisitWork | undefined {
  return visit?.steps.get(step.id) ?? visit?.sections.get(section);
}

/** Leaves out each link that a step between the two stands for, with as long a wait. */
export function withoutDetours(links: Precedence): Precedence {
  return links.map((own) => {
    // The step just before stands for most of them.
    const nearestFirst = [...own.keys()].reverse();
    const isDetour = (before: number, lag: number) =>
      nearestFirst.some((between) => (links[between]?.get(before) ?? -1) >= lag);
    return new Map([...own].filter(([before, lag]) => !isDetour(before, lag)));
  });
}

/**
 * Whether a step of a plan that is marked `any-order` may change places with the step before it, and with the one
 * after it, in its section.
 */
export function freedomOf(
  place: number,
  done: readonly DoneStep[],
  links: Precedence,
): { readonly before: boolean; readonly after: boolean } {
  const own = done[place];
  const isFree = (first: number, second: number) =>
    own?.step.anyOrder === true &&
    done[first]?.section === done[second]?.section &&
    links[second] !== undefined &&
    first >= 0 &&
    !links[second].has(first);
  return { before: isFree(place - 1, place), after: isFree(place, place + 1) };
}
