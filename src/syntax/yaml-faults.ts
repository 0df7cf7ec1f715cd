import { type Document, isAlias, isMap, isNode, isScalar, visit } from 'yaml';
import type { Report } from '../diagnostics/report.ts';
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

/**
 * Reports why a text cannot be read as YAML and says whether it can. Only the first fault is told: what the
 * parser finds after it is mostly an echo.
 */
export function reportBroken(document: Document.Parsed, text: Written<string>, report: Report): boolean {
  const { directives } = document;
  if (directives.yaml.explicit && directives.yaml.version !== '1.2') {
    const start = Math.max(0, text.value.indexOf('%YAML'));
    const length = text.value.slice(start).search(/[\r\n]|$/);
    const at = within(text.at, start, start + length);
    report(finding(yamlVersion, at, `this line asks for YAML ${directives.yaml.version}; take it out`));
    return true;
  }
  const first = [...document.errors, ...document.warnings].sort((a, b) => a.pos[0] - b.pos[0])[0];
  if (!first)
    return reportUnknownAliases(document, text.at, report) || reportOddKeys(document, text.at, report);
  if (first.code === 'TAB_AS_INDENT') {
    const tab = within(text.at, first.pos[0], Math.max(first.pos[1], first.pos[0] + 1));
    report(finding(yamlTab, tab, 'YAML is indented with spaces, not with a tab'));
    return true;
  }
  const cause = causeOf(first, text.value);
  const at = within(text.at, cause.start, cause.end);
  const suggestion = cause.text === undefined ? undefined : { at, text: cause.text };
  report(finding(yamlBroken, at, `the YAML cannot be read: ${cause.message}`, { suggestion }));
  return true;
}

/** Reports keys that stand twice in one map, and numbers that YAML would print otherwise than written. */
export function reportDoubtful(document: Document, base: Span, report: Report): void {
  visit(document, {
    Map: (_, map) => {
      const seen = new Map<string, Span | null>();
      for (const pair of map.items) {
        const key = keyText(pair);
        const at = spanOf(pair.key, base) ?? base;
        // A record drops this key without a word, since it would change the object that holds it.
        if (key === '__proto__') report(finding(yamlUnknownKey, at, `"${key}" cannot be a key`));
        const earlier = seen.get(key);
        if (earlier === undefined) seen.set(key, at);
        else
          report(
            finding(yamlDuplicateKey, at, `"${key}" is written twice`, {
              notes: earlier ? [{ message: 'first written here', at: earlier }] : [],
            }),
          );
      }
    },
    Scalar: (_, scalar) => {
      const { source, value } = scalar;
      if (typeof value !== 'number' || source === undefined || String(value) === source) return;
      const at = spanOf(scalar, base) ?? base;
      report(
        finding(
          yamlNeedsQuotes,
          at,
          `YAML reads ${source} as ${value}; put it in quotes to keep it as written`,
          {
            suggestion: { at, text: `"${source}"` },
          },
        ),
      );
    },
  });
}

function reportUnknownAliases(document: Document, base: Span, report: Report): boolean {
  let broken = false;
  visit(document, {
    Alias: (_, alias) => {
      if (alias.resolve(document) !== undefined) return;
      broken = true;
      const at = spanOf(alias, base) ?? base;
      report(
        finding(
          yamlAliasUnknown,
          at,
          `YAML takes "*${alias.source}" for a reference, and nothing is named so; text needs quotes`,
          {
            suggestion: { at, text: `"*${alias.source}"` },
          },
        ),
      );
    },
  });
  return broken;
}

/** A key is a word: an empty one names nothing, and a list or map cannot be looked up. */
function reportOddKeys(document: Document, base: Span, report: Report): boolean {
  let broken = false;
  visit(document, {
    Pair: (_, { key, value }) => {
      const named = isScalar(key) && key.value !== null && key.value !== '';
      if (named || isAlias(key)) return;
      broken = true;
      const start = isNode(key) ? (key.range?.[0] ?? 0) : isNode(value) ? (value.range?.[0] ?? 0) : 0;
      const at = spanOf(key, base) ?? within(base, start, start + 1);
      const found = isScalar(key) || key === null ? 'this one is empty' : 'this one is a list or a map';
      report(finding(yamlBroken, at, `the YAML cannot be read: a key is a word, and ${found}`));
    },
  });
  return broken;
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
