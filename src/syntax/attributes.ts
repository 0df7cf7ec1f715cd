import type { SourceFile } from '../source/source-file.ts';
import { type Span, wholeFile } from '../source/span.ts';
import type { DirectiveFacts, MetAttribute } from './directive-places.ts';
import type { Attribute } from './tree.ts';

/** How an attribute is written, for the rules that judge the writing. */
export type Writing = 'quoted' | 'curly' | 'unquoted' | 'flag' | 'id' | 'class';

/** An attribute with its places and how it is written. */
export interface PlacedAttribute extends Attribute {
  readonly writing: Writing;
}

/** The attributes of a directive with their places, all of them, in the order written. */
export function placeAttributes(source: SourceFile, facts: DirectiveFacts): PlacedAttribute[] {
  return facts.attributes.map((met) => place(source, met));
}

function place(source: SourceFile, met: MetAttribute): PlacedAttribute {
  const raw = source.text.slice(met.start, met.end);
  const span = (start: number, end: number) => ({ file: source.path, start, end });
  if (raw.startsWith('#') || raw.startsWith('.')) {
    const value = {
      value: met.value,
      nameAt: span(met.start, met.end),
      valueAt: span(met.start + 1, met.end),
    };
    return { name: met.name, ...value, writing: raw.startsWith('#') ? 'id' : 'class' };
  }
  const nameAt = span(met.start, met.start + met.name.length);
  const equals = /^\s*=\s*/.exec(raw.slice(met.name.length));
  if (!equals) return { name: met.name, value: null, nameAt, valueAt: nameAt, writing: 'flag' };
  const start = nameAt.end + equals[0].length;
  const curly = /^[“”„«][^“”»]*[“”»]$/.test(met.value);
  if (curly) {
    const inner = { value: met.value.slice(1, -1), valueAt: span(start + 1, met.end - 1) };
    return { name: met.name, nameAt, ...inner, writing: 'curly' };
  }
  const quoted = /^["']/.test(source.text.slice(start, met.end));
  const valueAt = quoted ? span(start + 1, met.end - 1) : span(start, met.end);
  return { name: met.name, value: met.value, nameAt, valueAt, writing: quoted ? 'quoted' : 'unquoted' };
}

/**
 * Whether an attribute is the second or later word of an unquoted value (`say=lift away`): a bare word after
 * an unquoted value or after another such word, that no directive knows as a flag.
 */
export function isLooseWord(
  attributes: readonly PlacedAttribute[],
  index: number,
  flags: ReadonlySet<string>,
): boolean {
  const attribute = attributes[index];
  const before = attributes[index - 1];
  if (attribute?.writing !== 'flag' || flags.has(attribute.name) || !before) return false;
  return before.writing === 'unquoted' || isLooseWord(attributes, index - 1, flags);
}

/** The place of an unquoted value with the loose words after it. */
export function wordsOf(
  attributes: readonly PlacedAttribute[],
  index: number,
  flags: ReadonlySet<string>,
): Span {
  let last = index;
  while (isLooseWord(attributes, last + 1, flags)) last += 1;
  const { start, file } = attributes[index]?.valueAt ?? wholeFile('');
  return { file, start, end: attributes[last]?.valueAt.end ?? start };
}

/**
 * The attributes that the later stages read: loose words joined to the value they belong to, and classes
 * left out, since no directive has any. Both are reported by a rule, so that one fault gives one finding.
 */
export function keptAttributes(
  source: SourceFile,
  attributes: readonly PlacedAttribute[],
  flags: ReadonlySet<string>,
): Attribute[] {
  return attributes.flatMap(({ writing, ...attribute }, index) => {
    if (writing === 'class' || isLooseWord(attributes, index, flags)) return [];
    if (!isLooseWord(attributes, index + 1, flags)) return [attribute];
    const valueAt = wordsOf(attributes, index, flags);
    return [{ ...attribute, valueAt, value: source.text.slice(valueAt.start, valueAt.end) }];
  });
}
