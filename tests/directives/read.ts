import { collector } from '../../src/diagnostics/report.ts';
import type { Scope } from '../../src/directives/directive.ts';
import { directiveNames } from '../../src/guide/names.ts';
import { sourceFile } from '../../src/source/source-file.ts';
import { readMarkdown } from '../../src/syntax/read.ts';
import type { Directive, DocumentNode, RawProse } from '../../src/syntax/tree.ts';

/** A scope in which nothing is known but what a test adds. */
export function scopeWith(known: Partial<Scope> = {}) {
  const { findings, report } = collector();
  const scope: Scope = {
    report,
    origins: [],
    crib: new Map(),
    fastenerTypes: new Map(),
    supplies: new Map(),
    platformParts: new Map(),
    platformConditions: new Map(),
    platformRatings: new Map(),
    prose: () => [],
    body: () => [],
    resolve: (path) => path,
    textOf: () => null,
    ...known,
  };
  return { scope, findings };
}

/** The first directive with a name in a text, and what the reader of the text found. */
export function directiveIn(text: string, name: string) {
  const { findings, report } = collector();
  const source = sourceFile('guide.md', text);
  const { document } = readMarkdown(source, directiveNames, report);
  const found = document.nodes.flatMap(inNode).find((one) => one.name === name);
  if (!found) throw new Error(`there is no ${name} in ${JSON.stringify(text)}`);
  return { directive: found, findings, source };
}

function inNode(node: DocumentNode): Directive[] {
  if (node.type === 'prose') return inProse(node.content);
  if (node.type === 'heading') return inProse(node.content);
  return [
    node,
    ...inProse(node.label ?? []),
    ...(node.form === 'container' ? node.children.flatMap(inNode) : []),
  ];
}

function inProse(prose: RawProse): Directive[] {
  return prose.flatMap((node): Directive[] => {
    if (node.type === 'text') return [];
    if (node.type === 'element') return inProse(node.children);
    return [node, ...inProse(node.label ?? [])];
  });
}
