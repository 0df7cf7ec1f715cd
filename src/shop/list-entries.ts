import { z } from 'zod';
import type { Report } from '../diagnostics/report.ts';
import type { SourceFile } from '../source/source-file.ts';
import type { Span } from '../source/span.ts';
import { readYaml, type YamlPlaces, yamlText } from '../syntax/read-yaml.ts';
import type { Attribute, LeafDirective } from '../syntax/tree.ts';

type Scalar = string | number | boolean;

type Entry = { readonly name: string; readonly [key: string]: Scalar | readonly Scalar[] };

const anyValue = z.union([z.string(), z.number(), z.boolean(), z.array(z.union([z.string(), z.number()]))], {
  error: 'one value or a list',
});

/**
 * Reads a map of things by id (`trim-lever: {name: Trim lever, …}`) as leaf directives, so that a drive or a
 * range is read by the same rules as in a guide. The keys in `own` belong to the list and are no attributes;
 * `nameOf` picks the directive of an entry.
 */
export function readEntries(
  source: SourceFile,
  own: { readonly [key: string]: z.ZodType<Scalar | undefined> },
  nameOf: (entry: Entry) => string,
  report: Report,
): readonly LeafDirective[] {
  const whole = { file: source.path, start: 0, end: source.text.length };
  const schema = z.record(z.string(), z.object({ name: yamlText, ...own }).catchall(anyValue));
  const read = readYaml<Record<string, Entry>>({ value: source.text, at: whole }, schema, report);
  if (!read) return [];
  return Object.entries(read.value).map(([id, entry]) => {
    const attributes = Object.entries(entry).flatMap(([key, value]) =>
      key === 'name' || Object.hasOwn(own, key) ? [] : [attribute(source, read, [id, key], key, value)],
    );
    const idAt = read.keyAt([id]);
    const labelAt = inner(source, read.valueAt([id, 'name']));
    return {
      type: 'directive',
      form: 'leaf',
      name: nameOf(entry),
      nameAt: idAt,
      label: [{ type: 'text', value: entry.name, at: labelAt }],
      labelText: entry.name,
      labelAt,
      attributes: [{ name: 'id', value: id, nameAt: idAt, valueAt: idAt }, ...attributes],
      at: { ...idAt, end: Math.max(idAt.end, read.valueAt([id]).end) },
    };
  });
}

function attribute(
  source: SourceFile,
  places: YamlPlaces,
  path: readonly string[],
  name: string,
  value: Scalar | readonly Scalar[],
): Attribute {
  // In a directive, ids of a list stand apart by spaces and words by commas.
  const between = name === 'synonyms' ? ', ' : ' ';
  const text = typeof value === 'object' ? value.map(asWritten).join(between) : asWritten(value);
  return { name, value: text, nameAt: places.keyAt(path), valueAt: inner(source, places.valueAt(path)) };
}

/** `true` is another way to write `yes`. */
function asWritten(value: Scalar): string {
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  return String(value);
}

/** The place of a value without its quotes, so that a fault inside it is pointed at exactly. */
function inner(source: SourceFile, at: Span): Span {
  const first = source.text[at.start];
  const quoted = at.end - at.start >= 2 && (first === '"' || first === "'");
  return quoted ? { ...at, start: at.start + 1, end: at.end - 1 } : at;
}
