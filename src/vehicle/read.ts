import type * as z from 'zod/mini';
import { jpegSize } from './jpeg.ts';
import {
  VEHICLE_RECORD_FORM,
  VEHICLE_RECORD_VERSION,
  type VehicleRecord,
  vehicleRecordLimits,
  vehicleRecordSchema,
} from './record.ts';

/** A record that was read, or why it cannot be: one sentence without a full stop. */
type ReadVehicleRecord =
  | { readonly ok: true; readonly record: VehicleRecord }
  | { readonly ok: false; readonly problem: string };

const refused = (problem: string) => ({ ok: false, problem }) as const;

/** Reads the text of a saved record, whoever wrote it: what is not wholly a record is none. */
export function readVehicleRecord(text: string): ReadVehicleRecord {
  if (text.length > vehicleRecordLimits.file) return refused('this file is larger than any vehicle record');
  let plain: unknown;
  try {
    plain = JSON.parse(text);
  } catch {
    return refused(
      text.includes(VEHICLE_RECORD_FORM)
        ? 'this vehicle record is not whole: part of the file is missing or damaged; save it again where it was made'
        : 'this file is no vehicle record',
    );
  }
  const { form, version }: { form?: unknown; version?: unknown } =
    typeof plain === 'object' && plain !== null ? plain : {};
  if (form !== VEHICLE_RECORD_FORM) return refused('this file is no vehicle record');
  if (typeof version === 'number' && version > VEHICLE_RECORD_VERSION)
    return refused(
      `this vehicle record has the form ${version}; this Baybook reads form ${VEHICLE_RECORD_VERSION}`,
    );
  const read = vehicleRecordSchema.safeParse(plain);
  if (!read.success) {
    const [issue] = read.error.issues;
    return refused(issue ? issueWords(issue) : 'this file is no vehicle record');
  }
  const problem = photographProblem(read.data);
  return problem === null ? { ok: true, record: read.data } : refused(problem);
}

/** What is wrong, with its place in the file: names of others are cut short, as they may be of any length. */
function issueWords({ code, path, ...issue }: z.core.$ZodIssue): string {
  const place = path.map((part) => String(part).slice(0, 40)).join('.');
  const where = place === '' ? 'at its top' : `at ${place}`;
  if (code === 'unrecognized_keys' && 'keys' in issue) {
    const [key = ''] = issue.keys;
    return `this vehicle record holds “${key.slice(0, 40)}” ${where}, which no record has; the file was changed`;
  }
  const what = code === 'too_big' ? 'more than a record can have' : 'not what a record has there';
  return `this vehicle record is damaged or was changed: ${where} stands ${what}`;
}

/** A picture that says another size than it has may be made to fill the memory of whoever opens it. */
function photographProblem({ photographs }: VehicleRecord): string | null {
  const ids = new Set<string>();
  for (const [index, { id, width, height, jpeg }] of photographs.entries()) {
    const name = `photograph ${index + 1} of this vehicle record`;
    if (ids.has(id)) return `${name} bears the number of another`;
    ids.add(id);
    const bytes = bytesOfBase64(jpeg);
    const size = bytes && jpegSize(bytes);
    if (!size) return `${name} is no JPEG picture`;
    if (size.width !== width || size.height !== height)
      return `${name} is ${size.width} × ${size.height} pixels and says ${width} × ${height}`;
  }
  return null;
}

/** The bytes of base64; `null` where it is none. */
export function bytesOfBase64(text: string): Uint8Array<ArrayBuffer> | null {
  try {
    const binary = atob(text);
    const bytes = new Uint8Array(binary.length);
    for (let index = 0; index < binary.length; index += 1) bytes[index] = binary.charCodeAt(index);
    return bytes;
  } catch {
    return null;
  }
}
