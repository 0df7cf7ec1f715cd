import type { Step } from '../../model/guide.ts';
import type { BenchItem, BenchState } from '../../model/job.ts';
import type { StateName } from '../../model/violation.ts';
import { isHere, type Ledger, stateOf } from './ledger.ts';
import type { Lot } from './lot.ts';
import type { Onlooker } from './play.ts';
import type { Move } from './script.ts';

/** One change of a lot, in the order of doing. */
export interface Change {
  readonly lot: Lot;
  readonly move: Move;
  readonly before: StateName;
  readonly after: StateName;
}

/** What the sheets of a plan are made from. */
export interface Diary {
  readonly changes: readonly Change[];
  /** The bench when each step is done, by the step's id. */
  readonly benches: ReadonlyMap<string, BenchState>;
  readonly onlooker: Onlooker;
}

/** Where each state is told; what is where it belongs, or gone for good, is told nowhere. */
const places: { readonly [S in StateName]?: Exclude<keyof BenchState, 'movement'> } = {
  off: 'off',
  apart: 'apart',
  started: 'loose',
  loosened: 'loose',
  aside: 'aside',
  on: 'on',
  holds: 'holds',
};

/** Writes down what a play does, step by step. */
export function openDiary(): Diary {
  const changes: Change[] = [];
  const benches = new Map<string, BenchState>();
  const astray = new Set<Lot>();
  const onlooker: Onlooker = {
    moved: (lot, move, before, after) => {
      changes.push({ lot, move, before, after });
      if (places[after] && !isUsedUp(lot)) astray.add(lot);
      else astray.delete(lot);
    },
    stepDone: (step: Step, ledger: Ledger) => void benches.set(step.id, benchOf(astray, ledger)),
  };
  return { changes, benches, onlooker };
}

/** A supply that need not come off is no longer anyone's concern. */
function isUsedUp({ item }: Lot): boolean {
  return item?.kind === 'supply' && !item.temporary;
}

function benchOf(astray: ReadonlySet<Lot>, ledger: Ledger): BenchState {
  const bench = { off: [], apart: [], loose: [], aside: [], on: [], holds: [] } satisfies Record<
    string,
    BenchItem[]
  > as Record<Exclude<keyof BenchState, 'movement'>, BenchItem[]>;
  let pinned = false;
  for (const lot of [...astray].sort((a, b) => a.index - b.index)) {
    const place = places[stateOf(lot, ledger)];
    if (!place) continue;
    addTo(bench[place], lot, handled(lot));
    pinned ||= lot.item?.immobile === true;
  }
  const stated = ledger.script.lots.some((lot) => lot.item?.immobile === true && isHere(lot, ledger));
  return {
    ...bench,
    movement: pinned ? 'must not be moved' : stated ? 'may be moved' : 'not stated',
  };
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

/** How many pieces are handled: spares stay in the box. */
function handled({ item, count }: Lot): number {
  return item?.kind === 'kit' ? count - (item.spare?.value ?? 0) : count;
}
