import type { StateName, Violation } from '../../model/violation.ts';
import type { Span } from '../../source/span.ts';
import type { Lot } from './lot.ts';
import { fillsPlace } from './next-state.ts';
import { noPlan, type PlanSet } from './plan-set.ts';
import type { Deed, PlayedStep, Script } from './script.ts';

type Worked = 'step' | 'sides' | 'witness' | 'later';
type Distribute<T> = T extends unknown ? Omit<T, Worked> : never;

/** A fault on one side; its witness is worked out when all has been played. */
export type Fault = Distribute<Violation> & {
  readonly step: PlayedStep | null;
  readonly side: 'left' | 'right' | null;
};

/** How a lot stands in the plans of a set, which share all that has been done to it. */
export interface Cell {
  readonly set: PlanSet;
  readonly state: StateName;
  /** The move that brought it into its state; `null` while it is as it began. */
  readonly last: Deed | null;
  /** A fastener that was loosened before it came off is only started when it goes back. */
  readonly loosenedFirst: boolean;
  readonly bonded: boolean;
}

/** One application of a supply. */
export interface Application {
  readonly set: PlanSet;
  /** In the base unit of the supply. */
  readonly amount: number;
  readonly at: Span;
}

/** What is known of every lot while a guide is played. Lists are by the lots' positions. */
export interface Ledger {
  readonly script: Script;
  /** The cells of a lot are disjoint, and cover the plans that have it. */
  readonly cells: (readonly Cell[])[];
  /** The plans in which a fault of the lot has been told: what follows from it is not told again. */
  readonly told: PlanSet[];
  /** The plans in which all that held a part has come out while it stayed in place. */
  readonly hanging: PlanSet[];
  readonly used: (readonly Application[])[];
  /** The plans in which a step has been done, by its id. */
  readonly stepsDone: Map<string, PlanSet>;
  /** From where it is not known what is done, nothing is told. */
  blind: boolean;
  readonly faults: { readonly fault: Fault; readonly set: PlanSet }[];
}

/** Everything as it is before the work begins. */
export function openLedger(script: Script): Ledger {
  const { lots } = script;
  return {
    script,
    cells: lots.map((lot) => {
      const set = script.lotSets[lot.index] ?? noPlan;
      return [{ set, state: lot.start, last: null, loosenedFirst: false, bonded: false }];
    }),
    told: lots.map(() => noPlan),
    hanging: lots.map(() => noPlan),
    used: lots.map(() => []),
    stepsDone: new Map(),
    blind: false,
    faults: [],
  };
}

/** The same once more, to be played on apart from it. */
export function copyLedger(ledger: Ledger): Ledger {
  return {
    ...ledger,
    cells: [...ledger.cells],
    told: [...ledger.told],
    hanging: [...ledger.hanging],
    used: [...ledger.used],
    stepsDone: new Map(ledger.stepsDone),
    faults: [...ledger.faults],
  };
}

/** How a lot stands in some plans. */
export function cellsIn(lot: Lot, set: PlanSet, ledger: Ledger): readonly Cell[] {
  const cells = ledger.cells[lot.index] ?? [];
  // In most guides, and in a rehearsal always, a lot stands alike in all plans: no list is made for that.
  const [only] = cells;
  if (cells.length === 1 && only && only.set !== noPlan && (only.set & set) === only.set) return cells;
  return cells.flatMap((cell) => {
    const both = cell.set & set;
    return both === noPlan ? [] : both === cell.set ? [cell] : [{ ...cell, set: both }];
  });
}

/** The plans of a set in which a lot is in a state of some kind. */
export function plansIn(
  lot: Lot,
  set: PlanSet,
  ledger: Ledger,
  isSuch: (state: StateName) => boolean,
): PlanSet {
  let found = noPlan;
  for (const cell of ledger.cells[lot.index] ?? []) if (isSuch(cell.state)) found |= cell.set & set;
  return found;
}

/** The plans of a set in which something is in the place of a lot that it replaces. */
export function replacedIn({ replacedBy }: Lot, set: PlanSet, ledger: Ledger): PlanSet {
  return lotsAt(replacedBy, ledger).reduce(
    (found, one) => found | plansIn(one, set, ledger, fillsPlace),
    noPlan,
  );
}

/** The lots at some positions. */
export function lotsAt(indexes: readonly number[], { script }: Ledger): readonly Lot[] {
  return indexes.length === 0 ? [] : indexes.flatMap((index) => script.lots[index] ?? []);
}

/** Tells of a fault in the plans in which none has been told of the lot that causes it. */
export function tell(ledger: Ledger, cause: Lot, fault: Fault, set: PlanSet): void {
  const told = ledger.told[cause.index] ?? noPlan;
  const fresh = set & ~told;
  if (fresh === noPlan || ledger.blind) return;
  ledger.told[cause.index] = told | fresh;
  ledger.faults.push({ fault, set: fresh });
}
