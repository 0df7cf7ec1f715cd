import { bytesOfBase64, readVehicleRecord } from '../../../src/vehicle/read.ts';
import {
  VEHICLE_RECORD_FORM,
  VEHICLE_RECORD_VERSION,
  type VehicleRecord,
  vehicleRecordLimits,
} from '../../../src/vehicle/record.ts';
import { make } from '../bay/elements.ts';
import { dayOf, nameOf, type WholeRecord } from './kept.ts';

/** The text of the file that goes along with a vehicle. */
export function recordFile({ record, photographs }: WholeRecord): string {
  const whole: VehicleRecord = {
    ...record,
    form: VEHICLE_RECORD_FORM,
    version: VEHICLE_RECORD_VERSION,
    photographs: photographs.map(({ jpeg, ...photograph }) => ({ ...photograph, jpeg: base64(jpeg) })),
  };
  return `${JSON.stringify(whole, null, 1)}\n`;
}

/** The record in a file that someone has chosen, or why there is none: a sentence for the technician. */
export async function recordIn(file: Blob): Promise<WholeRecord | string> {
  // Its bytes are at least as many as its characters: a film chosen by mistake is not even read.
  if (file.size > 2 * vehicleRecordLimits.file)
    return 'This file is larger than any vehicle record. Nothing was changed.';
  const read = readVehicleRecord(await file.text().catch(() => ''));
  if (!read.ok)
    return `${read.problem.charAt(0).toUpperCase()}${read.problem.slice(1)}. Nothing was changed.`;
  const { photographs, ...record } = read.record;
  return {
    record,
    photographs: photographs.map(({ jpeg, ...photograph }) => ({
      ...photograph,
      jpeg: bytesOfBase64(jpeg) ?? new Uint8Array(),
    })),
  };
}

/** A button that lets someone choose a saved record. */
export function fileChooser(take: (file: File) => void): HTMLElement {
  const input = make('input', '');
  input.type = 'file';
  input.accept = 'application/json,.json';
  input.addEventListener('change', () => {
    const [file] = input.files ?? [];
    // The same file may be chosen again.
    if (file) take(file);
    input.value = '';
  });
  return make('label', 'vehicle-take', 'Open a saved record', input);
}

/** Saves the record where the browser saves what is downloaded. */
export function saveRecord(whole: WholeRecord): string {
  const link = document.createElement('a');
  link.href = URL.createObjectURL(new Blob([recordFile(whole)], { type: 'application/json' }));
  link.download = fileName(whole);
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 60_000);
  return link.download;
}

function fileName({ record }: WholeRecord): string {
  const plain = (text: string) =>
    text
      .replace(/[^\p{L}\p{N}]+/gu, '-')
      .replace(/^-|-$/g, '')
      .slice(0, 40);
  return `${plain(nameOf(record)) || 'record'}_${plain(record.guide.id)}_${dayOf(record.begun)}.json`;
}

/** In pieces: one call takes only so many arguments. */
function base64(bytes: Uint8Array): string {
  let binary = '';
  for (let index = 0; index < bytes.length; index += 8192)
    binary += String.fromCharCode(...bytes.subarray(index, index + 8192));
  return btoa(binary);
}
