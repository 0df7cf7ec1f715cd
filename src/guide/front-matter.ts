import * as z from 'zod';
import type { Report } from '../diagnostics/report.ts';
import { finding } from '../diagnostics/rule-card.ts';
import type { SourceFile } from '../source/source-file.ts';
import { type Written, wholeFile } from '../source/span.ts';
import { readYaml, type YamlValue, yamlKey, yamlText } from '../syntax/read-yaml.ts';
import type { Document } from '../syntax/tree.ts';
import { buildsSchema, impossibleSchema, optionsSchema } from './options.ts';
import { frontMatterMissing } from './rules/front-matter-missing.ts';
import { wordsSchema } from './words.ts';

const date = z
  .string({ error: 'a date by year, month and day, as in 2026-10-02' })
  .refine(isDate, { error: 'a date by year, month and day, as in 2026-10-02' });

/** A day of the calendar as ISO 8601 writes it: 2026-02-31 is none. */
function isDate(text: string): boolean {
  const day = new Date(`${text}T00:00:00Z`);
  return /^\d{4}-\d\d-\d\d$/.test(text) && !Number.isNaN(day.getTime()) && day.toISOString().startsWith(text);
}

const count = z
  .number({ error: 'a whole number above zero' })
  .int({ error: 'a whole number above zero' })
  .positive({ error: 'a whole number above zero' });

const optionsExpect =
  'a map by id, as in `{fog: Front fog lamps}`; a choice has `one-of`, as in `{lamps: {one-of: {halogen: Halogen, led: LED}}}`';

/** What stands at the top of a guide. */
export const frontMatterSchema = z.strictObject({
  title: yamlKey(
    yamlText,
    'text',
    'What is fitted, and where; what stands before the first comma is its short name.',
  ),
  platform: yamlKey(yamlText, 'the name of a file in `platforms/`', 'The vehicle that the guide is for.'),
  'part-number': yamlKey(
    yamlText.optional(),
    'text',
    'The number of the accessory, as it stands on its box.',
  ),
  revision: yamlKey(
    yamlText.optional(),
    'text, as in `3`',
    'Which state of the guide this is; it stands on every sheet.',
  ),
  updated: yamlKey(date.optional(), 'a date, as in `2026-10-02`', 'When the guide was last changed.'),
  options: yamlKey(
    optionsSchema,
    optionsExpect,
    'What some vehicles have and others not, where the platform does not say it.',
  ),
  wishes: yamlKey(
    optionsSchema,
    optionsExpect,
    'What the customer decides. It is asked apart from what the vehicle is.',
  ),
  when: yamlKey(
    yamlText.optional(),
    'a condition on the build, as in `fog`',
    'The vehicles that the guide is for at all; for others it says that it is not meant for them.',
  ),
  'meant-for': yamlKey(yamlText.optional(), 'text', 'What the accessory is meant for; stands on the cover.'),
  'not-for': yamlKey(yamlText.optional(), 'text', 'What it must not be used for; stands on the cover.'),
  'done-by': yamlKey(yamlText.optional(), 'text', 'Who may do the work: training, licence.'),
  'taken-off': yamlKey(
    yamlText.optional(),
    'text',
    'What happens with parts that stay off; stands on the hand-over sheet.',
  ),
  changes: yamlKey(yamlText.optional(), 'text', 'What is other than in the revision before.'),
  contents: yamlKey(
    z.record(z.string(), count).optional(),
    'a map of kit ids and counts, as in `{m8-nut: 4}`',
    "The box's own packing list, as a second source: what differs from the kit is a finding. A lot that is declared in parts stands under all their ids, as in `washer-left washer-right: 4`.",
  ),
});

const vehicleOptions = yamlKey(
  optionsSchema,
  optionsExpect,
  'What some of these vehicles have and others not; all guides of the platform may ask for it.',
);

/** What stands at the top of a platform. */
export const platformSchema = z.strictObject({
  title: yamlKey(yamlText, 'text', 'What the vehicle is called.'),
  options: vehicleOptions,
  builds: yamlKey(
    buildsSchema,
    'a list of maps, as in `[{fog: yes, lamps: led}]`',
    'The builds that there are, where they are few. Without it, all combinations count, less those that are impossible.',
  ),
  impossible: yamlKey(
    impossibleSchema,
    'a list of conditions, as in `["fog and lamps is halogen"]`',
    'Combinations that no vehicle has.',
  ),
  words: yamlKey(wordsSchema, 'a map', 'As in `shop.yaml`, for this platform alone.'),
});

/** What stands at the top of a procedure. */
export const procedureSchema = z.strictObject({
  title: yamlKey(yamlText, 'text', 'What is done, as its heading says it.'),
  options: yamlKey(
    optionsSchema,
    optionsExpect,
    'What its steps ask of the vehicle; the guide that places it passes its own with `options=`.',
  ),
});

/** Reads a file's front matter; `null`, and a finding, where there is none or it cannot be read. */
export function readFrontMatter<T>(
  document: Document,
  source: SourceFile,
  schema: z.ZodType<T>,
  report: Report,
): YamlValue<T> | null {
  if (document.frontMatter) return readYaml(document.frontMatter, schema, report);
  // A fence below the first line, or one that is never closed, has been told of by the reader of the text.
  if (!/^(\uFEFF?---|\s+---)\s*$/m.test(source.text.slice(0, 200))) {
    const least = requiredKeys(schema).map((key) => `${key}: …`);
    const message = 'this file lacks its front matter, which begins with --- on the first line';
    const notes = [
      { message: `the least that it says: ${['---', ...least, '---'].join(' / ')}, a line each` },
    ];
    const at = { ...wholeFile(source.path), end: Math.min(1, source.text.length) };
    report(finding(frontMatterMissing, at, message, { notes }));
  }
  return null;
}

/** The keys that must be there, read from the schema's JSON Schema, which is zod's public description. */
function requiredKeys(schema: z.ZodType): readonly string[] {
  const { required } = z.toJSONSchema(schema, { io: 'input', unrepresentable: 'any' });
  return required ?? [];
}

/** A value of the front matter with its place; `null` where it is not written. */
export function written<V extends string>(
  value: V | undefined,
  front: YamlValue<unknown>,
  key: string,
): Written<V> | null {
  return value === undefined ? null : { value, at: front.valueAt([key]) };
}
