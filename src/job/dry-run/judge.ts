import type { Step } from '../../model/guide.ts';
import type { Verb } from '../../model/inline.ts';
import type { StateName } from '../../model/violation.ts';
import { actionRule, isFixing } from '../actions.ts';
import { type Fault, type Ledger, lotsAt, stateOf, tell } from './ledger.ts';
import type { Lot } from './lot.ts';
import { isInPlace } from './next-state.ts';
import { laterMove, type Move } from './script.ts';

/** Holds a move against what the vehicle and the bench allow, before it is made. */
export const judge = { move: judgeMove, sides: judgeSides, needs: judgeStepNeeds };

type Judge = (move: Move, lot: Lot, ledger: Ledger) => void;

/** What each verb asks for besides the state that it starts from. */
const asks: { readonly [V in Verb]?: readonly Judge[] } = {
  remove: [bondedForGood, free, unplugged, reachable],
  'move-aside': [free, reachable],
  refit: [oneTime, placeFree, reachable, somethingToHold],
  fit: [placeFree, reachable, somethingToHold],
  start: [oneTime, placeFree, reachable, somethingToHold],
  tighten: [reachable],
  loosen: [reachable],
  disconnect: [reachable],
  connect: [reachable, somethingToConnect],
  cut: [afterTrial],
  drill: [afterTrial],
  bond: [placeFree, reachable, afterTrial],
};

function judgeMove(move: Move, lot: Lot, ledger: Ledger): void {
  const { verb } = move.action;
  if (!startsWhereItMay(move, lot, ledger)) return;
  for (const ask of asks[verb] ?? []) ask(move, lot, ledger);
  for (const need of ledger.script.lotNeeds[lot.index] ?? []) {
    if (need !== lot && !isMet(need, ledger)) {
      tell(ledger, need, fault(move, lot, { kind: 'needs-unmet', item: lot.id, need: need.id }));
    }
  }
}

/** The state of the lot is one that the action can start from; a supply may be applied again and again. */
function startsWhereItMay(move: Move, lot: Lot, ledger: Ledger): boolean {
  const { verb } = move.action;
  const { from } = actionRule(verb);
  const state = stateOf(lot, ledger);
  if (from.length === 0 || from.includes(state)) return true;
  const last = ledger.last[lot.index] ?? null;
  if (lot.item?.kind === 'supply') {
    // Once on each side is one application of it.
    if (!lot.item.temporary || last?.action === move.action) return true;
  }
  // A step done on each side takes the same thing twice: that its item has no sides has been told.
  if (lot.side === null && last?.action === move.action) return true;
  const earlier = last?.action.at ?? null;
  tell(ledger, lot, fault(move, lot, { kind: 'wrong-state', item: lot.id, state, earlier }));
  return false;
}

function isThing(lot: Lot): boolean {
  return lot.item !== null && !isFixing(lot.item);
}

/** Nothing holds what is lifted. */
function free(move: Move, lot: Lot, ledger: Ledger): void {
  if (!isThing(lot)) return;
  for (const by of lotsAt(lot.heldBy, ledger)) {
    const frees = by.item && isFixing(by.item) && by.item.freeWhenLoosened;
    const state = stateOf(by, ledger);
    if (isInPlace(state) && !(frees && state === 'loosened')) blocked('still-held', move, lot, by, ledger);
  }
}

/** Nothing is plugged into what is lifted. */
function unplugged(move: Move, lot: Lot, ledger: Ledger): void {
  for (const by of lotsAt(lot.plugs, ledger)) {
    if (stateOf(by, ledger) === 'mated') blocked('still-connected', move, lot, by, ledger);
  }
}

/** Nothing lies over what is worked on. */
function reachable(move: Move, lot: Lot, ledger: Ledger): void {
  for (const by of lotsAt(lot.coveredBy, ledger)) {
    if (isInPlace(stateOf(by, ledger))) blocked('still-covered', move, lot, by, ledger);
  }
}

function blocked(
  kind: 'still-held' | 'still-connected' | 'still-covered',
  move: Move,
  lot: Lot,
  by: Lot,
  ledger: Ledger,
): void {
  const verbs: readonly Verb[] = ['remove', 'disconnect', 'move-aside'];
  const later = laterMove(ledger.script, move, by, verbs)?.action.at ?? null;
  tell(ledger, by, fault(move, lot, { kind, item: lot.id, by: by.id, later }, by.side));
}

/** A fastener holds something that is there: the part, or what replaces it. */
function somethingToHold(move: Move, lot: Lot, ledger: Ledger): void {
  if (isThing(lot)) return;
  for (const part of lotsAt(lot.holds, ledger)) {
    if (!isThere(part, ledger)) absent('nothing-to-hold', move, lot, part, ledger);
  }
}

/** A plug goes onto something that is there; what is aside still hangs beside its place. */
function somethingToConnect(move: Move, lot: Lot, ledger: Ledger): void {
  for (const part of lotsAt(lot.on, ledger)) {
    if (!isThere(part, ledger) && stateOf(part, ledger) !== 'aside') {
      absent('nothing-to-connect', move, lot, part, ledger);
    }
  }
}

function isThere(part: Lot, ledger: Ledger): boolean {
  return [part, ...lotsAt(part.replacedBy, ledger)].some((one) => isInPlace(stateOf(one, ledger)));
}

function absent(
  kind: 'nothing-to-hold' | 'nothing-to-connect',
  move: Move,
  lot: Lot,
  part: Lot,
  ledger: Ledger,
): void {
  const state: StateName = stateOf(part, ledger);
  tell(ledger, part, fault(move, lot, { kind, item: lot.id, part: part.id, state }));
}

/** What goes in finds its place free: the old one is out before its replacement goes in, and the reverse. */
function placeFree(move: Move, lot: Lot, ledger: Ledger): void {
  for (const by of lotsAt([...lot.replaces, ...lot.replacedBy], ledger)) {
    if (isInPlace(stateOf(by, ledger))) {
      tell(ledger, by, fault(move, lot, { kind: 'place-taken', item: lot.id, by: by.id }));
    }
  }
}

function oneTime(move: Move, lot: Lot, ledger: Ledger): void {
  if (lot.item?.kind === 'fastener' && !lot.item.reuse && stateOf(lot, ledger) === 'off') {
    tell(ledger, lot, fault(move, lot, { kind: 'one-time-refitted', item: lot.id }));
  }
}

function bondedForGood(move: Move, lot: Lot, ledger: Ledger): void {
  if (ledger.bonded[lot.index]) tell(ledger, lot, fault(move, lot, { kind: 'bonded', item: lot.id }));
}

/** What cannot be undone waits for the trial fit that it names. */
function afterTrial(move: Move, lot: Lot, ledger: Ledger): void {
  const { trial } = move.action;
  if (!trial || ledger.stepsBegun.has(trial.value)) return;
  // A trial that names no step of the guide is told by another rule.
  if (!ledger.script.scenes.some((scene) => scene.step?.id === trial.value)) return;
  tell(ledger, lot, fault(move, lot, { kind: 'before-trial', item: lot.id, trial }));
}

/** The step is done where the item is, and on as many sides. */
function judgeSides(move: Move, ledger: Ledger): void {
  const stepSide = move.step?.side?.value ?? null;
  if (stepSide === null) return;
  const first = ledger.script.lots.find((lot) => lot.id === move.action.target.value);
  if (!first || first.item?.unknown.has('side') || move.step?.unknown.has('side')) return;
  const itemSide = first.sideWritten;
  const changes = actionRule(move.action.verb).from.length > 0 && first.item?.kind !== 'supply';
  const twice = stepSide === 'each' && itemSide === null && changes;
  const elsewhere = itemSide !== null && itemSide !== 'each' && itemSide !== stepSide;
  if (twice || elsewhere) {
    const told = { kind: 'side-mismatch', item: first.id, itemSide, stepSide } as const;
    tell(ledger, first, fault(move, { ...first, side: null }, told));
  }
}

function judgeStepNeeds(step: Step, needs: readonly Lot[], ledger: Ledger): void {
  for (const need of needs) {
    if (isMet(need, ledger)) continue;
    const at = step.needs.find((ref) => ref.value === need.id)?.at ?? step.at;
    const told = {
      kind: 'needs-unmet',
      item: null,
      need: need.id,
      at,
      action: null,
      step,
      side: null,
    } as const;
    tell(ledger, need, told);
  }
}

/** A condition holds, a measure has been taken; other things meet every need, since another rule tells of them. */
function isMet(need: Lot, ledger: Ledger): boolean {
  const { item } = need;
  if (item?.kind === 'condition') return stateOf(need, ledger) === 'holds';
  if (item?.kind === 'measure') return stateOf(need, ledger) === 'done';
  return true;
}

type Distribute<T> = T extends unknown ? Omit<T, 'at' | 'action' | 'step' | 'side'> : never;

function fault(move: Move, lot: Lot, what: Distribute<Fault>, side = lot.side): Fault {
  return { ...what, at: move.action.at, action: move.action, step: move.step, side } as Fault;
}
