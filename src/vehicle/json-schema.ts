import { toJSONSchema } from 'zod/mini';
import { vehicleRecordSchema } from './record.ts';

/** The JSON Schema (draft 7) of a saved record. */
export function vehicleRecordSchemaJson(): string {
  return `${JSON.stringify(toJSONSchema(vehicleRecordSchema, { target: 'draft-7' }), null, 1)}\n`;
}
