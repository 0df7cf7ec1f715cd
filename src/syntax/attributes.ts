import type { SourceFile } from '../source/source-file.ts';
import type { DirectiveFacts, MetAttribute } from './directive-places.ts';
import type { Attribute } from './tree.ts';

/** How an attribute is written, for the rules that judge the writing. */
export type Writing = 'quoted' | 'unquoted' | 'flag' | 'id' | 'class';

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

/**
 * The attributes that the later stages read: loose words joined to the value they belong to, and classes
 * left out, since no directive has any. Both are reported by a rule, so that one fault gives one finding.
 */
export function keptAttributes(
  source: SourceFile,
  attributes: readonly PlacedAttribute[],
  flags: ReadonlySet<string>,
): Attribute[] {
  const kept: Attribute[] = [];
  attributes.forEach(({ writing, ...attribute }, index) => {
    const last = kept.at(-1);
    if (writing === 'class') return;
    if (!last || !isLooseWord(attributes, index, flags)) {
      kept.push(attribute);
      return;
    }
    const valueAt = { ...last.valueAt, end: attribute.nameAt.end };
    kept[kept.length - 1] = { ...last, valueAt, value: source.text.slice(valueAt.start, valueAt.end) };
  });
  return kept;
}
