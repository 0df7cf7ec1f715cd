import type { StateName } from '../../model/violation.ts';
import { isHere, type Ledger, lotsAt, stateOf, tell } from './ledger.ts';
import type { Lot } from './lot.ts';
import { isGone, isInPlace } from './next-state.ts';

/** Holds the vehicle, the bench and the box against what they should be when the work is done. */
export function judgeEnd(ledger: Ledger): void {
  for (const lot of ledger.script.lots) {
    if (!isHere(lot, ledger)) continue;
    const state = stateOf(lot, ledger);
    if (!mayEndAs(state, lot, ledger)) tellEnd(lot, { kind: 'left', item: lot.id, state }, ledger);
    if (isLost(lot, state, ledger)) tellEnd(lot, { kind: 'one-time-lost', item: lot.id }, ledger);
    judgeSupply(lot, ledger);
  }
}

type Ending =
  | { readonly kind: 'left'; readonly item: string; readonly state: StateName }
  | { readonly kind: 'one-time-lost'; readonly item: string }
  | {
      readonly kind: 'supply-overused' | 'supply-underused';
      readonly item: string;
      readonly used: number;
      readonly declared: number;
      readonly from: Ledger['usedAt'][number];
    };

/** A fault of the end is shown at the last action that left it so. */
function tellEnd(lot: Lot, what: Ending, ledger: Ledger): void {
  const last = ledger.last[lot.index] ?? null;
  const at = last?.action.at ?? lot.item?.idAt;
  if (!at) return;
  const place = { at, action: last?.action ?? null, step: last?.step ?? null, side: lot.side };
  tell(ledger, lot, { ...what, ...place });
}

function mayEndAs(state: StateName, lot: Lot, ledger: Ledger): boolean {
  const { item } = lot;
  switch (item?.kind) {
    case 'part':
    case 'fastener':
      return state === 'in place' || state === 'tight' || isGone(state);
    case 'kit':
      if (state === 'in the box') return item.unknown.has('spare') || (item.spare?.value ?? 0) >= lot.count;
      return state === 'in place' || state === 'tight' || isGone(state);
    case 'connector':
      return state === 'mated' || hangsOnNothing(lot, ledger);
    case 'condition':
      return state === 'does not hold' || item.stays;
    case 'supply':
      return state === 'not on' || !item.temporary;
    default:
      return true;
  }
}

/** All that a plug sat on has left the job. */
function hangsOnNothing(lot: Lot, ledger: Ledger): boolean {
  const on = lotsAt(lot.on, ledger);
  return lot.on.length > 0 && on.every((one) => isGone(stateOf(one, ledger)));
}

/** A one-time fastener that is gone has a replacement in its place. */
function isLost(lot: Lot, state: StateName, ledger: Ledger): boolean {
  if (lot.item?.kind !== 'fastener' || lot.item.reuse || !isGone(state)) return false;
  return !lotsAt(lot.replacedBy, ledger).some((one) => isInPlace(stateOf(one, ledger)));
}

/** Less than this share of what is declared is used: an application has been forgotten, or too much is fetched. */
const LEAST_USED = 0.6;

/** No supply runs out, and the gather list does not ask for far more than the steps use. */
function judgeSupply(lot: Lot, ledger: Ledger): void {
  const { item } = lot;
  if (item?.kind !== 'supply' || !item.quantity || item.unknown.has('quantity')) return;
  const used = ledger.used[lot.index] ?? 0;
  const from = ledger.usedAt[lot.index] ?? [];
  const { base: declared } = item.quantity.value;
  if (from.length === 0) return;
  // Sums of decimals are off by less than a billionth.
  if (used > declared * (1 + 1e-9)) {
    tellEnd(lot, { kind: 'supply-overused', item: item.id, used, declared, from }, ledger);
  } else if (!item.temporary && used < declared * LEAST_USED) {
    tellEnd(lot, { kind: 'supply-underused', item: item.id, used, declared, from }, ledger);
  }
}
