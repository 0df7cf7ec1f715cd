import type { Verb } from '../../model/inline.ts';
import type { ItemKind } from '../../model/item.ts';
import type { StateName } from '../../model/violation.ts';
import type { Span } from '../../source/span.ts';
import { actionRule } from '../actions/actions.ts';
import { type Cell, cellsIn, type Fault, type Ledger, lotsAt, plansIn, replacedIn, tell } from './ledger.ts';
import type { Lot } from './lot.ts';
import { fillsPlace, holdingOf, isInPlace, nextState, slidesUnder } from './next-state.ts';
import { noPlan, type PlanSet } from './plan-set.ts';
import type { Deed, Scene } from './script.ts';

/** What is asked of a move before it is made, in the plans in which its lot stands in one way. */
type Judge = (move: Deed, lot: Lot, cell: Cell, ledger: Ledger) => void;

/** What each verb asks for besides the state that it starts from. */
const asks: { readonly [V in Verb]?: readonly Judge[] } = {
  remove: [bondedForGood, free, unplugged, reachable],
  'move-aside': [free, reachable],
  'move-back': [placeFree, reachable],
  refit: [oneTime, placeFree, reachable, somethingToHold, liftedBefore],
  fit: [oneTime, placeFree, reachable, somethingToHold],
  start: [oneTime, placeFree, reachable, somethingToHold],
  tighten: [usedUp, reachable, somethingToHold],
  loosen: [reachable],
  disconnect: [reachable],
  connect: [reachable, somethingToConnect],
  apply: [placeFree, reachable, somethingToHold, ontoReachable],
  'take-off': [offReachable],
  clean: [reachableInPlace],
  route: [outOfBox, reachableInPlace],
  cut: [afterTrial, ontoReachable],
  drill: [afterTrial, ontoReachable],
  bond: [placeFree, reachable, afterTrial, bondedOnce],
  discard: [unplugged],
  'hand-over': [unplugged],
};

/** Holds a move against what the vehicle and the bench allow. */
export function judgeMove(move: Deed, lot: Lot, cell: Cell, ledger: Ledger): void {
  if (!startsWhereItMay(move, lot, cell, ledger)) return;
  for (const ask of asks[move.action.verb] ?? []) ask(move, lot, cell, ledger);
  // A state may end at any time: what it needed may have ended before it.
  if (move.action.verb === 'clear') return;
  for (const need of ledger.script.lotNeeds[lot.index] ?? []) {
    if (need === lot) continue;
    for (const { unmet, set } of unmetIn(need, cell.set, ledger)) {
      tell(ledger, need, fault(move, lot, { ...unmet, item: lot.id }), set);
    }
  }
}

/** The state of the lot is one that the action can start from; a supply may be applied again and again. */
function startsWhereItMay(move: Deed, lot: Lot, cell: Cell, ledger: Ledger): boolean {
  const { from } = actionRule(move.action.verb);
  const { state, last } = cell;
  if (isTakenTwice(move, lot, cell, ledger)) {
    const earlier = last?.action.at ?? null;
    tell(ledger, lot, fault(move, lot, { kind: 'wrong-state', item: lot.id, state, earlier }), cell.set);
    return false;
  }
  if (from.length === 0 || from.includes(state)) return true;
  if (lot.thing?.kind === 'supply' && !lot.thing.temporary) return true;
  // A step done on each side does the same thing twice to what has no sides: once for a supply, and for other
  // things it is told elsewhere that they have none. A second round on one side is another time.
  const isEach = move.step?.side?.value === 'each';
  if (isEach && lot.side === null && last?.action === move.action && last.side !== move.side) return true;
  const earlier = last?.action.at ?? null;
  tell(ledger, lot, fault(move, lot, { kind: 'wrong-state', item: lot.id, state, earlier }), cell.set);
  return false;
}

/** A measure on which something waits is taken twice in one step. */
function isTakenTwice(move: Deed, lot: Lot, { state, last }: Cell, { script }: Ledger): boolean {
  const again = last !== null && last.step === move.step && last.action !== move.action;
  return lot.thing?.kind === 'measure' && state === 'done' && again && script.needed.has(lot);
}

function isThing(lot: Lot): boolean {
  // A supply holds only what the fastener held that it replaces.
  return lot.thing !== null && !lot.thing.fixing && lot.thing.kind !== 'supply';
}

/** Nothing holds what is lifted. */
function free(move: Deed, lot: Lot, { set }: Cell, ledger: Ledger): void {
  if (!isThing(lot)) return;
  for (const by of lotsAt(lot.heldBy, ledger)) {
    const holding = plansIn(by, set, ledger, holdingOf(by));
    blocked('still-held', move, lot, by, holding, ledger);
  }
}

/** Nothing is plugged into what is lifted. */
function unplugged(move: Deed, lot: Lot, { set }: Cell, ledger: Ledger): void {
  for (const by of lotsAt(lot.plugs, ledger)) {
    const mated = plansIn(by, set, ledger, (state) => state === 'mated');
    blocked('still-connected', move, lot, by, mated, ledger);
  }
}

/** Nothing lies over what is worked on. */
function reachable(move: Deed, lot: Lot, { set }: Cell, ledger: Ledger): void {
  for (const by of lotsAt(lot.coveredBy, ledger)) {
    blocked('still-covered', move, lot, by, plansIn(by, set, ledger, fillsPlace), ledger);
  }
}

/** What is cleaned or laid where it sits; on the bench nothing lies over it. */
function reachableInPlace(move: Deed, lot: Lot, cell: Cell, ledger: Ledger): void {
  if (isInPlace(cell.state)) reachable(move, lot, cell, ledger);
}

/** What something is put on, or cut out of, lies open; on the bench nothing lies over it. */
function ontoReachable(move: Deed, _: Lot, { set }: Cell, ledger: Ledger): void {
  openTo(move, move.onto, set, ledger);
}

/** What comes off again is reached where it was put on. */
function offReachable(move: Deed, _: Lot, { set, last }: Cell, ledger: Ledger): void {
  openTo(move, last?.onto ?? [], set, ledger);
}

/** A plug that is apart still hangs beside its place. */
function openTo(move: Deed, onto: readonly Lot[], set: PlanSet, ledger: Ledger): void {
  const isHere = (state: StateName) => isInPlace(state) || state === 'mated' || state === 'apart';
  for (const one of onto) {
    const here = plansIn(one, set, ledger, isHere);
    for (const by of lotsAt(one.coveredBy, ledger)) {
      blocked('still-covered', move, one, by, plansIn(by, here, ledger, fillsPlace), ledger);
    }
  }
}

function blocked(
  kind: 'still-held' | 'still-connected' | 'still-covered',
  move: Deed,
  lot: Lot,
  by: Lot,
  set: PlanSet,
  ledger: Ledger,
): void {
  if (set === noPlan) return;
  tell(ledger, by, fault(move, lot, { kind, item: lot.id, by: by.id }, by.side), set);
}

/**
 * A fastener holds something that is there: the part, or what replaces it. One that frees its part when it is
 * loosened may go in first, and the part then slides under it before it is tightened.
 */
function somethingToHold(move: Deed, lot: Lot, { set, state, loosenedFirst }: Cell, ledger: Ledger): void {
  const after = nextState(move.action.verb, lot, state, loosenedFirst);
  if (isThing(lot) || (slidesUnder(lot) && after !== 'tight')) return;
  for (const part of lotsAt(lot.holds, ledger)) absent('nothing-to-hold', move, lot, part, set, ledger);
}

/** A part that nothing held was lifted, or moved aside: where it was not, it hung, or that line is missing. */
function liftedBefore(move: Deed, lot: Lot, { set }: Cell, ledger: Ledger): void {
  for (const part of lotsAt(lot.holds, ledger)) {
    const hung = (ledger.hanging[part.index] ?? noPlan) & set;
    tell(
      ledger,
      part,
      fault(move, lot, { kind: 'never-lifted', item: lot.id, part: part.id }, part.side),
      hung,
    );
  }
}

/**
 * A plug goes onto something that is there; what is aside still hangs beside its place, and what the same step
 * goes on to put in is in the hand.
 */
function somethingToConnect(move: Deed, lot: Lot, { set }: Cell, ledger: Ledger): void {
  for (const part of lotsAt(lot.on, ledger)) {
    const aside = plansIn(part, set, ledger, (state) => state === 'aside');
    const held = [part, ...lotsAt(part.replacedBy, ledger)].reduce(
      (found, one) => found | inHand(move, one, set, ledger),
      noPlan,
    );
    absent('nothing-to-connect', move, lot, part, set & ~aside & ~held, ledger);
  }
}

/** The plans in which a thing is on the bench or in the box, and goes in later in the step of a move. */
function inHand(move: Deed, lot: Lot, set: PlanSet, ledger: Ledger): PlanSet {
  const moves = ledger.script.scenes.find(({ step }) => step === move.step)?.moves ?? [];
  const put = moves
    .slice(moves.indexOf(move) + 1)
    .filter((one) => one.lots.includes(lot) && ['refit', 'fit', 'bond'].includes(one.action.verb))
    .reduce((found, one) => found | one.set, noPlan);
  return plansIn(lot, set & put, ledger, (state) => state === 'off' || state === 'in the box');
}

function absent(
  kind: 'nothing-to-hold' | 'nothing-to-connect',
  move: Deed,
  lot: Lot,
  part: Lot,
  set: PlanSet,
  ledger: Ledger,
): void {
  for (const { state, set: plans } of cellsIn(part, set & ~replacedIn(part, set, ledger), ledger)) {
    if (isInPlace(state)) continue;
    tell(ledger, part, fault(move, lot, { kind, item: lot.id, part: part.id, state }), plans);
  }
}

/** What goes in finds its place free: the old one is out before its replacement goes in, and the reverse. */
function placeFree(move: Deed, lot: Lot, { set }: Cell, ledger: Ledger): void {
  for (const by of lotsAt([...lot.replaces, ...lot.replacedBy], ledger)) {
    const taken = plansIn(by, set, ledger, fillsPlace);
    tell(ledger, by, fault(move, lot, { kind: 'place-taken', item: lot.id, by: by.id }), taken);
  }
}

function oneTime(move: Deed, lot: Lot, { set, state }: Cell, ledger: Ledger): void {
  if (lot.thing && !lot.thing.reuse && state === 'off') {
    tell(ledger, lot, fault(move, lot, { kind: 'one-time-refitted', item: lot.id }), set);
  }
}

/** A one-time fastener that was turned loose is used up, in its hole or out of it. */
function usedUp(move: Deed, lot: Lot, { set, state }: Cell, ledger: Ledger): void {
  if (lot.thing && !lot.thing.reuse && state === 'loosened') {
    tell(ledger, lot, fault(move, lot, { kind: 'one-time-refitted', item: lot.id }), set);
  }
}

function bondedForGood(move: Deed, lot: Lot, { set, bonded }: Cell, ledger: Ledger): void {
  if (bonded) tell(ledger, lot, fault(move, lot, { kind: 'bonded', item: lot.id }), set);
}

/** What is still in the box cannot be laid anywhere. */
function outOfBox(move: Deed, lot: Lot, { set, state }: Cell, ledger: Ledger): void {
  if (state !== 'in the box') return;
  tell(ledger, lot, fault(move, lot, { kind: 'wrong-state', item: lot.id, state, earlier: null }), set);
}

function bondedOnce(move: Deed, lot: Lot, { set, state, bonded, last }: Cell, ledger: Ledger): void {
  if (!bonded) return;
  const earlier = last?.action.at ?? null;
  tell(ledger, lot, fault(move, lot, { kind: 'wrong-state', item: lot.id, state, earlier }), set);
}

/** What cannot be undone waits for the trial fit that it names. */
function afterTrial(move: Deed, lot: Lot, { set }: Cell, ledger: Ledger): void {
  const { trial } = move.action;
  // A trial that names no step of the guide is told by another rule.
  const scene = trial && ledger.script.scenes.find(({ step }) => step?.id === trial.value);
  if (!scene) return;
  // What was tried on the left says nothing of the right.
  const side = scene.step?.side?.value ?? 'each';
  const isElsewhere = side !== 'each' && lot.side !== null && lot.side !== side;
  const tried = isElsewhere ? noPlan : (ledger.stepsDone.get(trial.value) ?? noPlan);
  tell(ledger, lot, fault(move, lot, { kind: 'before-trial', item: lot.id, trial }), set & ~tried);
}

/** The step is done where the item is, and on as many sides. */
export function judgeSides(move: Deed, ledger: Ledger): void {
  const stepSide = move.step?.side?.value ?? null;
  if (stepSide === null) return;
  const first = ledger.script.lots.find((lot) => lot.id === move.action.target.value);
  if (!first || first.thing?.sideKnown === false || move.step?.unknown.has('side')) return;
  const itemSide = first.sideWritten;
  // What each side finds cannot be one finding.
  const changes =
    first.thing?.kind === 'inspection' ||
    (actionRule(move.action.verb).from.length > 0 && first.thing?.kind !== 'supply');
  const twice = stepSide === 'each' && itemSide === null && changes;
  const elsewhere = itemSide !== null && itemSide !== 'each' && itemSide !== stepSide;
  if (!twice && !elsewhere) return;
  const told = { kind: 'side-mismatch', item: first.id, itemSide, stepSide } as const;
  const here = move.set & (ledger.script.lotSets[first.index] ?? noPlan);
  tell(ledger, first, fault(move, first, told, null), here);
}

/**
 * What a step, or a proof, needs is seen to when it begins, and holds for all that it does: it may end with the
 * last action.
 */
export function judgeNeeds(scene: Scene, move: Deed | null, ledger: Ledger): void {
  const hangs =
    move && move.hangsOn.length > 0 ? move.hangsOn.map((lot) => ({ lot, at: move.action.at })) : [];
  for (const { lot: need, at } of hangs.length > 0 ? [...scene.needs, ...hangs] : scene.needs) {
    for (const { unmet, set } of unmetIn(need, (move ?? scene).set, ledger)) {
      const place = { at: move?.action.at ?? at, action: move?.action ?? null, step: scene.step, side: null };
      tell(ledger, need, { ...unmet, item: null, ...place }, set);
    }
  }
}

/** How a need is not met: a condition does not hold, or a measure has not been taken. */
interface Unmet {
  readonly kind: 'needs-unmet';
  readonly need: string;
  readonly state: StateName;
  readonly ended: Span | null;
}

/** The state in which a thing meets a need, by its kind. */
const metBy: { readonly [K in ItemKind]?: StateName } = {
  condition: 'holds',
  measure: 'done',
  setting: 'set',
  supply: 'on',
  inspection: 'done',
};

/** The plans in which what is needed is not as it should be; other things meet every need. */
function unmetIn(
  need: Lot,
  set: PlanSet,
  ledger: Ledger,
): readonly { readonly unmet: Unmet; readonly set: PlanSet }[] {
  // What was put on for a while is counted on each side too; the whole of it meets the need.
  const isWhole = need.thing?.kind !== 'supply' || need.side === null;
  const met = need.thing && isWhole ? metBy[need.thing.kind] : undefined;
  if (met === undefined) return [];
  if (plansIn(need, set, ledger, (state) => state !== met) === noPlan) return [];
  return cellsIn(need, set, ledger).flatMap(({ state, last, set: plans }) => {
    const ended = last?.action.at ?? null;
    return state === met ? [] : [{ unmet: { kind: 'needs-unmet', need: need.id, state, ended }, set: plans }];
  });
}

type Distribute<T> = T extends unknown ? Omit<T, 'at' | 'action' | 'step' | 'side'> : never;

function fault(move: Deed, lot: Lot, what: Distribute<Fault>, side = lot.side): Fault {
  return { ...what, at: move.action.at, action: move.action, step: move.step, side } as Fault;
}
