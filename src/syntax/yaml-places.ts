import { type Document, isMap, isScalar, isSeq, type Node, type Pair, type YAMLMap } from 'yaml';
import type { Span, Written } from '../source/span.ts';

/** Where a value stands in a YAML text: the keys and list positions that lead to it. */
export type YamlPath = readonly (string | number)[];

/** Finds the places of keys and values; a path that does not exist gives its nearest parent that does. */
export interface YamlPlaces {
  keyAt(path: YamlPath): Span;
  valueAt(path: YamlPath): Span;
  /** Whether the value is a bare word or number, which quotes would turn into text. */
  isPlain(path: YamlPath): boolean;
  /** The comment that stands where the value should, as behind `accent: #0b6e5f`; `null` where there is none. */
  commentAt(path: YamlPath): Written<string> | null;
}

/** The places of a document whose text begins at `text.at.start` of its file. */
export function yamlPlaces(document: Document, text: Written<string>): YamlPlaces {
  const root = document.contents as Node | null;
  const whole: Span = { ...text.at, end: text.at.start };
  const step = steps();
  const locate = (path: YamlPath) => {
    let place = { key: whole, value: whole, node: root };
    for (const part of path) {
      const next = step(place.node, part);
      if (next === null) break;
      const value = spanOf(next.value, text.at) ?? spanOf(next.key, text.at) ?? place.value;
      place = { key: spanOf(next.key, text.at) ?? value, value, node: next.value };
    }
    return place;
  };
  return {
    keyAt: (path) => locate(path).key,
    valueAt: (path) => locate(path).value,
    isPlain: (path) => {
      const { node } = locate(path);
      return isScalar(node) && node.type === 'PLAIN' && node.source !== '';
    },
    commentAt: (path) => {
      const { key, node } = locate(path);
      if (!isScalar(node) || node.value !== null || !node.comment) return null;
      const from = text.value.indexOf('#', key.end - text.at.start);
      const value = /^[^\r\n]*/.exec(text.value.slice(from))?.[0].trimEnd() ?? '';
      const start = text.at.start + from;
      return { value, at: { ...text.at, start, end: start + value.length } };
    },
  };
}

/** A node's own text; `null` for a node that takes no room, such as the value of `key:`. */
export function spanOf(node: unknown, base: Span): Span | null {
  const range = (node as Partial<Node> | null)?.range;
  if (!range || range[0] === range[1]) return null;
  return { file: base.file, start: base.start + range[0], end: base.start + range[1] };
}

/** A map's key as the text under which it is looked up. */
export function keyText(pair: Pair): string {
  return isScalar(pair.key) ? String(pair.key.value) : String(pair.key);
}

/** Steps from a node to what it holds under a key or a number; the keys of each map are listed once. */
function steps() {
  const listed = new Map<YAMLMap, ReadonlyMap<string, Pair>>();
  const pairsOf = (map: YAMLMap) => {
    const known = listed.get(map);
    if (known) return known;
    // The first of two equal keys is the one that is found.
    const pairs = new Map([...map.items].reverse().map((pair) => [keyText(pair), pair]));
    listed.set(map, pairs);
    return pairs;
  };
  return (node: Node | null, part: string | number): { key: unknown; value: Node | null } | null => {
    if (isSeq(node)) {
      const value = node.items[Number(part)];
      return value === undefined ? null : { key: null, value: value as Node };
    }
    if (!isMap(node)) return null;
    const pair = pairsOf(node).get(String(part));
    return pair ? { key: pair.key, value: pair.value as Node | null } : null;
  };
}
