import * as z from 'zod';
import { sha256 } from '../store/content-hash.ts';

/**
 * What was released of a guide, as plain data that later versions of Baybook can read: everything that a technician is
 * told, taken apart into nodes of one shape, so that two records can be compared without the text of either.
 */

/** The number of this form of a record; a higher one comes from a later Baybook. */
export const RECORD_FORMAT = 1;

const id = z.string();

/** The shape of a fact. */
export const factSchema = z
  .strictObject({
    name: z.string().describe('What is stated: torque, count, time, holds'),
    says: z.string().describe('As a technician reads it'),
    means: z.string().optional().describe('The same for every way of writing it, where that differs'),
    ids: z
      .array(id)
      .optional()
      .describe('What it names, where it names things; their labels are what it says'),
  })
  .describe('One thing that is stated');

const act = z
  .strictObject({
    verb: z
      .string()
      .describe('What is done; "name" and "name step" only name, "only" limits words to some builds'),
    target: id,
    facts: z.array(factSchema),
  })
  .describe('Something that is done to a thing, or a thing that is named');

/** The shape of a line. */
export const lineSchema = z
  .strictObject({
    kind: z.string().describe('prose, danger, warning, caution, notice, note, hole, datum and so on'),
    id: id.optional().describe('Of a hole that a sentence can name'),
    text: z.string().describe('As read, for every build'),
    words: z
      .string()
      .describe('The words of the author alone: {0} stands for the first of what is done or named'),
    acts: z.array(act),
    facts: z.array(factSchema),
  })
  .describe('A paragraph, a safety message, a picture, or a feature of a template');

/** The shape of a node. */
export const nodeSchema = z.strictObject({
  id,
  name: z.string().describe('What it is called'),
  facts: z.array(factSchema),
  lines: z.array(lineSchema),
});

const itemNode = nodeSchema
  .extend({ kind: z.string() })
  .describe('A tool, part, fastener or whatever else is declared');

const stepNode = nodeSchema
  .extend({
    section: id,
    number: z.number().int().nullable().describe('As printed; null where it differs between builds'),
    fingerprint: z.string(),
    undoes: id.nullable().describe('The step that it was worked out from, where it undoes one'),
  })
  .describe('A step');

const outline = z
  .strictObject({
    builds: z.string().describe('The builds that the drawing is for; empty for all'),
    cuts: z.array(z.strictObject({ label: z.string(), path: z.string() })),
    datums: z.array(
      z.strictObject({ label: z.string(), axis: z.enum(['vertical', 'horizontal']), at: z.number() }),
    ),
    box: z
      .strictObject({ left: z.number(), top: z.number(), width: z.number(), height: z.number() })
      .describe('Around all lines to cut'),
  })
  .describe('The line to cut as SVG path data in millimetres, y down');

const templateNode = nodeSchema
  .extend({ fingerprint: z.string().describe('Of its lines to cut'), outlines: z.array(outline) })
  .describe('A cut template');

const recordSchema = z
  .strictObject({
    format: z.literal(RECORD_FORMAT),
    guide: id,
    title: z.string(),
    revision: z.string(),
    fingerprint: z.string(),
    release: z
      .strictObject({
        date: z.string().describe('ISO 8601, as the person gave it'),
        verified: z.string().describe('Who did the job by this guide, on a vehicle'),
        build: z.record(id, z.union([z.boolean(), z.string()])).describe('The build of that vehicle'),
        on: z.string().describe('The same in words; empty where all builds read alike'),
        note: z.string().nullable(),
        measured: z.record(id, z.string()).describe('Who measured each cut template on paper'),
      })
      .nullable()
      .describe('How it was released; null for a text that was not'),
    about: nodeSchema.describe('What the guide itself states'),
    items: z.array(itemNode),
    sequences: z.array(nodeSchema).describe('Orders of tightening across several fasteners'),
    sections: z.array(nodeSchema),
    steps: z.array(stepNode),
    templates: z.array(templateNode),
  })
  .describe('What was released of an install guide');

/** One thing that is stated. */
export type Fact = z.infer<typeof factSchema>;
/** Something that is done to a thing, or a thing that is named. */
export type Act = z.infer<typeof act>;
/** A paragraph, a safety message, a picture, or a feature of a template. */
export type RecordLine = z.infer<typeof lineSchema>;
/** What has an id, a name, facts and lines. */
export type RecordNode = z.infer<typeof nodeSchema>;
export type ItemNode = z.infer<typeof itemNode>;
export type StepNode = z.infer<typeof stepNode>;
export type TemplateNode = z.infer<typeof templateNode>;
export type RecordOutline = z.infer<typeof outline>;
/** What was released of a guide, or would be. */
export type GuideRecord = z.infer<typeof recordSchema>;
/** How a guide was released. */
export type ReleaseFacts = NonNullable<GuideRecord['release']>;

/** A record that was read, or why it cannot be. */
type ReadRecord =
  | { readonly ok: true; readonly record: GuideRecord }
  | { readonly ok: false; readonly why: 'not-json' | 'newer' | 'shape'; readonly detail: string };

/** Reads the text of `releases/N.json`. */
export function readRecord(text: string): ReadRecord {
  let plain: unknown;
  try {
    plain = JSON.parse(text);
  } catch {
    return { ok: false, why: 'not-json', detail: '' };
  }
  const format = z.looseObject({ format: z.number() }).safeParse(plain);
  if (format.success && format.data.format > RECORD_FORMAT)
    return { ok: false, why: 'newer', detail: String(format.data.format) };
  const read = recordSchema.safeParse(plain);
  if (read.success) return { ok: true, record: read.data };
  const [issue] = read.error.issues;
  return { ok: false, why: 'shape', detail: issue ? `${issue.path.join('.')}: ${issue.message}` : '' };
}

/** The text of `releases/N.json`: the same record gives the same bytes. */
export function recordText(record: GuideRecord): string {
  return `${JSON.stringify(record, null, 1)}\n`;
}

/** SHA-256 of a record's text in hexadecimal, whichever line endings version control has given it. */
export function recordHash(text: string): string {
  return sha256(text.replace(/\r\n/g, '\n'));
}

/** The JSON Schema (draft 7) of a record. */
export function recordSchemaJson(): string {
  return `${JSON.stringify(z.toJSONSchema(recordSchema, { target: 'draft-7' }), null, 1)}\n`;
}
