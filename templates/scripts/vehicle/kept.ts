import { vehicleName } from '../../../src/vehicle/name.ts';
import type { VehicleRecord } from '../../../src/vehicle/record.ts';

/** A record without its photographs, which the device keeps apart. */
export type KeptRecord = Omit<VehicleRecord, 'photographs'>;

/** A photograph as evidence. */
export interface Photograph {
  readonly id: string;
  /** The place that asked for it; empty for none. */
  readonly key: string;
  readonly shows: string;
  /** ISO 8601. */
  readonly taken: string;
  readonly width: number;
  readonly height: number;
  readonly jpeg: Uint8Array<ArrayBuffer>;
}

/** A record with its photographs. Never changed in place. */
export interface WholeRecord {
  readonly record: KeptRecord;
  readonly photographs: readonly Photograph[];
}

/** So many random bytes in hexadecimal: by them two devices never give two things one number. */
export function randomId(bytes: number): string {
  const drawn = crypto.getRandomValues(new Uint8Array(bytes));
  return [...drawn].map((byte) => byte.toString(16).padStart(2, '0')).join('');
}

/** What the vehicle is known by; the day on which the record was begun, where nothing is written yet. */
export function nameOf(record: Pick<KeptRecord, 'vehicle' | 'begun'>): string {
  return vehicleName(record) ?? `Not named yet, begun ${dayOf(record.begun)}`;
}

/** The day of a time, as `2026-10-02`, by this device's clock. */
export function dayOf(time: string): string {
  const date = new Date(time);
  const two = (value: number) => String(value).padStart(2, '0');
  return `${date.getFullYear()}-${two(date.getMonth() + 1)}-${two(date.getDate())}`;
}

/** "revision 3, 2 October 2026, 3f2a 9c04 b7d1": under what work was done. */
export function editionOf({
  edition,
  fingerprint,
}: Pick<KeptRecord['work'][number], 'edition' | 'fingerprint'>): string {
  const print = (fingerprint.slice(0, 12).match(/.{1,4}/g) ?? []).join('\u00a0');
  return edition === '' ? print : `${edition}, ${print}`;
}
