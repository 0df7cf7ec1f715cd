import type { Verb } from '../../model/inline.ts';
import type { ItemKind, Side } from '../../model/item.ts';
import type { PlayedAction, StateName } from '../../model/violation.ts';
import type { Span } from '../../source/span.ts';
import { base, type Dimension } from '../../units/quantity.ts';
import type { Lot } from './lot.ts';
import { everyPlan, type MembersOf, membership, noPlan, type PlanSet } from './plan-set.ts';
import type { Deed, PlayedStep, Scene, Script } from './script.ts';
import type { Thing } from './thing.ts';

/**
 * What the dry run plays, as plain data that a guide publishes: whoever has it can play the guide in any order and
 * judge it as the checker does. Lots and actions are named by their positions. What is left out is false, empty or as
 * usual; `in` lists the plans in which something stands, and is left out where it stands in all.
 */
export interface LedgerData {
  readonly lots: readonly LotData[];
  readonly actions: readonly ActionData[];
  readonly scenes: readonly SceneData[];
}

type OneSide = 'left' | 'right';

/** All pieces of one item, template or hole on one side. */
interface LotData {
  readonly id: string;
  readonly side?: OneSide | undefined;
  readonly sideWritten?: Side | undefined;
  readonly count: number;
  readonly handled: number;
  readonly start: StateName;
  readonly thing?: ThingData | undefined;
  /** Of a template or a hole: the template, and whether it is cut as a whole. */
  readonly cut?: { readonly template: string; readonly whole: boolean } | undefined;
  readonly holds?: readonly number[] | undefined;
  readonly heldBy?: readonly number[] | undefined;
  readonly on?: readonly number[] | undefined;
  readonly plugs?: readonly number[] | undefined;
  readonly covers?: readonly number[] | undefined;
  readonly coveredBy?: readonly number[] | undefined;
  readonly replaces?: readonly number[] | undefined;
  readonly replacedBy?: readonly number[] | undefined;
  readonly needs?: readonly number[] | undefined;
  readonly in?: readonly number[] | undefined;
  /** Of a template: the plans in which it has an outline to cut. */
  readonly outlined?: readonly number[] | undefined;
}

/** What the judge knows of an item. */
interface ThingData {
  readonly kind: ItemKind;
  readonly fixing?: boolean | undefined;
  readonly once?: boolean | undefined;
  readonly torqued?: boolean | undefined;
  readonly threaded?: boolean | undefined;
  readonly freeWhenLoosened?: boolean | undefined;
  readonly oneByOne?: boolean | undefined;
  readonly stack?: readonly string[] | undefined;
  readonly coat?: string | undefined;
  readonly immobile?: boolean | undefined;
  readonly temporary?: boolean | undefined;
  readonly stays?: boolean | undefined;
  readonly quantity?: { readonly dimension: Dimension; readonly base: number } | undefined;
  readonly spare?: number | undefined;
  readonly chosen?: boolean | undefined;
}

/** An action as it is written, once for both of its sides. */
interface ActionData {
  readonly verb: Verb;
  readonly target: string;
  readonly trial?: string | undefined;
  readonly amount?: { readonly dimension: Dimension; readonly base: number } | undefined;
}

/** A step or a proof, in the order of the guide. */
interface SceneData {
  /** `null` for a proof. */
  readonly step: { readonly id: string; readonly side?: Side | undefined } | null;
  readonly needs?: readonly number[] | undefined;
  readonly moves: readonly MoveData[];
  /** The plans in which the job ends with it. */
  readonly ends?: readonly number[] | undefined;
  readonly in?: readonly number[] | undefined;
}

/** An action on one side, or on all that it names. */
interface MoveData {
  readonly action: number;
  /** The side on which it is made, in a step that is done on each. */
  readonly side?: OneSide | undefined;
  readonly lots: readonly number[];
  /** What something is put on, or the panel that is cut. */
  readonly onto?: readonly number[] | undefined;
  /** The inspections on whose outcome it hangs, apart from those on which its step hangs. */
  readonly hangsOn?: readonly number[] | undefined;
  readonly in?: readonly number[] | undefined;
}

/** Each action of a script once, in the order in which it is first done. */
export function actionsIn({ scenes }: Script): readonly PlayedAction[] {
  return [...new Set(scenes.flatMap(({ moves }) => moves.map(({ action }) => action)))];
}

/** A script as plain data. */
export function portable(script: Script): LedgerData {
  const actions = actionsIn(script);
  const standing = (set: PlanSet) => plansOf(set, script);
  return {
    lots: script.lots.map((lot) => lotData(lot, script)),
    actions: actions.map(({ verb, target, trial, amount }) => ({
      verb,
      target: target.value,
      trial: trial?.value,
      amount: amount ? { dimension: amount.value.dimension, base: Number(amount.value.base) } : undefined,
    })),
    scenes: script.scenes.map(({ step, needs, moves, set, ends }) => ({
      step: step && { id: step.id, side: step.side?.value },
      needs: some(needs.map(({ lot }) => lot.index)),
      moves: moves.map((move) => ({
        action: actions.indexOf(move.action),
        side: move.side ?? undefined,
        lots: move.lots.map(({ index }) => index),
        onto: some(move.onto.map(({ index }) => index)),
        hangsOn: some(move.hangsOn.map(({ index }) => index)),
        in: standing(move.set),
      })),
      ends: ends === noPlan ? undefined : members(ends, script.membersOf),
      in: standing(set),
    })),
  };
}

function lotData(lot: Lot, script: Script): LotData {
  const { id, side, sideWritten, count, handled, start, thing, cut } = lot;
  const outlined = script.outlined[lot.index] ?? noPlan;
  return {
    id,
    side: side ?? undefined,
    sideWritten: sideWritten ?? undefined,
    count,
    handled,
    start,
    thing: thing ? thingData(thing) : undefined,
    cut: cut ? { template: cut.template, whole: cut.whole } : undefined,
    holds: some(lot.holds),
    heldBy: some(lot.heldBy),
    on: some(lot.on),
    plugs: some(lot.plugs),
    covers: some(lot.covers),
    coveredBy: some(lot.coveredBy),
    replaces: some(lot.replaces),
    replacedBy: some(lot.replacedBy),
    needs: some((script.lotNeeds[lot.index] ?? []).map(({ index }) => index)),
    in: plansOf(script.lotSets[lot.index] ?? noPlan, script),
    outlined: cut?.whole ? members(outlined, script.membersOf) : undefined,
  };
}

function thingData({ kind, stack, coat, quantity, spare, reuse, ...flags }: Thing): ThingData {
  const set = (flag: boolean) => flag || undefined;
  return {
    kind,
    fixing: set(flags.fixing),
    once: set(!reuse),
    torqued: set(flags.torqued),
    threaded: set(flags.threaded),
    freeWhenLoosened: set(flags.freeWhenLoosened),
    oneByOne: set(flags.oneByOne),
    stack: some(stack),
    coat: coat ?? undefined,
    immobile: set(flags.immobile),
    temporary: set(flags.temporary),
    stays: set(flags.stays),
    quantity: quantity ?? undefined,
    spare: spare || undefined,
    chosen: set(flags.chosen),
  };
}

function some<T>(list: readonly T[]): readonly T[] | undefined {
  return list.length > 0 ? list : undefined;
}

function plansOf(set: PlanSet, { plans, membersOf }: Script): readonly number[] | undefined {
  return set === everyPlan(plans) ? undefined : members(set, membersOf);
}

function members(set: PlanSet, membersOf: MembersOf): readonly number[] {
  return membersOf(set).flatMap((isIn, plan) => (isIn ? [plan] : []));
}

/** A place in the data, where a guide has a place in a file: the position of a lot, an action or a scene. */
function placeOf(what: 'lot' | 'action' | 'scene', index: number): Span {
  return { file: what, start: index, end: index };
}

/** The script of one plan, from the data that its guide has published. */
export function scriptFrom(data: LedgerData, plan: number): Script {
  const standing = (list: readonly number[] | undefined): PlanSet =>
    list === undefined || list.includes(plan) ? 1n : noPlan;
  const lots = data.lots.map(lotFrom);
  const at = (indexes: readonly number[] | undefined) =>
    (indexes ?? []).flatMap((index) => lots[index] ?? []);
  const actions = data.actions.map(actionFrom);
  const scenes = data.scenes.map((scene, index): Scene => {
    const step = scene.step && stepFrom(scene.step, index);
    return {
      step,
      set: standing(scene.in),
      needs: at(scene.needs).map((lot) => ({ lot, at: placeOf('scene', index) })),
      moves: scene.moves.flatMap((move): Deed[] => {
        const action = actions[move.action];
        if (!action) return [];
        const { side = null } = move;
        const own = { side, set: standing(move.in), known: true, hangsOn: at(move.hangsOn) };
        return [{ action, step, lots: at(move.lots), onto: at(move.onto), ...own }];
      }),
      whole: true,
      left: true,
      ends: scene.ends?.includes(plan) ? 1n : noPlan,
      known: true,
    };
  });
  const lotNeeds = data.lots.map(({ needs }) => at(needs));
  return {
    plans: 1,
    membersOf: membership(1),
    lots,
    scenes,
    lotSets: data.lots.map((lot) => standing(lot.in)),
    outlined: data.lots.map(({ outlined }) => (outlined?.includes(plan) ? 1n : noPlan)),
    lotNeeds,
    needed: new Set([...scenes.map(({ needs }) => needs.map(({ lot }) => lot)), ...lotNeeds].flat()),
    halt: null,
  };
}

function lotFrom(data: LotData, index: number): Lot {
  const at = placeOf('lot', index);
  const { id, count, handled, start, thing, cut } = data;
  return {
    index,
    id,
    thing: thing ? thingFrom(thing, at) : null,
    cut: cut ? { ...cut, at } : null,
    side: data.side ?? null,
    sideWritten: data.sideWritten ?? null,
    count,
    handled,
    start,
    holds: [...(data.holds ?? [])],
    heldBy: [...(data.heldBy ?? [])],
    on: [...(data.on ?? [])],
    plugs: [...(data.plugs ?? [])],
    covers: [...(data.covers ?? [])],
    coveredBy: [...(data.coveredBy ?? [])],
    replaces: [...(data.replaces ?? [])],
    replacedBy: [...(data.replacedBy ?? [])],
  };
}

function thingFrom(data: ThingData, at: Span): Thing {
  return {
    kind: data.kind,
    at,
    fixing: data.fixing ?? false,
    reuse: !data.once,
    torqued: data.torqued ?? false,
    threaded: data.threaded ?? false,
    freeWhenLoosened: data.freeWhenLoosened ?? false,
    oneByOne: data.oneByOne ?? false,
    stack: data.stack ?? [],
    coat: data.coat ?? null,
    immobile: data.immobile ?? false,
    temporary: data.temporary ?? false,
    stays: data.stays ?? false,
    quantity: data.quantity ?? null,
    spare: data.spare ?? 0,
    chosen: data.chosen ?? false,
    sideKnown: true,
  };
}

function actionFrom({ verb, target, trial, amount }: ActionData, index: number): PlayedAction {
  const at = placeOf('action', index);
  return {
    verb,
    target: { value: target, at },
    trial: trial === undefined ? null : { value: trial, at },
    amount: amount ? { value: { dimension: amount.dimension, base: base(amount.base) }, at } : null,
    at,
  };
}

function stepFrom({ id, side }: NonNullable<SceneData['step']>, index: number): PlayedStep {
  return { id, side: side ? { value: side, at: placeOf('scene', index) } : null, unknown: new Set() };
}
