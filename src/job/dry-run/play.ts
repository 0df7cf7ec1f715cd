import type { StateName } from '../../model/violation.ts';
import { judgeMove, judgeNeeds, judgeSides } from './judge.ts';
import { judgeEnd } from './judge-end.ts';
import { type Cell, cellsIn, type Ledger, lotsAt, openLedger, plansIn } from './ledger.ts';
import type { Lot } from './lot.ts';
import { holdingOf, isInPlace, nextState } from './next-state.ts';
import { noPlan, type PlanSet } from './plan-set.ts';
import type { Deed, PlayedStep, Scene, Script } from './script.ts';

/** One change of a lot. */
export interface Change {
  readonly lot: Lot;
  readonly move: Deed;
  readonly before: StateName;
  readonly after: StateName;
  readonly set: PlanSet;
  /** Position among all moves, in the order of doing. */
  readonly order: number;
}

/** Who looks on while a guide is played. */
export interface Onlooker {
  readonly changed: (change: Change) => void;
  /** When a step is done. */
  readonly stepDone: (step: PlayedStep, set: PlanSet, ledger: Ledger) => void;
}

/**
 * Plays a guide for all plans at once, and gives back how everything stands at the end.
 *
 * @param scenes in the order in which they are done; as the guide has them, where nothing else is said
 * @param isAll whether the work is done with them, so that its end is judged as well
 */
export function play(
  script: Script,
  onlooker: Onlooker,
  scenes: readonly Scene[] = script.scenes,
  isAll = true,
): Ledger {
  const ledger = openLedger(script);
  let order = 0;
  for (const scene of scenes) {
    begin(scene, ledger);
    for (const move of scene.moves) {
      order += 1;
      makeMove(scene, move, order, ledger, onlooker);
    }
    if (scene.whole) finish(scene, ledger, onlooker);
  }
  close(scenes, ledger, isAll);
  return ledger;
}

/** Takes up a scene, or takes it up again. */
export function begin(scene: Scene, ledger: Ledger): void {
  if (scene.set === noPlan) return;
  ledger.blind ||= !scene.known;
  judgeNeeds(scene, null, ledger);
}

/**
 * Makes one move of a scene.
 *
 * @param order its position among all moves, in the order of doing
 */
export function makeMove(scene: Scene, move: Deed, order: number, ledger: Ledger, onlooker: Onlooker): void {
  if (scene.set === noPlan || move.set === noPlan) return;
  ledger.blind ||= !move.known;
  judgeNeeds(scene, move, ledger);
  make(move, order, ledger, onlooker);
}

/** Notes that a step is done with. */
export function finish({ step, set }: Scene, ledger: Ledger, onlooker: Onlooker): void {
  if (!step || set === noPlan) return;
  ledger.stepsDone.set(step.id, set);
  onlooker.stepDone(step, set, ledger);
}

/** Comes to the end of what is played: of the whole job, where all of it has been. */
export function close(scenes: readonly Scene[], ledger: Ledger, isAll: boolean): void {
  const { script } = ledger;
  ledger.blind ||= script.halt !== null;
  // Where the job was ended, it is for others to say what becomes of the vehicle.
  const ended = scenes.reduce((found, { ends, whole }) => (whole ? found | ends : found), noPlan);
  for (const { index } of script.lots) ledger.told[index] = (ledger.told[index] ?? noPlan) | ended;
  if (isAll) judgeEnd(ledger);
}

function make(move: Deed, order: number, ledger: Ledger, onlooker: Onlooker): void {
  judgeSides(move, ledger);
  for (const { lot, set } of reached(move, ledger)) {
    // In the plans that have no such item nothing is done, which is another rule's business.
    const cells = cellsIn(lot, set, ledger);
    for (const cell of cells) judgeMove(move, lot, cell, ledger);
    const changed = cells.map((cell) => after(cell, lot, move));
    for (const [index, cell] of cells.entries()) {
      const now = changed[index];
      if (!now || now.state === cell.state) continue;
      onlooker.changed({ lot, move, before: cell.state, after: now.state, set: cell.set, order });
    }
    const all = ledger.cells[lot.index] ?? [];
    const others = cells === all ? [] : all.map((cell) => ({ ...cell, set: cell.set & ~set }));
    ledger.cells[lot.index] = merged([...changed, ...others]);
    hang(lot, move, ledger);
    use(lot, move, ledger);
    if (lot.thing?.kind === 'condition') lapse(lot, move, order, ledger, onlooker);
  }
}

/** What a move is made on: a supply comes off where it is on; where it is on nowhere, that is told once. */
function reached(move: Deed, ledger: Ledger): readonly { readonly lot: Lot; readonly set: PlanSet }[] {
  const { action, lots, set } = move;
  if (action.verb !== 'take-off') return lots.map((lot) => ({ lot, set }));
  const on = lots.map((lot) => plansIn(lot, set, ledger, (state) => state === 'on'));
  const anywhere = on.reduce((found, one) => found | one, noPlan);
  return lots.map((lot, index) => ({
    lot,
    set: (on[index] ?? noPlan) | (index === 0 ? set & ~anywhere : noPlan),
  }));
}

/** What holds only while another condition holds lapses with it, and what holds only while that holds, in turn. */
function lapse(ended: Lot, move: Deed, order: number, ledger: Ledger, onlooker: Onlooker): void {
  const { lots, lotNeeds } = ledger.script;
  const over = plansIn(ended, move.set, ledger, (state) => state !== 'holds');
  for (const lot of over === noPlan ? [] : lots) {
    if (lot.thing?.kind !== 'condition' || !lotNeeds[lot.index]?.includes(ended)) continue;
    const cells = ledger.cells[lot.index] ?? [];
    const lapsed = plansIn(lot, over, ledger, (state) => state === 'holds');
    if (lapsed === noPlan) continue;
    onlooker.changed({ lot, move, before: 'holds', after: 'lapsed', set: lapsed, order });
    ledger.cells[lot.index] = merged(
      cells.flatMap((cell): Cell[] => [
        { ...cell, set: cell.set & ~lapsed },
        { ...cell, set: cell.set & lapsed, state: 'lapsed', last: move },
      ]),
    );
    lapse(lot, move, order, ledger, onlooker);
  }
}

function after(cell: Cell, lot: Lot, move: Deed): Cell {
  const { verb } = move.action;
  const state = nextState(verb, lot, cell.state, cell.loosenedFirst);
  return {
    set: cell.set,
    state,
    last: state === cell.state ? cell.last : move,
    loosenedFirst: verb === 'remove' ? cell.state === 'loosened' : cell.loosenedFirst,
    bonded: cell.bonded || verb === 'bond',
  };
}

/** Cells that stand alike become one again; empty ones vanish. */
function merged(cells: readonly Cell[]): readonly Cell[] {
  const kept: Cell[] = [];
  for (const cell of cells) {
    if (cell.set === noPlan) continue;
    const twin = kept.findIndex(
      (one) =>
        one.state === cell.state &&
        one.last === cell.last &&
        one.loosenedFirst === cell.loosenedFirst &&
        one.bonded === cell.bonded,
    );
    const known = kept[twin];
    if (known) kept[twin] = { ...known, set: known.set | cell.set };
    else kept.push(cell);
  }
  return kept;
}

/** Keeps count of the parts that nothing holds any more, though nobody has lifted them. */
function hang(lot: Lot, { action, set }: Deed, ledger: Ledger): void {
  const { index } = lot;
  // What comes out one at a time leaves its part held by the others.
  if (action.verb === 'remove' && lot.thing?.kind === 'fastener' && !lot.thing.oneByOne) {
    for (const part of lotsAt(lot.holds, ledger)) {
      const held = lotsAt(part.heldBy, ledger).reduce(
        (found, one) => found | plansIn(one, set, ledger, holdingOf(one)),
        noPlan,
      );
      const stays = plansIn(part, set & ~held, ledger, isInPlace);
      ledger.hanging[part.index] = (ledger.hanging[part.index] ?? noPlan) | stays;
    }
  }
  const lifted = plansIn(lot, set, ledger, (state) => !isInPlace(state));
  if (lifted === noPlan) return;
  // What shares the fasteners of a part that is lifted comes with it, or lies free.
  const together = lotsAt(lot.heldBy, ledger)
    .flatMap((by) => by.holds)
    .filter((one) =>
      lotsAt(ledger.script.lots[one]?.heldBy ?? [], ledger).every((by) => by.holds.length > 1),
    );
  for (const one of [index, ...together]) ledger.hanging[one] = (ledger.hanging[one] ?? noPlan) & ~lifted;
}

function use(lot: Lot, { action, set }: Deed, ledger: Ledger): void {
  if (!action.amount || lot.thing?.kind !== 'supply') return;
  // Amounts of another kind cannot be added up, which another rule tells.
  if (action.amount.value.dimension !== lot.thing.quantity?.dimension) return;
  const here = set & (ledger.script.lotSets[lot.index] ?? noPlan);
  const whole = ledger.script.lots.find((one) => one.id === lot.id) ?? lot;
  const earlier = ledger.used[whole.index] ?? [];
  const { value, at } = action.amount;
  ledger.used[whole.index] = [...earlier, { set: here, amount: value.base, at }];
}
