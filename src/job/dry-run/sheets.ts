import type { Item } from '../../model/item.ts';
import type { Bag, BagLine, BenchItem, CountLine, FastenerLine } from '../../model/job.ts';
import { isFixing } from '../actions.ts';
import { toolsOf } from '../uses.ts';
import { addTo, type Change } from './bench.ts';
import { isHere, type Ledger, stateOf } from './ledger.ts';
import type { Lot } from './lot.ts';
import { isInPlace } from './next-state.ts';

/** A bag for each step that takes fasteners of the vehicle off, with the step that puts them back. */
export function bagsOf(changes: readonly Change[], ledger: Ledger): readonly Bag[] {
  const bySteps = new Map<string, Change[]>();
  for (const change of changes) {
    const { lot, move, after } = change;
    if (after !== 'off' || lot.item?.kind !== 'fastener' || !move.step) continue;
    const { id } = move.step;
    bySteps.set(id, [...(bySteps.get(id) ?? []), change]);
  }
  return [...bySteps].map(([step, taken], index) => ({
    number: index + 1,
    step,
    contents: merged(taken.map(({ lot }) => lot)).map(({ line, lot }): BagLine => {
      const putBack = changes
        .slice(changes.indexOf(taken[0] as Change))
        .find((change) => change.lot === lot && isInPlace(change.after));
      return { ...line, backIn: putBack?.move.step?.id ?? null, end: stateOf(lot, ledger) };
    }),
  }));
}

/** What became of every countable thing that was taken off the vehicle or came in the box. */
export function countSheetOf(changes: readonly Change[], ledger: Ledger): readonly CountLine[] {
  const touched = new Set(changes.filter(({ after }) => after === 'off').map(({ lot }) => lot));
  const lots = ledger.script.lots.filter(
    (lot) => isHere(lot, ledger) && (lot.item?.kind === 'kit' || (isOfVehicle(lot.item) && touched.has(lot))),
  );
  return merged(lots).map(({ line, lots: same }) => {
    const countIn = (want: (state: ReturnType<typeof stateOf>) => boolean) =>
      same.filter((lot) => want(stateOf(lot, ledger))).reduce((sum, lot) => sum + lot.count, 0);
    const spare = spareOf(same, ledger);
    const fromBox = same[0]?.item?.kind === 'kit';
    return {
      item: line.item,
      from: fromBox ? 'box' : 'vehicle',
      out: line.count,
      back: countIn(isInPlace) - (countIn(isInPlace) > 0 ? spare : 0),
      discarded: countIn((state) => state === 'discarded'),
      handedOver: countIn((state) => state === 'given to the owner'),
      spare,
    };
  });
}

/** Every fastener of the build, with the steps that handle it. */
export function fastenersOf(changes: readonly Change[], ledger: Ledger): readonly FastenerLine[] {
  const lots = ledger.script.lots.filter(
    (lot) => lot.item !== null && isFixing(lot.item) && isHere(lot, ledger),
  );
  return merged(lots).map(({ line, lot }): FastenerLine => {
    const own = changes.filter((change) => change.lot === lot);
    const stepOf = (wanted: (change: Change) => boolean) => own.find(wanted)?.move.step?.id ?? null;
    const last = own.findLast(({ after }) => after === 'tight')?.move;
    const item = lot.item ?? undefined;
    const tools = own.flatMap(({ move }) => toolsOf(move.action, item).map((tool) => tool.value));
    return {
      item: line.item,
      from: item?.kind === 'kit' ? 'box' : 'vehicle',
      count: line.count,
      perSide: line.side === 'each' ? lot.count : null,
      removedIn: stepOf(({ after }) => after === 'off'),
      putIn: stepOf(({ before, after }) => !isInPlace(before) && isInPlace(after)),
      tightenedIn: last?.step?.id ?? null,
      tools: [...new Set(tools)],
    };
  });
}

function isOfVehicle(item: Item | null): boolean {
  return item?.kind === 'part' || item?.kind === 'fastener';
}

function spareOf(lots: readonly Lot[], ledger: Ledger): number {
  return lots.reduce((sum, lot) => {
    const { item } = lot;
    if (item?.kind !== 'kit' || !item.spare) return sum;
    const state = stateOf(lot, ledger);
    const kept = isInPlace(state) ? item.spare.value : state === 'in the box' ? lot.count : 0;
    return sum + kept;
  }, 0);
}

/** Lots in the order of declaration, both sides of an item in one line. */
function merged(
  lots: readonly Lot[],
): readonly { readonly line: BenchItem; readonly lot: Lot; readonly lots: readonly Lot[] }[] {
  const byItem = new Map<string, Lot[]>();
  for (const lot of [...new Set(lots)].sort((a, b) => a.index - b.index)) {
    byItem.set(lot.id, [...(byItem.get(lot.id) ?? []), lot]);
  }
  return [...byItem.values()].flatMap((same) => {
    const lines: BenchItem[] = [];
    for (const lot of same) addTo(lines, lot);
    const [lot] = same;
    const [line] = lines;
    return line && lot ? [{ line, lot, lots: same }] : [];
  });
}
