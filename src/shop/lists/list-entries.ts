import * as z from 'zod';
import type { Finding } from '../../diagnostics/finding.ts';
import { collector, type Report } from '../../diagnostics/report.ts';
import { finding } from '../../diagnostics/rule-card.ts';
import { idLike } from '../../directives/attributes/id-text.ts';
import type { DirectiveReader } from '../../directives/directive.ts';
import type { PictureFact } from '../../model/guide.ts';
import type { SourceFile } from '../../source/source-file.ts';
import type { Span } from '../../source/span.ts';
import { readYaml, type YamlPlaces, yamlKey, yamlText } from '../../syntax/read-yaml.ts';
import { textOversized } from '../../syntax/rules/text-oversized.ts';
import type { Attribute, LeafDirective } from '../../syntax/tree.ts';
import { checkShape } from '../../syntax/yaml-shape.ts';
import { resolvePath } from '../files/resolve-path.ts';
import { emptyScope } from './empty-scope.ts';

type Scalar = string | number | boolean;

type Entry = { readonly name: string; readonly [key: string]: Scalar | readonly Scalar[] };

const anyValue = z.union([z.string(), z.number(), z.boolean(), z.array(z.union([z.string(), z.number()]))], {
  error: 'one value or a list',
});

/** What every entry of a list says. */
export const entryName = yamlKey(
  yamlText,
  'text',
  'What it is called. What stands before the first comma is printed in a sentence; what follows sets it apart in a list.',
);

/** The key of an entry for the picture of its thing. */
export const ownPicture = yamlKey(
  yamlText.optional(),
  'the path of a picture, as in `pictures/tools/bit-t25.svg`',
  'What it looks like; stands on its page, small in the lists of a guide, and where its facts open over a step. The path is from the folder of this file.',
);

/** The key of an entry for the words of its picture. */
export const ownAlt = yamlKey(
  yamlText.optional(),
  'what is seen in it, in words',
  'What its picture shows, for whoever cannot see it; without it, its name is told.',
);

/** More than a large shop has (common practice, no source); each tool and kind of fastener gets a page. */
const mostEntries = 2_000;

/** One thing of a list, with the errors that were found in it alone. */
export interface ListEntry<R> {
  /** `null` where its id is beyond guessing. */
  readonly value: R | null;
  readonly id: string;
  /** Its own picture; `null` where none is named. */
  readonly picture: PictureFact | null;
  readonly errors: readonly Finding[];
}

/**
 * Reads a map of things by id (`trim-lever: {name: Trim lever, …}`) as leaf directives, so that a drive or a
 * range is read by the same rules as in a guide. The keys in `own` belong to the list and are no attributes;
 * `readerOf` picks the directive of an entry. Of an entry that cannot be used, its name is left, and everything
 * else is unknown, so that a guide that asks for it is not told of that again.
 */
export function readEntries<R extends { readonly id: string; readonly unknown: ReadonlySet<string> }>(
  source: SourceFile,
  own: { readonly [key: string]: z.ZodType<Scalar | undefined> },
  readerOf: (entry: Entry) => DirectiveReader<R>,
  report: Report,
): readonly ListEntry<R>[] {
  const whole = { file: source.path, start: 0, end: source.text.length };
  const map = readYaml({ value: source.text, at: whole }, z.record(z.string(), z.unknown()), report);
  if (!map) return [];
  const count = Object.keys(map.value).length;
  if (count > mostEntries) {
    const at = { ...whole, end: source.text.search(/[\r\n]|$/) };
    const message = `${count} entries stand in this list; it may have ${mostEntries}: take out what no guide uses`;
    report(finding(textOversized, at, message));
    return [];
  }
  const shape: z.ZodType<Entry> = z
    .object({ name: entryName, ...own }, { error: 'a map with at least its name, as in {name: Trim lever}' })
    .catchall(anyValue);
  return Object.entries(map.value).map(([id, written]) => {
    const { findings, report: note } = collector();
    const places = within(id, map);
    const entry = checkShape(written, shape, places, note);
    const read = entry && readerOf(entry).read(asDirective(id, entry, own, places, source), emptyScope(note));
    const likely = idLike(id) ?? id;
    const value = read ?? spoilt(likely, written, readerOf, places, source);
    for (const one of findings) report(one);
    const errors = findings.filter(({ severity }) => severity === 'error');
    // What an entry with an error leaves out may be what the error is about.
    const known = errors.length > 0 && entry && value ? { ...value, unknown: allOf(readerOf(entry)) } : value;
    const picture = entry && Object.hasOwn(own, 'picture') ? pictureOf(entry, places, source) : null;
    return { value: known, id: value?.id ?? id, picture, errors };
  });
}

/** The picture of an entry's thing, with its name as what is seen in it where nothing else is said. */
function pictureOf(entry: Entry, places: YamlPlaces, source: SourceFile): PictureFact | null {
  if (typeof entry.picture !== 'string') return null;
  const at = inner(source, places.valueAt(['picture']));
  return {
    path: resolvePath(source.path, entry.picture),
    src: { value: entry.picture, at },
    alt:
      typeof entry.alt === 'string'
        ? { value: entry.alt, at: inner(source, places.valueAt(['alt'])) }
        : { value: entry.name, at: inner(source, places.valueAt(['name'])) },
    figure: null,
    at,
  };
}

/** The places of one entry of a map. */
function within(id: string, { keyAt, valueAt, isPlain, commentAt }: YamlPlaces): YamlPlaces {
  return {
    keyAt: (path) => keyAt([id, ...path]),
    valueAt: (path) => valueAt([id, ...path]),
    isPlain: (path) => isPlain([id, ...path]),
    commentAt: (path) => commentAt([id, ...path]),
  };
}

/** What is left of an entry that has not the shape of one, or not the id. */
function spoilt<R extends { readonly unknown: ReadonlySet<string> }>(
  id: string,
  written: unknown,
  readerOf: (entry: Entry) => DirectiveReader<R>,
  places: YamlPlaces,
  source: SourceFile,
): R | null {
  const name =
    typeof written === 'object' && written !== null && 'name' in written ? String(written.name) : id;
  const entry = { name };
  const reader = readerOf(entry);
  const value = reader.read(
    asDirective(id, entry, {}, places, source),
    emptyScope(() => undefined),
  );
  return value && { ...value, unknown: allOf(reader) };
}

function allOf({ attributes }: DirectiveReader<unknown>): ReadonlySet<string> {
  return new Set(Object.keys(attributes));
}

function asDirective(
  id: string,
  entry: Entry,
  own: { readonly [key: string]: unknown },
  places: YamlPlaces,
  source: SourceFile,
): LeafDirective {
  const attributes = Object.entries(entry).flatMap(([key, value]) =>
    key === 'name' || Object.hasOwn(own, key) ? [] : [attribute(source, places, key, value)],
  );
  const idAt = places.keyAt([]);
  const labelAt = inner(source, places.valueAt(['name']));
  return {
    type: 'directive',
    form: 'leaf',
    name: 'entry',
    nameAt: idAt,
    label: [{ type: 'text', value: entry.name, at: labelAt }],
    labelText: entry.name,
    labelAt,
    attributes: [{ name: 'id', value: id, nameAt: idAt, valueAt: idAt }, ...attributes],
    at: { ...idAt, end: Math.max(idAt.end, places.valueAt([]).end) },
  };
}

function attribute(
  source: SourceFile,
  places: YamlPlaces,
  name: string,
  value: Scalar | readonly Scalar[],
): Attribute {
  // In a directive, ids of a list stand apart by spaces and words by commas.
  const between = name === 'synonyms' ? ', ' : ' ';
  const text = typeof value === 'object' ? value.map(asWritten).join(between) : asWritten(value);
  return { name, value: text, nameAt: places.keyAt([name]), valueAt: inner(source, places.valueAt([name])) };
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
