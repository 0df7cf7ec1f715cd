import * as z from 'zod';
import { type RecallChanges, type RecalledVehicle, type RecallQuery, recallTouches } from './recall.ts';
import type { GuideRecord } from './record.ts';

const edition = z.strictObject({ revision: z.string().nullable(), fingerprint: z.string() });

const recallSchema = z
  .strictObject({
    format: z.literal(1),
    guide: z.string(),
    revision: z.string().nullable().describe('As it was asked for'),
    fingerprint: z.string().nullable().describe('As it was asked for: its beginning'),
    released: edition.nullable().describe('The release that this is; null where it was never released'),
    now: edition,
    records: z.number().int().describe('How many were read'),
    vehicles: z.array(
      z.strictObject({
        file: z.string(),
        name: z.string().nullable(),
        visit: z.string().nullable().describe('Title of the visit in which the guide was worked by'),
        revision: z.string().nullable(),
        fingerprint: z.string(),
        since: z.string().describe('Day on which the work began, ISO 8601'),
        signatures: z.array(z.strictObject({ what: z.string(), name: z.string(), on: z.string() })),
      }),
    ),
    changes: z
      .array(
        z.strictObject({
          touches: z.enum(recallTouches),
          of: z.string(),
          id: z.string(),
          heading: z.string(),
          text: z.string().describe('In words'),
          usedIn: z.array(z.string()).describe('Of an item: the steps that handle or name it'),
        }),
      )
      .nullable()
      .describe(
        'What has changed since that bears on safety, torque or geometry; null where it cannot be told',
      ),
    others: z.number().int().nullable().describe('How many other changes of the work there are'),
    unread: z
      .array(z.strictObject({ file: z.string(), problem: z.string() }))
      .describe('Files that are no sound record'),
  })
  .describe('Which vehicles were worked on under a revision of a guide, and what has changed since');

type RecallJson = z.infer<typeof recallSchema>;

/** All that a recall has found. */
export interface Recall {
  readonly query: RecallQuery;
  readonly released: GuideRecord | null;
  readonly now: GuideRecord;
  /** How many records were read. */
  readonly records: number;
  readonly vehicles: readonly RecalledVehicle[];
  readonly changes: RecallChanges | null;
  readonly unread: readonly { readonly file: string; readonly problem: string }[];
}

/** A recall as data for others. */
export function recallJson({ query, released, now, changes, ...found }: Recall): RecallJson {
  const editionOf = ({ revision, fingerprint }: GuideRecord) => ({ revision, fingerprint });
  return {
    format: 1,
    ...query,
    released: released && editionOf(released),
    now: editionOf(now),
    records: found.records,
    vehicles: found.vehicles.map((one) => ({ ...one, signatures: [...one.signatures] })),
    changes:
      changes?.grave.flatMap(({ touches, changes: things }) =>
        things.flatMap(({ of, id, heading, lines }) =>
          lines.map(({ text, usedIn }) => ({ touches, of, id, heading, text, usedIn: [...usedIn] })),
        ),
      ) ?? null,
    others: changes?.others ?? null,
    unread: found.unread.map((one) => ({ ...one })),
  };
}

/** The JSON Schema (draft 7) of a recall. */
export function recallSchemaJson(): string {
  return `${JSON.stringify(z.toJSONSchema(recallSchema, { target: 'draft-7' }), null, 1)}\n`;
}
