import type { Step } from '../../model/guide.ts';
import type { Action } from '../../model/inline.ts';
import type { StateName } from '../../model/violation.ts';
import { judge } from './judge.ts';
import { judgeEnd } from './judge-end.ts';
import { isHere, type Ledger, openLedger, stateOf } from './ledger.ts';
import type { Lot } from './lot.ts';
import { nextState } from './next-state.ts';
import type { Move, Scene, Script } from './script.ts';

/** Who looks on while a guide is played. */
export interface Onlooker {
  /** After an action has been done to a lot. */
  readonly moved: (lot: Lot, move: Move, before: StateName, after: StateName) => void;
  /** When a step is done. */
  readonly stepDone: (step: Step, ledger: Ledger) => void;
}

/** Plays a guide for one build, and gives back how everything stands at the end. */
export function play(script: Script, truth: readonly boolean[], onlooker: Onlooker | null = null): Ledger {
  const ledger = openLedger(script, truth);
  for (const scene of script.scenes) {
    if (!all(scene.whens, truth)) continue;
    judgeNeeds(scene, ledger);
    for (const move of scene.moves) if (all(move.whens, truth)) make(move, ledger, onlooker);
    if (scene.step) {
      ledger.stepsBegun.add(scene.step.id);
      onlooker?.stepDone(scene.step, ledger);
    }
  }
  judgeEnd(ledger);
  return ledger;
}

function all(whens: readonly number[], truth: readonly boolean[]): boolean {
  return whens.every((when) => truth[when] === true);
}

function make(move: Move, ledger: Ledger, onlooker: Onlooker | null): void {
  const { action } = move;
  judge.sides(move, ledger);
  for (const lot of move.lots) {
    // An action that some build has no item for is another rule's business.
    if (!isHere(lot, ledger)) continue;
    judge.move(move, lot, ledger);
    const before = stateOf(lot, ledger);
    settle(lot, move, before, ledger);
    if (action.amount) use(lot, action, ledger);
    onlooker?.moved(lot, move, before, stateOf(lot, ledger));
  }
}

function settle(lot: Lot, move: Move, before: StateName, ledger: Ledger): void {
  const { index } = lot;
  const { verb } = move.action;
  const after = nextState(verb, lot, before, ledger.loosenedFirst[index] === true);
  if (verb === 'remove') ledger.loosenedFirst[index] = before === 'loosened';
  if (verb === 'bond') ledger.bonded[index] = true;
  if (after === before) return;
  ledger.state[index] = after;
  ledger.last[index] = move;
}

function use(lot: Lot, action: Action, ledger: Ledger): void {
  if (!action.amount || lot.item?.kind !== 'supply') return;
  // Amounts of another kind cannot be added up, which another rule tells.
  if (action.amount.value.dimension !== lot.item.quantity?.value.dimension) return;
  ledger.used[lot.index] = (ledger.used[lot.index] ?? 0) + action.amount.value.base;
  ledger.usedAt[lot.index]?.push(action.amount.at);
}

function judgeNeeds(scene: Scene, ledger: Ledger): void {
  if (scene.step && scene.needs.length > 0) judge.needs(scene.step, scene.needs, ledger);
}
