import { z } from 'zod';
import type { Report } from '../diagnostics/report.ts';
import { finding } from '../diagnostics/rule-card.ts';
import type { SourceFile } from '../source/source-file.ts';
import { type Written, wholeFile } from '../source/span.ts';
import { readYaml, type YamlValue, yamlText } from '../syntax/read-yaml.ts';
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

/** What stands at the top of a guide. */
export const frontMatterSchema = z.strictObject({
  title: yamlText,
  platform: yamlText,
  'part-number': yamlText.optional(),
  revision: yamlText.optional(),
  updated: date.optional(),
  options: optionsSchema,
  wishes: optionsSchema,
  when: yamlText.optional(),
  'meant-for': yamlText.optional(),
  'not-for': yamlText.optional(),
  'done-by': yamlText.optional(),
  'taken-off': yamlText.optional(),
  changes: yamlText.optional(),
  contents: z.record(z.string(), count).optional(),
});

/** What stands at the top of a platform. */
export const platformSchema = z.strictObject({
  title: yamlText,
  options: optionsSchema,
  builds: buildsSchema,
  impossible: impossibleSchema,
  words: wordsSchema,
});

/** What stands at the top of a procedure. */
export const procedureSchema = z.strictObject({ title: yamlText, options: optionsSchema });

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
