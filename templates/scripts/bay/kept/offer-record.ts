import { loadBeside } from '../../beside.ts';
import { say } from '../elements.ts';
import type { Keeper } from './keeper.ts';
import { openRecordOf } from './open-record.ts';

/** What the script of records hands to the page of a guide. */
export type KeepVehicleRecord = (place: HTMLElement, keeper: Keeper) => void;

declare global {
  var keepVehicleRecord: KeepVehicleRecord | undefined;
}

/** Offers the record of the vehicle. Its script is loaded when it is asked for, or where a record is open already. */
export function offerRecord(keeper: Keeper): void {
  const place = document.querySelector<HTMLElement>('.vehicle-offer');
  if (!place) return;
  const said = place.querySelector('.vehicle-said');
  const load = async (): Promise<void> => {
    await loadBeside('vehicle-record').catch(() => {});
    if (globalThis.keepVehicleRecord) globalThis.keepVehicleRecord(place, keeper);
    else if (said)
      say(said, 'The part of the page that keeps records cannot be loaded now. The job goes on.');
  };
  place.querySelector('.vehicle-ask')?.addEventListener('click', () => void load());
  place.hidden = false;
  if (openRecordOf(keeper.page) !== null) void load();
}
