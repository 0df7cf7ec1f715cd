import * as z from 'zod';
import type { Finding } from '../diagnostics/finding.ts';
import type { Report } from '../diagnostics/report.ts';
import { finding } from '../diagnostics/rule-card.ts';
import { didYouMean, nearest, quotedList } from '../diagnostics/suggest.ts';
import type { YamlPath, YamlPlaces } from './yaml-places.ts';
import { yamlMissingKey, yamlUnknownKey, yamlWrongValue } from './yaml-rules.ts';

type Issue = z.core.$ZodIssue;

/** One fault of a value, with the whole path to it. */
type Fault =
  | { readonly kind: 'unknown'; readonly path: YamlPath; readonly known: readonly string[] }
  | { readonly kind: 'missing' | 'wrong'; readonly path: YamlPath; readonly issue: Issue };

/**
 * Holds a value read from YAML against a schema. A schema's own `error` text completes the sentence
 * "key should be …", for instance "a whole number, 1 or more". Returns `null` after a fault.
 */
export function checkShape<T>(
  value: unknown,
  schema: z.ZodType<T>,
  places: YamlPlaces,
  report: Report,
): T | null {
  const result = schema.safeParse(value, { error: expected });
  if (result.success) return result.data;
  const faults = result.error.issues.flatMap((issue) => faultsOf(issue, [], value, schema));
  for (const fault of withoutEchoes(faults)) report(described(fault, value, places));
  return null;
}

function faultsOf(issue: Issue, above: YamlPath, root: unknown, schema: z.ZodType): Fault[] {
  const path = [...above, ...issue.path.map((part) => (typeof part === 'number' ? part : String(part)))];
  const deeper = issue.code === 'invalid_union' ? branchMeant(issue.errors) : null;
  if (deeper) return deeper.flatMap((inner) => faultsOf(inner, path, root, schema));
  if (issue.code === 'unrecognized_keys') {
    const known = knownKeys(schema, path);
    return issue.keys.map((key) => ({ kind: 'unknown', path: [...path, key], known }));
  }
  return [{ kind: valueAt(root, path) === undefined ? 'missing' : 'wrong', path, issue }];
}

/** A mistyped key is missing under its right name too: one fault gives one finding. */
function withoutEchoes(faults: readonly Fault[]): Fault[] {
  const meant = new Set(
    faults.flatMap((fault) => {
      const near = fault.kind === 'unknown' ? nearest(lastOf(fault.path), fault.known)[0] : undefined;
      return near === undefined ? [] : [[...fault.path.slice(0, -1), near].join('.')];
    }),
  );
  return faults.filter((fault) => fault.kind !== 'missing' || !meant.has(fault.path.join('.')));
}

function described(fault: Fault, root: unknown, places: YamlPlaces): Finding {
  if (fault.kind === 'unknown') return unknownKey(fault.path, fault.known, places);
  if (fault.kind === 'wrong') return wrongValue(fault.issue, fault.path, valueAt(root, fault.path), places);
  const at = places.keyAt(fault.path.slice(0, -1));
  const name = fault.path.join('.');
  return finding(yamlMissingKey, at, `"${name}" is missing; it should be ${fault.issue.message}`);
}

function wrongValue(issue: Issue, path: YamlPath, found: unknown, places: YamlPlaces): Finding {
  if (issue.code === 'invalid_key') {
    const message = `"${lastOf(path)}" should be ${issue.issues[0]?.message ?? 'another word'}`;
    return finding(yamlWrongValue, places.keyAt(path), message);
  }
  const comment = found === null ? places.commentAt(path) : null;
  if (comment) {
    const message = `"${path.join('.')}" is empty, since YAML takes what follows # for a comment; put it in quotes`;
    const suggestion = { at: comment.at, text: `"${comment.value}"` };
    return finding(yamlWrongValue, comment.at, message, { suggestion });
  }
  const at = places.valueAt(path);
  const name = path.length === 0 ? 'this' : `"${path.join('.')}"`;
  const choices = issue.code === 'invalid_value' ? issue.values.map(String) : [];
  const near = typeof found === 'string' ? nearest(found, choices)[0] : undefined;
  const quoted = issue.message === 'text' && typeof found !== 'object' && places.isPlain(path);
  const text = quoted ? `"${String(found)}"` : near;
  return finding(yamlWrongValue, at, `${name} should be ${issue.message}, not ${kindOf(found)}`, {
    suggestion: text === undefined ? undefined : { at, text },
  });
}

function unknownKey(path: YamlPath, known: readonly string[], places: YamlPlaces): Finding {
  const key = lastOf(path);
  const near = nearest(key, known);
  const at = places.keyAt(path);
  const help = near.length > 0 ? didYouMean(near) : `known here: ${quotedList(known, 'and')}`;
  return finding(yamlUnknownKey, at, `"${key}" is not a key that is known here`, {
    notes: known.length > 0 && near.length !== 1 ? [{ message: help }] : [],
    suggestion: near.length === 1 && near[0] !== undefined ? { at, text: near[0] } : undefined,
  });
}

/** The branch of a union that the author meant: the only one whose own kind fits, with faults further in. */
function branchMeant(branches: readonly (readonly Issue[])[]): readonly Issue[] | null {
  const fitting = branches.filter((issues) => issues.every((issue) => !isAboutKind(issue)));
  return fitting.length === 1 ? (fitting[0] ?? null) : null;
}

function isAboutKind(issue: Issue): boolean {
  return issue.path.length === 0 && issue.code !== 'unrecognized_keys';
}

function lastOf(path: YamlPath): string {
  return String(path[path.length - 1]);
}

/** Says in an author's words what a schema wants; zod asks it wherever the schema has no text of its own. */
function expected(issue: z.core.$ZodRawIssue): string {
  switch (issue.code) {
    case 'invalid_type':
      return kinds[String(issue.expected)] ?? String(issue.expected);
    case 'invalid_value':
      return quotedList((issue.values as readonly unknown[]).map(String), 'or');
    case 'too_small':
      return issue.origin === 'string'
        ? 'text'
        : `${issue.inclusive ? 'at least' : 'more than'} ${issue.minimum}`;
    case 'too_big':
      return `${issue.inclusive ? 'at most' : 'less than'} ${issue.maximum}`;
    case 'invalid_union':
      return [
        ...new Set((issue.errors as Issue[][]).flatMap((branch) => branch.map((inner) => inner.message))),
      ].join(' or ');
    default:
      return issue.message ?? 'something else';
  }
}

const kinds: Readonly<Record<string, string>> = {
  string: 'text',
  number: 'a number',
  int: 'a whole number',
  boolean: '"true" or "false"',
  array: 'a list',
  object: 'a map of keys',
  record: 'a map of keys',
};

function kindOf(value: unknown): string {
  if (value === null) return 'empty';
  if (Array.isArray(value)) return 'a list';
  if (typeof value === 'object') return 'a map of keys';
  return typeof value === 'string' ? `"${value}"` : `the ${typeof value} "${String(value)}"`;
}

function valueAt(root: unknown, path: YamlPath): unknown {
  let value = root;
  for (const part of path) {
    if (typeof value !== 'object' || value === null || !Object.hasOwn(value, part)) return undefined;
    value = (value as Record<string | number, unknown>)[part];
  }
  return value;
}

/** The keys that a schema knows at a path, read from its JSON Schema, which is zod's public description. */
function knownKeys(schema: z.ZodType, path: YamlPath): string[] {
  interface Shape {
    properties?: Record<string, Shape>;
    additionalProperties?: Shape | boolean;
    items?: Shape;
    anyOf?: Shape[];
    allOf?: Shape[];
  }
  let shapes: Shape[] = [
    z.toJSONSchema(schema, { io: 'input', unrepresentable: 'any', reused: 'inline' }) as Shape,
  ];
  const spread = (shape: Shape): Shape[] => [
    shape,
    ...[...(shape.anyOf ?? []), ...(shape.allOf ?? [])].flatMap(spread),
  ];
  for (const part of path) {
    shapes = shapes.flatMap(spread).flatMap((shape) => {
      const rest = typeof shape.additionalProperties === 'object' ? shape.additionalProperties : undefined;
      const next = typeof part === 'number' ? shape.items : (shape.properties?.[part] ?? rest);
      return next ? [next] : [];
    });
  }
  return shapes.flatMap(spread).flatMap((shape) => Object.keys(shape.properties ?? {}));
}
