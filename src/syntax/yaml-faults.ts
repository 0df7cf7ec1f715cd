import {
  type Alias,
  type Document,
  isAlias,
  isCollection,
  isMap,
  isNode,
  isScalar,
  isSeq,
  type Pair,
  type Scalar,
  type YAMLMap,
} from 'yaml';
import type { Finding } from '../diagnostics/finding.ts';
import { finding } from '../diagnostics/rule-card.ts';
import type { Span, Written } from '../source/span.ts';
import { causeOf } from './yaml-causes.ts';
import { keyText, spanOf } from './yaml-places.ts';
import {
  yamlAliasUnknown,
  yamlBroken,
  yamlDuplicateKey,
  yamlNeedsQuotes,
  yamlTab,
  yamlUnknownKey,
  yamlVersion,
} from './yaml-rules.ts';

/** The faults of a document that is YAML, or is none. */
interface YamlFaults {
  /** Those that leave nothing of it to be used. */
  readonly broken: readonly Finding[];
  /** Keys that stand twice in one map, and numbers that YAML would print otherwise than written. */
  readonly doubtful: readonly Finding[];
}

/** Finds what is wrong with a text as YAML, whatever it is to say. */
export function faultsOf(document: Document.Parsed, text: Written<string>): YamlFaults {
  const unreadable = whyUnreadable(document, text);
  return unreadable ? { broken: [unreadable], doubtful: [] } : faultsOfNodes(document, text.at);
}

/** Only the first fault is told: what the parser finds after it is mostly an echo. */
function whyUnreadable({ directives, errors, warnings }: Document.Parsed, text: Written<string>) {
  if (directives.yaml.explicit && directives.yaml.version !== '1.2') {
    const start = Math.max(0, text.value.indexOf('%YAML'));
    const length = text.value.slice(start).search(/[\r\n]|$/);
    const at = within(text.at, start, start + length);
    return finding(yamlVersion, at, `this line asks for YAML ${directives.yaml.version}; take it out`);
  }
  const first = [...errors, ...warnings].sort((a, b) => a.pos[0] - b.pos[0])[0];
  if (!first) return null;
  if (first.code === 'TAB_AS_INDENT') {
    const tab = within(text.at, first.pos[0], Math.max(first.pos[1], first.pos[0] + 1));
    return finding(yamlTab, tab, 'YAML is indented with spaces, not with a tab');
  }
  const cause = causeOf(first, text.value);
  const at = within(text.at, cause.start, cause.end);
  const suggestion = cause.text === undefined ? undefined : { at, text: cause.text };
  return finding(yamlBroken, at, `the YAML cannot be read: ${cause.message}`, { suggestion });
}

/** Goes once through all nodes, in the order of the text. */
function faultsOfNodes(document: Document.Parsed, base: Span): YamlFaults {
  const named = new Set<string>();
  const aliases: Finding[] = [];
  const oddKeys: Finding[] = [];
  const doubtful: Finding[] = [];
  const look = (node: unknown): void => {
    if (isAlias(node)) {
      if (!named.has(node.source)) aliases.push(unknownAlias(node, base));
      return;
    }
    if ((isScalar(node) || isCollection(node)) && node.anchor) named.add(node.anchor);
    if (isScalar(node)) {
      const changed = numberChanged(node, base);
      if (changed) doubtful.push(changed);
    } else if (isSeq(node)) for (const item of node.items) look(item);
    else if (isMap(node)) {
      doubtful.push(...keysOf(node, base));
      for (const pair of node.items) {
        const odd = oddKey(pair, base);
        if (odd) oddKeys.push(odd);
        look(pair.key);
        look(pair.value);
      }
    }
  };
  look(document.contents);
  return { broken: aliases.length > 0 ? aliases : oddKeys, doubtful };
}

function keysOf(map: YAMLMap, base: Span): readonly Finding[] {
  const seen = new Map<string, Span | null>();
  return map.items.flatMap((pair) => {
    // Any other key is told of as none.
    if (!isScalar(pair.key) && !isAlias(pair.key)) return [];
    const key = keyText(pair);
    const at = spanOf(pair.key, base) ?? base;
    // A record drops this key without a word, since it would change the object that holds it.
    const unusable = key === '__proto__' ? [finding(yamlUnknownKey, at, `"${key}" cannot be a key`)] : [];
    const earlier = seen.get(key);
    if (earlier === undefined) {
      seen.set(key, at);
      return unusable;
    }
    const notes = earlier ? [{ message: 'first written here', at: earlier }] : [];
    return [...unusable, finding(yamlDuplicateKey, at, `"${key}" is written twice`, { notes })];
  });
}

function numberChanged(scalar: Scalar, base: Span): Finding | null {
  const { source, value } = scalar;
  if (typeof value !== 'number' || source === undefined || String(value) === source) return null;
  const at = spanOf(scalar, base) ?? base;
  const message = `YAML reads ${source} as ${value}; put it in quotes to keep it as written`;
  return finding(yamlNeedsQuotes, at, message, { suggestion: { at, text: `"${source}"` } });
}

function unknownAlias(alias: Alias, base: Span): Finding {
  const at = spanOf(alias, base) ?? base;
  const message = `YAML takes "*${alias.source}" for a reference, and nothing is named so; text needs quotes`;
  return finding(yamlAliasUnknown, at, message, { suggestion: { at, text: `"*${alias.source}"` } });
}

/** A key is a word: an empty one names nothing, and a list or map cannot be looked up. */
function oddKey({ key, value }: Pair, base: Span): Finding | null {
  const isNamed = isScalar(key) && key.value !== null && key.value !== '';
  if (isNamed || isAlias(key)) return null;
  const start = isNode(key) ? (key.range?.[0] ?? 0) : isNode(value) ? (value.range?.[0] ?? 0) : 0;
  const at = spanOf(key, base) ?? within(base, start, start + 1);
  const found = isScalar(key) || key === null ? 'this one is empty' : 'this one is a list or a map';
  return finding(yamlBroken, at, `the YAML cannot be read: a key is a word, and ${found}`);
}

function within(base: Span, start: number, end: number): Span {
  const limit = Math.max(base.end, base.start);
  const from = Math.min(base.start + start, limit);
  return { file: base.file, start: from, end: Math.max(from, Math.min(base.start + end, limit)) };
}

/** Whether a document is a map of keys, the one shape that Baybook's files have. */
export function isKeyed(document: Document): boolean {
  return isMap(document.contents) && document.contents.items.every((pair) => isScalar(pair.key));
}
