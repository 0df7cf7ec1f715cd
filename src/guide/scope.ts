import type { Report } from '../diagnostics/report.ts';
import { finding } from '../diagnostics/rule-card.ts';
import type { Scope } from '../directives/directive.ts';
import { inlines } from '../directives/index.ts';
import { misplaced } from '../directives/rules/directive-misplaced.ts';
import type { Origin } from '../model/origin.ts';
import type { Inline, Prose, ProseNode } from '../model/prose.ts';
import type { Platform } from '../model/shop.ts';
import type { DocumentNode, RawProse, TextDirective } from '../syntax/tree.ts';
import type { ReadingContext } from './context.ts';

const inlineNamed = new Map(inlines.map((reader) => [reader.name, reader]));

/** What the directives of one file may ask for. */
export function scopeOf(
  file: string,
  context: ReadingContext,
  platform: Platform | undefined,
  origins: readonly Origin[],
  report: Report,
): Scope {
  const scope: Scope = {
    report,
    origins,
    crib: context.crib,
    fastenerTypes: context.fastenerTypes,
    supplies: context.supplies,
    platformParts: platform?.parts ?? new Map(),
    platformConditions: platform?.conditions ?? new Map(),
    platformRatings: platform?.ratings ?? new Map(),
    prose: (raw) => raw.flatMap((node) => readNode(node, scope)),
    body: (nodes) => nodes.flatMap((node) => readBody(node, scope)),
    resolve: (path) => context.resolve(file, path),
    textOf: context.textOf,
  };
  return scope;
}

function readNode(node: RawProse[number], scope: Scope): readonly ProseNode<Inline>[] {
  if (node.type === 'text') return [node];
  if (node.type === 'element') return [{ ...node, children: scope.prose(node.children) }];
  return readInline(node, scope);
}

function readInline(node: TextDirective, scope: Scope): Prose {
  const reader = inlineNamed.get(node.name);
  const inline = reader?.read(node, scope);
  if (inline) return [inline];
  if (node.name === 'mark') {
    const message = 'a mark opens a line of the key of a figure; here it marks nothing';
    scope.report(finding(misplaced, node.at, message));
  }
  // What is wrong has been told; the words that the author wrote stay readable.
  return scope.prose(node.label ?? []);
}

function readBody(node: DocumentNode, scope: Scope): Prose {
  if (node.type === 'prose') return scope.prose(node.content);
  // The reader of the text has told of headings and steps that a container swallowed.
  if (node.type === 'heading' || node.name === 'step') return [];
  const message = `only text stands here; move this ${node.name} out of the container`;
  scope.report(finding(misplaced, node.at, message));
  return [];
}
