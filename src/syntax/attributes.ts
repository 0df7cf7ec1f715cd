import type { SourceFile } from '../source/source-file.ts';
import type { DirectiveFacts, MetAttribute } from './directive-places.ts';
import type { Attribute } from './tree.ts';

/** How an attribute is written, for the rules that judge the writing. */
type Writing = 'quoted' | 'curly' | 'unquoted' | 'flag' | 'id' | 'class';

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
 * The attributes with the stray words of unquoted values joined to the value they belong to: of
 * `say=lift away` the second word is a flag to the parser. A bare word after an unquoted value, or after
 * another such word, is stray unless some directive knows it as a flag.
 */
export function joinWords(
  source: SourceFile,
  attributes: readonly PlacedAttribute[],
  flags: ReadonlySet<string>,
): JoinedAttribute[] {
  const joined: JoinedAttribute[] = [];
  for (const attribute of attributes) {
    const last = joined.at(-1);
    if (last?.writing !== 'unquoted' || attribute.writing !== 'flag' || flags.has(attribute.name)) {
      joined.push({ ...attribute, words: 1 });
      continue;
    }
    const valueAt = { ...last.valueAt, end: attribute.nameAt.end };
    joined[joined.length - 1] = { ...last, valueAt, words: last.words + 1 };
  }
  return joined.map((one) =>
    one.words === 1 ? one : { ...one, value: source.text.slice(one.valueAt.start, one.valueAt.end) },
  );
}

/** An attribute whose value has all its words. */
interface JoinedAttribute extends PlacedAttribute {
  /** How many words without quotes the value was put together from; 1 is as it should be. */
  readonly words: number;
}

/**
 * The attributes that the later stages read: words joined to the value they belong to, and classes left out,
 * since no directive has any. Both are reported by a rule, so that one fault gives one finding.
 */
export function keptAttributes(
  source: SourceFile,
  attributes: readonly PlacedAttribute[],
  flags: ReadonlySet<string>,
): Attribute[] {
  return joinWords(source, attributes, flags)
    .filter(({ writing }) => writing !== 'class')
    .map(({ name, value, nameAt, valueAt }) => ({ name, value, nameAt, valueAt }));
}
