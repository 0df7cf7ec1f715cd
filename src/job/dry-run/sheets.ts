import type { Bag, BagLine, BenchItem, CountLine, FastenerLine } from '../../model/job.ts';
import type { StateName } from '../../model/violation.ts';
import { addTo } from './bench.ts';
import { type Ledger, replacedIn } from './ledger.ts';
import type { Lot } from './lot.ts';
import { isInPlace } from './next-state.ts';
import type { Change } from './play.ts';
import type { Deed } from './script.ts';

/** The sheets of one plan. */
export interface Sheets {
  readonly bags: readonly Bag[];
  readonly countSheet: readonly CountLine[];
  readonly fasteners: readonly FastenerLine[];
}

/** What was done to a lot in one plan, and how it ended. */
interface Fate {
  readonly lot: Lot;
  readonly changes: readonly Change[];
  readonly end: StateName;
  /** Whether another is in its place. */
  readonly replaced: boolean;
}

/** The tools that a move is made with. */
export type ToolsOfMove = (move: Deed) => readonly string[];

/** The sheets of every plan. Plans in which all counted things fare alike share theirs. */
export function sheetsOf(
  changes: readonly Change[],
  ledger: Ledger,
  toolsOf: ToolsOfMove,
): (plan: number) => Sheets {
  const { membersOf } = ledger.script;
  const lots = ledger.script.lots.filter((lot) => isOfVehicle(lot) || lot.thing?.kind === 'kit');
  const counted = new Set(lots);
  const own = changes.filter(({ lot }) => counted.has(lot));
  // Also what replaces a counted thing decides how that is accounted for.
  const cells = ledger.script.lots
    .filter((lot) => counted.has(lot) || lot.replaces.length > 0)
    .flatMap((lot) => ledger.cells[lot.index] ?? []);
  const sets = [...new Set([...own, ...cells].map(({ set }) => set))].map(membersOf);
  const known = new Map<string, Sheets>();
  return (plan) => {
    const key = sets.map((members) => (members[plan] ? '1' : '0')).join('');
    const sheets = known.get(key) ?? sheetsFrom(fatesIn(plan, lots, own, ledger), toolsOf);
    known.set(key, sheets);
    return sheets;
  };
}

function sheetsFrom(fates: readonly Fate[], toolsOf: ToolsOfMove): Sheets {
  return { bags: bagsOf(fates), countSheet: countSheetOf(fates), fasteners: fastenersOf(fates, toolsOf) };
}

function fatesIn(
  plan: number,
  lots: readonly Lot[],
  changes: readonly Change[],
  ledger: Ledger,
): readonly Fate[] {
  const { membersOf } = ledger.script;
  const byLot = new Map<Lot, Change[]>();
  for (const change of changes) {
    if (!membersOf(change.set)[plan]) continue;
    const earlier = byLot.get(change.lot);
    if (earlier) earlier.push(change);
    else byLot.set(change.lot, [change]);
  }
  return lots.flatMap((lot) => {
    const cell = (ledger.cells[lot.index] ?? []).find(({ set }) => membersOf(set)[plan]);
    if (!cell) return [];
    const replaced = membersOf(replacedIn(lot, cell.set, ledger))[plan] ?? false;
    return [{ lot, changes: byLot.get(lot) ?? [], end: cell.state, replaced }];
  });
}

/** A bag for each step that takes fasteners of the vehicle off, with the step that puts them back. */
function bagsOf(fates: readonly Fate[]): readonly Bag[] {
  const bySteps = new Map<string, { readonly fate: Fate; readonly index: number }[]>();
  const removals = fates
    .filter(({ lot }) => lot.thing?.kind === 'fastener')
    .flatMap((fate) => fate.changes.map((change, index) => ({ fate, index, change })))
    .filter(({ change }) => change.after === 'off' && change.move.step)
    .sort((a, b) => a.change.order - b.change.order);
  for (const { fate, index, change } of removals) {
    const id = change.move.step?.id ?? '';
    bySteps.set(id, [...(bySteps.get(id) ?? []), { fate, index }]);
  }
  return [...bySteps].map(([step, taken], bag) => ({
    number: bag + 1,
    step,
    contents: byItem(taken.map(({ fate }) => fate)).map(({ line, first }): BagLine => {
      const from = taken.find(({ fate }) => fate === first)?.index ?? 0;
      const putBack = first.changes.slice(from).find(({ after }) => isInPlace(after));
      return { ...line, backIn: putBack?.move.step?.id ?? null, end: first.end };
    }),
  }));
}

/** What became of every countable thing that was taken off the vehicle or came in the box. */
function countSheetOf(fates: readonly Fate[]): readonly CountLine[] {
  const told = fates.filter(
    ({ lot, changes }) => lot.thing?.kind === 'kit' || changes.some(({ after }) => after === 'off'),
  );
  return byItem(told).map(({ line, all, first }) => {
    const countIn = (isSuch: (end: StateName) => boolean) =>
      all.filter(({ end }) => isSuch(end)).reduce((sum, { lot }) => sum + lot.count, 0);
    const fitted = all.reduce((sum, fate) => sum + (isInPlace(fate.end) ? spareOf(fate) : 0), 0);
    return {
      item: line.item,
      from: first.lot.thing?.kind === 'kit' ? 'box' : 'vehicle',
      out: line.count,
      back: countIn(isInPlace) - fitted,
      discarded: countIn((end) => end === 'discarded'),
      handedOver: countIn((end) => end === 'given to the owner'),
      replaced: all.reduce(
        (sum, { lot, end, replaced }) => sum + (end === 'off' && replaced ? lot.count : 0),
        0,
      ),
      spare: all.reduce((sum, fate) => sum + spareOf(fate), 0),
    };
  });
}

/** Every fastener, with the steps that handle it. */
function fastenersOf(fates: readonly Fate[], toolsOf: ToolsOfMove): readonly FastenerLine[] {
  const fixings = fates.filter(({ lot }) => lot.thing?.fixing);
  return byItem(fixings).map(({ line, first: { lot, changes } }): FastenerLine => {
    const stepOf = (isSuch: (change: Change) => boolean) => changes.find(isSuch)?.move.step?.id ?? null;
    const tools = changes.flatMap(({ move }) => toolsOf(move));
    return {
      item: line.item,
      from: lot.thing?.kind === 'kit' ? 'box' : 'vehicle',
      count: line.side === 'each' ? 2 * lot.handled : lot.handled,
      perSide: line.side === 'each' ? lot.handled : null,
      removedIn: stepOf(({ after }) => after === 'off'),
      putIn: stepOf(({ before, after }) => !isInPlace(before) && isInPlace(after)),
      tightenedIn: changes.findLast(({ after }) => after === 'tight')?.move.step?.id ?? null,
      tools: [...new Set(tools)],
    };
  });
}

function isOfVehicle({ thing }: Lot): boolean {
  return thing?.kind === 'part' || thing?.kind === 'fastener';
}

/** The pieces of a lot from the box that are kept as spare. */
function spareOf({ lot: { thing, count }, end }: Fate): number {
  if (!thing?.spare) return 0;
  return isInPlace(end) ? thing.spare : end === 'in the box' ? count : 0;
}

/** The lots of each item together, in the order of declaration. */
function byItem(
  fates: readonly Fate[],
): readonly { readonly line: BenchItem; readonly first: Fate; readonly all: readonly Fate[] }[] {
  const groups = new Map<string, Fate[]>();
  for (const fate of [...new Set(fates)].sort((a, b) => a.lot.index - b.lot.index)) {
    const group = groups.get(fate.lot.id);
    if (group) group.push(fate);
    else groups.set(fate.lot.id, [fate]);
  }
  return [...groups.values()].flatMap((all) => {
    const lines: BenchItem[] = [];
    for (const { lot } of all) addTo(lines, lot);
    const [line] = lines;
    const [first] = all;
    return line && first ? [{ line, first, all }] : [];
  });
}
