import type { Violation } from '../../model/violation.ts';
import { type Cell, type Fault, type Ledger, lotsAt, plansIn, replacedIn, tell } from './ledger.ts';
import type { Lot } from './lot.ts';
import { isGone } from './next-state.ts';
import { noPlan, type PlanSet, plansWhere } from './plan-set.ts';

/** Holds the vehicle, the bench and the box against what they should be when the work is done. */
export function judgeEnd(ledger: Ledger): void {
  for (const lot of ledger.script.lots) {
    for (const cell of ledger.cells[lot.index] ?? []) judgeCell(lot, cell, ledger);
    judgeSupply(lot, ledger);
    judgeCut(lot, ledger);
  }
}

function judgeCell(lot: Lot, cell: Cell, ledger: Ledger): void {
  const astray = cell.set & ~mayEndSo(lot, cell, ledger);
  tellEnd(lot, { kind: 'left', item: lot.id, state: cell.state }, cell.last, astray, ledger);
  if (lot.thing?.kind !== 'fastener' || lot.thing.reuse || !isGone(cell.state)) return;
  // A one-time fastener that is gone has a replacement in its place.
  const replaced = replacedIn(lot, cell.set, ledger);
  tellEnd(lot, { kind: 'one-time-lost', item: lot.id }, cell.last, cell.set & ~replaced, ledger);
}

type Kept = 'at' | 'action' | 'step' | 'sides' | 'witness' | 'later';
type Ending = Violation extends infer V ? (V extends unknown ? Omit<V, Kept> : never) : never;

/** A fault of the end is shown at the last action that left it so. */
function tellEnd(lot: Lot, what: Ending, last: Cell['last'], set: PlanSet, ledger: Ledger): void {
  const at = last?.action.at ?? lot.thing?.at;
  if (!at || set === noPlan) return;
  const place = { at, action: last?.action ?? null, step: last?.step ?? null, side: lot.side };
  tell(ledger, lot, { ...what, ...place } as Fault, set);
}

/** The plans in which a lot may stay as it is. */
function mayEndSo(lot: Lot, { state, set }: Cell, ledger: Ledger): PlanSet {
  const { thing, count, on } = lot;
  const when = (right: boolean) => (right ? set : noPlan);
  switch (thing?.kind) {
    case 'part':
    case 'fastener':
      // What lies on the bench is accounted for once another is in its place.
      if (state === 'off') return replacedIn(lot, set, ledger);
      return when(state === 'in place' || state === 'tight' || isGone(state));
    case 'kit': {
      const spare = thing.spare === null || (thing.chosen && isHandled(lot, ledger)) || thing.spare >= count;
      return when(
        state === 'in place' || state === 'tight' || isGone(state) || (state === 'in the box' && spare),
      );
    }
    case 'connector':
      if (state === 'mated' || on.length === 0) return when(state === 'mated');
      // A plug may hang when all that it sat on has left the job.
      return lotsAt(on, ledger).reduce(
        (left, one) => left & plansIn(one, left, ledger, isGone) & ~replacedIn(one, left, ledger),
        set,
      );
    case 'condition':
      return when(state !== 'holds' || thing.stays);
    case 'setting':
      return when(state === 'set');
    case 'supply':
      return when(state === 'not on' || !thing.temporary);
    default:
      return set;
  }
}

/** Whether any step handles it; what no step names is forgotten, not left over by right. */
function isHandled(lot: Lot, { script }: Ledger): boolean {
  return script.scenes.some(({ moves }) => moves.some(({ lots }) => lots.includes(lot)));
}

/**
 * What a template draws is made: its outline is cut, and its named holes are made with the whole, or each by
 * itself where one of them is.
 */
function judgeCut(lot: Lot, ledger: Ledger): void {
  const { cut } = lot;
  if (!cut) return;
  const drawn = ledger.script.lotSets[lot.index] ?? noPlan;
  const here = cut.whole ? drawn & (ledger.script.outlined[lot.index] ?? noPlan) : drawn;
  const others = ledger.script.lots.filter(
    (one) => one.cut?.template === cut.template && one.side === lot.side,
  );
  const doneIn = (some: readonly Lot[]) =>
    some.reduce((found, one) => found | plansIn(one, here, ledger, (state) => state === 'done'), noPlan);
  const whole = doneIn(others.filter((one) => one.cut?.whole));
  const holes = doneIn(others.filter((one) => !one.cut?.whole));
  const made = doneIn([lot]) | (cut.whole ? noPlan : whole & ~holes);
  const place = { at: cut.at, action: null, step: null, side: lot.side };
  tell(ledger, lot, { kind: 'never-made', item: lot.id, ...place }, here & ~made);
}

/** No supply runs out, and none that is declared goes unused; what is left of a roll or a tube is no fault. */
function judgeSupply(lot: Lot, ledger: Ledger): void {
  const { id, thing } = lot;
  const uses = ledger.used[lot.index] ?? [];
  // What is used on either side is counted with the whole.
  if (thing?.kind !== 'supply' || lot.side !== null || !thing.quantity) return;
  const applied = uses.reduce((found, use) => found | use.set, noPlan);
  const here = ledger.script.lotSets[lot.index] ?? noPlan;
  // Put on with no amount stated, or used in words alone: nothing can be added up.
  const cells = ledger.script.lots
    .filter((one) => one.id === id)
    .flatMap(({ index }) => ledger.cells[index] ?? []);
  const stated = uses.length > 0 || cells.some((cell) => cell.last !== null);
  if (!stated) tellEnd(lot, { kind: 'never-applied', item: id }, null, here & ~applied, ledger);
  const { base: declared } = thing.quantity;
  const count = ledger.script.plans;
  const members = uses.map((use) => ledger.script.membersOf(use.set));
  const sums = Array.from({ length: count }, (_, plan) =>
    uses.reduce((sum, { amount }, use) => (members[use]?.[plan] ? sum + amount : sum), 0),
  );
  const last = cells.find((cell) => cell.last)?.last ?? null;
  for (const used of new Set(sums)) {
    // Sums of decimals are off by less than a billionth.
    const over = used > declared * (1 + 1e-9);
    if (!over) continue;
    const set = plansWhere(count, (plan) => sums[plan] === used);
    const from = uses.filter((use) => (use.set & set) !== noPlan).map((use) => use.at);
    tellEnd(lot, { kind: 'supply-overused', item: id, used, declared, from }, last, set, ledger);
  }
}
