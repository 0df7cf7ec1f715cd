import type { Block } from '../../model/block.ts';
import type { Guide, Step } from '../../model/guide.ts';
import type { Action, Ref, Verb } from '../../model/inline.ts';
import type { Item, Side } from '../../model/item.ts';
import type { PlayedAction } from '../../model/violation.ts';
import type { Build, When } from '../../model/when.ts';
import type { Span } from '../../source/span.ts';
import { actionRule, targetKinds } from '../actions/actions.ts';
import { ownPlace } from '../actions/own-place.ts';
import { findTarget, whensOfTarget } from '../actions/target.ts';
import { actionsOf, placedIn, stepWhens } from '../actions/walk.ts';
import { holds, optionsIn, whenKey } from '../builds/when.ts';
import { type Lot, lotsOf } from './lot.ts';
import { everyPlan, type MembersOf, membership, noPlan, type PlanSet, plansWhere } from './plan-set.ts';
import { sharesSide } from './shares-side.ts';

/** What is judged of a step. */
export type PlayedStep = Pick<Step, 'id' | 'side' | 'unknown'>;

/** One action on one side of the vehicle, or on all that it names. */
export interface Deed {
  readonly action: PlayedAction;
  readonly step: PlayedStep | null;
  readonly lots: readonly Lot[];
  /** What something is put on, or the panel that is cut: it is worked on without being named by the action. */
  readonly onto: readonly Lot[];
  /** The side on which it is made, in a step that is done on each; else `null`. */
  readonly side: 'left' | 'right' | null;
  /** The plans in which it is made. */
  readonly set: PlanSet;
  /** Whether all that comes before it is known, so that it can be judged. */
  readonly known: boolean;
  /** The inspections on whose outcome it hangs, apart from those on which its step hangs. */
  readonly hangsOn: readonly Lot[];
}

/** A step as it is played. */
export interface Scene {
  readonly step: PlayedStep | null;
  /** The plans in which it is done. */
  readonly set: PlanSet;
  /** Conditions and measures that it asks for, and where. */
  readonly needs: readonly { readonly lot: Lot; readonly at: Span }[];
  readonly moves: readonly Deed[];
  /** The plans in which the job ends with it. */
  readonly ends: PlanSet;
  /** Whether the step is done with its last move: one that is interrupted is played in several scenes. */
  readonly whole: boolean;
  /** Whether other work comes after it; false for the last scene of a step that is still being done. */
  readonly left: boolean;
  /** Whether all that comes before it is known. */
  readonly known: boolean;
}

/** A guide made ready for playing: ids looked up and conditions worked out once, for all plans. */
export interface Script {
  /** How many plans are played at once. */
  readonly plans: number;
  readonly membersOf: MembersOf;
  readonly lots: readonly Lot[];
  /** As the guide has them. */
  readonly scenes: readonly Scene[];
  /** For each lot, the plans that have it. */
  readonly lotSets: readonly PlanSet[];
  /** For the lot of each template, the plans in which it has an outline to cut; no plans for other lots. */
  readonly outlined: readonly PlanSet[];
  /** For each lot, the conditions and measures that its item asks for. */
  readonly lotNeeds: readonly (readonly Lot[])[];
  /** The conditions and measures that a step or an item asks for. */
  readonly needed: ReadonlySet<Lot>;
  /** The first place from which it is not known what is done; `null` where all is. */
  readonly halt: Span | null;
}

/** Makes a guide ready for playing; each build stands for a plan. Beyond a gap in the work nothing is known. */
export function scriptOf(guide: Guide, builds: readonly Build[], gap: Span | null): Script {
  const lots = lotsOf(guide);
  const byId = new Map<string, Lot[]>();
  for (const one of lots) byId.set(one.id, [...(byId.get(one.id) ?? []), one]);
  const setOf = planSets(builds);
  const needsOf = (refs: readonly Ref[]) =>
    refs.flatMap(({ value, at }) => (byId.get(value) ?? []).map((lot) => ({ lot, at })));
  let halt: Span | null = null;
  /** The plans in which an earlier step has ended the job. */
  let ended = noPlan;
  const inspected = (whens: readonly When[]) =>
    [...new Set(whens.flatMap(optionsIn))].flatMap((id) =>
      (byId.get(id) ?? []).filter(({ thing }) => thing?.kind === 'inspection'),
    );
  const movesOf = (step: Step | null, placed: ReturnType<typeof actionsOf>): Deed[] =>
    passesOf(step).flatMap((pass) =>
      placed.flatMap(({ node, whens }) => {
        if (!isUnderstood(node, guide)) {
          halt ??= node.at;
          return [];
        }
        const lots = (byId.get(node.target.value) ?? []).filter((lot) => isReached(lot, pass, node.verb));
        const outer = step ? stepWhens(step) : [];
        const hangsOn = inspected(whens.filter((when) => !outer.includes(when)));
        const side = step?.side?.value === 'each' ? pass : null;
        const set = setOf(whens) & ~ended;
        const onto = workedOn(node, guide).flatMap((id) =>
          (byId.get(id) ?? []).filter(
            (one) => isReached(one, pass, node.verb) && lots.some((lot) => sharesSide(lot.side, one.side)),
          ),
        );
        return [{ action: node, step, lots, onto, side, set, known: halt === null, hangsOn }];
      }),
    );
  const reach = (place: Span): boolean => {
    if (gap && place.start >= gap.start) halt ??= gap;
    return halt === null;
  };
  const sceneOf = (step: Step): Scene => {
    const set = setOf(stepWhens(step)) & ~ended;
    const hangs = inspected(stepWhens(step)).map((lot) => ({ lot, at: step.when?.at ?? step.at }));
    const scene = {
      step,
      known: reach(ownPlace(step, guide)),
      set,
      needs: [...needsOf(step.needs), ...hangs],
      moves: movesOf(step, actionsOf(step)),
      whole: true,
      left: true,
      ends: step.stop ? set : noPlan,
    };
    ended |= scene.ends;
    return scene;
  };
  /** What a proof within a step measures is done with the step; what it needs is asked for all the same. */
  const proofOf = (step: Step | null) => (block: Block) => {
    if (block.type !== 'prove') return [];
    const measured = placedIn(step ? [] : [block]).flatMap(({ node, block, whens }) =>
      node.type === 'action' && node.verb === 'measure' ? [{ node, block, whens }] : [],
    );
    const whens = [...(step ? stepWhens(step) : []), ...(block.when ? [block.when.value] : [])];
    const known = reach(step ? ownPlace(step, guide) : block.at);
    return [
      {
        step: null,
        known,
        set: setOf(whens) & ~ended,
        needs: needsOf(block.needs),
        moves: movesOf(null, measured),
        whole: true,
        left: true,
        ends: noPlan,
      },
    ];
  };
  const scenes: Scene[] = guide.sections.flatMap((section) => [
    ...section.intro.flatMap(proofOf(null)),
    ...section.steps.flatMap((step) => [sceneOf(step), ...step.blocks.flatMap(proofOf(step))]),
  ]);
  // What is missing at the end leaves the end unknown.
  if (gap) halt ??= gap;
  const lotNeeds = lots.map(({ id, thing }) =>
    thing ? needsOf(guide.items.get(id)?.needs ?? []).map(({ lot }) => lot) : [],
  );
  return {
    plans: builds.length,
    membersOf: membership(builds.length),
    lots,
    scenes,
    lotSets: lots.map(({ id }) => {
      const target = findTarget(guide, id);
      return setOf(target ? whensOfTarget(guide, target).map(({ value }) => value) : []);
    }),
    outlined: lots.map(({ cut }) => {
      const outlines = cut?.whole ? guide.templates.get(cut.template)?.outlines : undefined;
      return outlines?.reduce((set, { when }) => set | setOf(when ? [when.value] : []), noPlan) ?? noPlan;
    }),
    lotNeeds,
    needed: new Set([...scenes.map((scene) => scene.needs.map(({ lot }) => lot)), ...lotNeeds].flat()),
    halt,
  };
}

/**
 * Whether an action reaches a lot on a pass over one side, or over all. What is put on for a while is put on
 * there, and comes off from wherever it is.
 */
function isReached({ thing, side }: Lot, pass: 'left' | 'right' | null, verb: Verb): boolean {
  if (thing?.kind === 'supply' && verb === 'apply') return !thing.temporary || side === pass;
  return pass === null || side === null || side === pass;
}

/** What an action works on besides its target: that on which a supply is put, and the panel that is cut or drilled. */
function workedOn({ verb, target, on }: Action, guide: Guide): readonly string[] {
  if (verb === 'apply') return on.map(({ value }) => value);
  const found = verb === 'cut' || verb === 'drill' ? findTarget(guide, target.value) : null;
  return found && found.kind !== 'item' && found.template.panel ? [found.template.panel.value] : [];
}

/** A step that is done on each side is played on the left, then on the right. */
function passesOf(step: Step | null): readonly ('left' | 'right' | null)[] {
  const side: Side | null = step?.side?.value ?? null;
  const sides = side === 'each' ? (['left', 'right'] as const) : [side];
  return sides.flatMap((one) => Array.from({ length: step?.times?.value ?? 1 }, () => one));
}

/** Whether an action names something that it can be done to; where it does not, another rule has told so. */
function isUnderstood(action: Action, guide: Guide): boolean {
  if (action.unknown.has('when')) return false;
  const target = findTarget(guide, action.target.value);
  if (!target) return false;
  const kinds = target.kind === 'item' ? kindsOf(target.item) : [target.kind];
  return actionRule(action.verb).on.some((kind) => kinds.includes(kind));
}

function kindsOf(item: Item) {
  return item.unknown.has('when') ? [] : targetKinds(item);
}

/** Works out the plans in which some conditions hold, each wording once. */
function planSets(builds: readonly Build[]): (whens: readonly When[]) => PlanSet {
  const every = everyPlan(builds.length);
  const known = new Map<string, PlanSet>();
  const setOf = (when: When): PlanSet => {
    const key = whenKey(when);
    const set = known.get(key) ?? plansWhere(builds.length, (plan) => holds(when, builds[plan] ?? {}));
    known.set(key, set);
    return set;
  };
  return (whens) => whens.reduce((set, when) => set & setOf(when), every);
}
