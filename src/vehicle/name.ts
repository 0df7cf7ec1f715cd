import type { VehicleRecord } from './record.ts';

/** What tells a vehicle from all others, as it was written at the intake; `null` where nothing was. */
export function vehicleName({ vehicle }: Pick<VehicleRecord, 'vehicle'>): string | null {
  return vehicle.find(({ key, text }) => key === 'identity' && text.trim() !== '')?.text.trim() ?? null;
}
