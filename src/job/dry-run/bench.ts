import type { BenchItem, BenchState } from '../../model/job.ts';
import type { StateName } from '../../model/violation.ts';
import { type Ledger, lotsAt, plansIn } from './ledger.ts';
import type { Lot } from './lot.ts';
import { holdingOf } from './next-state.ts';
import { type MembersOf, noPlan, type PlanSet } from './plan-set.ts';
import type { Change, Onlooker } from './play.ts';
import type { PlayedStep } from './script.ts';

type Place = Exclude<keyof BenchState, 'movement'>;

/** What the sheets of the plans are made from. */
interface Diary {
  readonly changes: readonly Change[];
  /** For each plan, the bench when each step is done, by the step's id. */
  readonly benches: readonly ReadonlyMap<string, BenchState>[];
  readonly onlooker: Onlooker;
}

const placeNames: readonly Place[] = ['off', 'apart', 'loose', 'aside', 'on', 'holds'];

/** Where each state is told; what is where it belongs, or gone for good, is told nowhere. */
const places: { readonly [S in StateName]?: Place } = {
  off: 'off',
  apart: 'apart',
  started: 'loose',
  loosened: 'loose',
  aside: 'aside',
  on: 'on',
  holds: 'holds',
};

/** Writes down what is done, step by step, for so many plans. */
export function openDiary(plans: number): Diary {
  const changes: Change[] = [];
  const benches = Array.from({ length: plans }, () => new Map<string, BenchState>());
  const touched = new Set<Lot>();
  return {
    changes,
    benches,
    onlooker: {
      changed: (change) => {
        changes.push(change);
        if (!isUsedUp(change.lot)) touched.add(change.lot);
      },
      stepDone: (step: PlayedStep, set: PlanSet, ledger: Ledger) => {
        const states = benchesOf(touched, set, ledger);
        for (const [plan, done] of ledger.script.membersOf(set).entries()) {
          if (done) benches[plan]?.set(step.id, states(plan));
        }
      },
    },
  };
}

/** A supply that need not come off is no longer anyone's concern. */
function isUsedUp({ thing }: Lot): boolean {
  return thing?.kind === 'supply' && !thing.temporary;
}

interface Entry {
  readonly lot: Lot;
  readonly set: PlanSet;
}

/** The bench of each plan. Lists that are alike in all plans are made once and shared. */
function benchesOf(touched: ReadonlySet<Lot>, set: PlanSet, ledger: Ledger): (plan: number) => BenchState {
  const entries = new Map<Place, Entry[]>(placeNames.map((place) => [place, []]));
  let pinned = noPlan;
  for (const lot of ledger.script.lots) {
    if (!touched.has(lot)) continue;
    for (const cell of ledger.cells[lot.index] ?? []) {
      const place = places[cell.state];
      const here = cell.set & set;
      if (!place || here === noPlan) continue;
      entries.get(place)?.push({ lot, set: here });
      if (lot.thing?.immobile) pinned |= here;
    }
  }
  // What nothing holds any more stands loose until it is lifted.
  for (const lot of ledger.script.lots) {
    const hanging = (ledger.hanging[lot.index] ?? noPlan) & set;
    if (hanging === noPlan) continue;
    const held = lotsAt(lot.heldBy, ledger).reduce(
      (found, one) => found | plansIn(one, set, ledger, holdingOf(one)),
      noPlan,
    );
    const here = hanging & ~held;
    if (here !== noPlan) entries.get('loose')?.push({ lot, set: here });
  }
  const stated = ledger.script.lots
    .filter((lot) => lot.thing?.immobile)
    .reduce((found, lot) => found | (ledger.script.lotSets[lot.index] ?? noPlan), noPlan);
  const lists = placeNames.map((place) => listsOf(entries.get(place) ?? [], set, ledger.script.membersOf));
  const isPinned = ledger.script.membersOf(pinned);
  const isStated = ledger.script.membersOf(stated);
  return (plan) => {
    const [off, apart, loose, aside, on, holds] = lists.map((list) => list(plan));
    return {
      off: off ?? [],
      apart: apart ?? [],
      loose: loose ?? [],
      aside: aside ?? [],
      on: on ?? [],
      holds: holds ?? [],
      movement: isPinned[plan] ? 'must not be moved' : isStated[plan] ? 'may be moved' : 'not stated',
    };
  };
}

function listsOf(
  entries: readonly Entry[],
  all: PlanSet,
  membersOf: MembersOf,
): (plan: number) => readonly BenchItem[] {
  if (entries.every((entry) => entry.set === all)) {
    const shared = itemsOf(entries);
    return () => shared;
  }
  const lists = membersOf(all).map((): BenchItem[] => []);
  for (const { lot, set } of entries) {
    const members = membersOf(set);
    lists.forEach((list, plan) => {
      if (members[plan]) addTo(list, lot, lot.handled);
    });
  }
  return (plan) => lists[plan] ?? [];
}

function itemsOf(entries: readonly Entry[]): readonly BenchItem[] {
  const list: BenchItem[] = [];
  for (const { lot } of entries) addTo(list, lot, lot.handled);
  return list;
}

/** Both sides of one item are told in one line. */
export function addTo(list: BenchItem[], lot: Lot, count = lot.count): void {
  const last = list.at(-1);
  if (last?.item === lot.id) {
    list[list.length - 1] = { item: lot.id, count: last.count + count, side: 'each' };
  } else {
    list.push({ item: lot.id, count, side: lot.side });
  }
}
