import * as z from 'zod';
import type { Report } from '../diagnostics/report.ts';
import { finding } from '../diagnostics/rule-card.ts';
import type { Written } from '../source/span.ts';
import { composeYaml, mostLexemes } from './compose-yaml.ts';
import { textOversized } from './rules/text-oversized.ts';
import { faultsOf, isKeyed } from './yaml-faults.ts';
import { type YamlPlaces, yamlPlaces } from './yaml-places.ts';
import { yamlAliasBomb, yamlNotAMap } from './yaml-rules.ts';
import { checkShape } from './yaml-shape.ts';

export type { YamlPath, YamlPlaces } from './yaml-places.ts';

/** A YAML text that was read and has the shape asked for. */
export interface YamlValue<T> extends YamlPlaces {
  readonly value: T;
}

const excessWords = {
  large: `this YAML is too large: it has more than ${mostLexemes / 1000} thousand words and marks; take out what no guide uses`,
  deep: 'lists or maps stand too deep in one another',
} as const;

/**
 * Reads a YAML text (front matter, or a whole file) and holds it against a schema. `written.at` is where the text
 * stands in its file, as it stands there, line endings included. Every fault is reported at its own line and
 * column; `null` after a fault that leaves the value unusable.
 */
export function readYaml<T>(
  written: Written<string>,
  schema: z.ZodType<T>,
  report: Report,
): YamlValue<T> | null {
  // The parser knows no line that ends with a carriage return alone; the places stay the same.
  const text = { value: written.value.replace(/\r(?!\n)/g, '\n'), at: written.at };
  const document = composeYaml(text.value);
  if ('excess' in document) {
    const at = { ...text.at, end: text.at.start + text.value.search(/[\r\n]|$/) };
    report(finding(textOversized, at, excessWords[document.excess]));
    return null;
  }
  const { broken, doubtful } = faultsOf(document, text);
  for (const one of broken) report(one);
  if (broken.length > 0) return null;
  if (!isKeyed(document)) {
    const empty = document.contents === null || document.toJS() === null;
    const found = empty ? 'nothing' : 'something else';
    const at = { ...text.at, end: text.at.start + text.value.search(/[\r\n]|$/) };
    report(finding(yamlNotAMap, at, `expected keys with values (title: …), found ${found}`));
    return null;
  }
  for (const one of doubtful) report(one);
  const places = yamlPlaces(document, text);
  let plain: unknown;
  try {
    plain = document.toJS({ maxAliasCount: 100 });
  } catch {
    // Unknown aliases are reported above; what is left to throw is a count of aliases past the limit.
    report(finding(yamlAliasBomb, places.keyAt([]), 'the references in this text multiply past all use'));
    return null;
  }
  const value = checkShape(plain, schema, places, report);
  return value === null ? null : { value, ...places };
}

/** Text; a number that is written bare is taken as the text it is. */
export const yamlText: z.ZodType<string> = z
  .union([z.string(), z.number()], { error: 'text' })
  .transform(String)
  .refine((text) => text.trim() !== '', { error: 'text' })
  // biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is looked for; no page can hold them
  .refine((text) => !/[\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f]/.test(text), {
    error: 'text without control characters',
  });

/**
 * A key of a YAML file as the handbook and the schemas for editors tell of it.
 *
 * @param expects what is written there: "a list of papers, as in `[A4, Letter]`"
 * @param means what it says, in a technician's words
 */
export function yamlKey<S extends z.ZodType>(schema: S, expects: string, means: string): S {
  return schema.meta({ description: means, expects });
}

/** `yes` or `no`, which YAML 1.2 leaves as words; `true` and `false` serve as well. */
export const yamlYesNo: z.ZodType<boolean> = z
  .union([z.boolean(), z.enum(['yes', 'no'])], { error: 'yes or no' })
  .transform((value) => value === true || value === 'yes');
