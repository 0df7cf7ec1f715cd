import * as z from 'zod';
import { factSchema, lineSchema, nodeSchema } from '../record.ts';
import { type Comparison, changesWork } from './compare.ts';
import { changeWords } from './say.ts';

const edition = z.strictObject({ revision: z.string(), fingerprint: z.string() });
const place = z.number().int().nullable();

const change = z.strictObject({
  of: z.enum(['guide', 'item', 'sequence', 'section', 'step', 'template']),
  id: z.string().describe('As the newer record has it'),
  name: z.string(),
  number: z.number().int().nullable().describe('Of a step, where every build prints the same'),
  what: z.enum(['added', 'taken out', 'moved', 'changed']),
  touches: z
    .enum(['safety', 'torque', 'geometry', 'time', 'work', 'words'])
    .describe('What it bears on; what is only worded otherwise bears on words'),
  changesWork: z.boolean(),
  text: z.string().describe('In words'),
  usedIn: z.array(z.string()).describe('Of an item: the steps that handle or name it'),
  follows: z.string().nullable().describe('Of a refit that is worked out: the step whose change it follows'),
  place: z
    .strictObject({ from: place, to: place })
    .nullable()
    .describe('Of a step: its places among all steps, from 0, in the older and the newer record'),
  whole: nodeSchema.loose().nullable().describe('All of what was added or taken out'),
  fact: z
    .strictObject({ name: z.string(), before: factSchema.nullable(), after: factSchema.nullable() })
    .nullable(),
  line: z
    .strictObject({
      before: lineSchema.nullable(),
      after: lineSchema.nullable(),
      from: place,
      to: place,
      moved: z.boolean(),
    })
    .nullable()
    .describe('A paragraph, message or feature, with its places in its list, from 0'),
});

const comparisonSchema = z
  .strictObject({
    format: z.literal(1),
    guide: z.string(),
    from: edition,
    to: edition,
    changes: z.array(change),
    renamed: z
      .array(z.strictObject({ name: z.string(), from: z.string(), to: z.string() }))
      .describe('Other ids of the same things, which change nothing for a technician'),
  })
  .describe('What has changed of a guide between two records');

type ComparisonJson = z.infer<typeof comparisonSchema>;

/** A comparison as data for others. */
export function comparisonJson({ changes, renamed, ...editions }: Comparison): ComparisonJson {
  return {
    format: 1,
    ...editions,
    changes: changes.map(({ after, ...one }) => ({
      ...one,
      usedIn: [...one.usedIn],
      changesWork: changesWork(one),
      text: changeWords({ ...one, after }),
    })),
    renamed: renamed.map((one) => ({ ...one })),
  };
}

/** The JSON Schema (draft 7) of a comparison. */
export function comparisonSchemaJson(): string {
  return `${JSON.stringify(z.toJSONSchema(comparisonSchema, { target: 'draft-7' }), null, 1)}\n`;
}
