import * as z from 'zod';
import type { SourceFile } from '../source/source-file.ts';
import type { Span, Written } from '../source/span.ts';
import { readYaml, type YamlValue } from '../syntax/read-yaml.ts';
import type { NamePlace } from './names.ts';

/** Words of a condition that are no option. */
const joining: ReadonlySet<string> = new Set(['and', 'or', 'not', 'is']);

/**
 * The options that a condition asks about, as in `fog and not lamps is led`. What an inspection finds is asked about in
 * the same way, by the id of the inspection.
 *
 * @param inspections ids of the inspections that the file declares
 */
export function conditionNames(
  text: string,
  at: Span,
  inspections: ReadonlySet<string>,
): readonly NamePlace[] {
  // A character reference in the value makes the text shorter than its place.
  if (at.end - at.start !== text.length) return [];
  const words = [...text.matchAll(/[a-z0-9-]+/g)];
  return words.flatMap(({ 0: id, index }, place): readonly NamePlace[] => {
    if (joining.has(id) || words[place - 1]?.[0] === 'is') return [];
    const space = inspections.has(id) ? 'item' : 'option';
    return [{ id, space, at: part(at, index, id), gives: null }];
  });
}

/**
 * The options that a procedure is placed with, as in `options="second=heated"`: the procedure's own, and the one of this
 * file that stands for it.
 */
export function passedNames(text: string, at: Span, procedure: string): readonly NamePlace[] {
  if (at.end - at.start !== text.length) return [];
  return [...text.matchAll(/([a-z0-9-]+)=([a-z0-9-]+)/g)].flatMap(
    ({ 1: inner = '', 2: outer = '', index }) => [
      { id: inner, space: 'option', at: part(at, index, inner), gives: null, of: procedure } as const,
      { id: outer, space: 'option', at: part(at, index + inner.length + 1, outer), gives: null } as const,
    ],
  );
}

/** The options that the top of a guide, a platform, a procedure or a visit gives or asks about. */
export function headNames(
  front: Written<string> | null,
  source: SourceFile,
  inspections: ReadonlySet<string>,
): readonly NamePlace[] {
  const read = front && readYaml(front, z.record(z.string(), z.unknown()), () => undefined);
  if (!read) return [];
  const { value } = read;
  const given = ['options', 'wishes'].flatMap((list) =>
    Object.keys(mapOf(value[list])).flatMap((id) => keyed(id, read.keyAt([list, id]), 'here', source)),
  );
  const builds = Array.isArray(value.builds) ? value.builds : [];
  const listed = builds.flatMap((build, index) =>
    Object.keys(mapOf(build)).flatMap((id) => keyed(id, read.keyAt(['builds', index, id]), null, source)),
  );
  const impossible = Array.isArray(value.impossible) ? value.impossible : [];
  const asked = [
    ...impossible.map((_, index) => ['impossible', index] as const),
    ...(typeof value.when === 'string' ? [['when'] as const] : []),
  ].flatMap((path) => conditionNames(...textAt(path, read, source), inspections));
  return [...given, ...listed, ...asked, ...bookedNames(read, source)];
}

/** What a visit knows of its vehicle, as in `led, no lining`. */
function bookedNames(read: YamlValue<Record<string, unknown>>, source: SourceFile): readonly NamePlace[] {
  const { build } = read.value;
  const paths = Array.isArray(build)
    ? build.map((_, index) => ['build', index] as const)
    : typeof build === 'string'
      ? [['build'] as const]
      : [];
  return paths.flatMap((path) => {
    const [text, at] = textAt(path, read, source);
    return [...text.matchAll(/[a-z0-9-]+/g)].flatMap(({ 0: id, index }): readonly NamePlace[] =>
      id === 'no' ? [] : [{ id, space: 'option', at: part(at, index, id), gives: null }],
    );
  });
}

/** A text of the YAML as it stands there, without its quotes. */
function textAt(
  path: readonly (string | number)[],
  { valueAt }: Pick<YamlValue<unknown>, 'valueAt'>,
  { text }: SourceFile,
): readonly [string, Span] {
  const whole = valueAt(path);
  const quotes = /["']/.test(text.charAt(whole.start)) ? 1 : 0;
  const at = { ...whole, start: whole.start + quotes, end: whole.end - quotes };
  return [text.slice(at.start, at.end), at];
}

function keyed(id: string, at: Span, gives: 'here' | null, { text }: SourceFile): readonly NamePlace[] {
  return text.slice(at.start, at.end) === id ? [{ id, space: 'option', at, gives }] : [];
}

function mapOf(value: unknown): object {
  return typeof value === 'object' && value !== null && !Array.isArray(value) ? value : {};
}

function part(at: Span, index: number, { length }: string): Span {
  return { ...at, start: at.start + index, end: at.start + index + length };
}
