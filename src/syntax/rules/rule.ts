import type { Nodes, Parents, Root } from 'mdast';
import type { Note, Suggestion } from '../../diagnostics/finding.ts';
import type { RuleCard } from '../../diagnostics/rule-card.ts';
import type { SourceFile } from '../../source/source-file.ts';
import type { Range } from '../directive-places.ts';
import type { DirectiveNames } from '../names.ts';

/** A node of the parsed file with its place and all that holds it, outermost first. */
export interface PlacedNode {
  readonly node: Nodes;
  readonly at: Range;
  readonly parents: readonly Parents[];
}

/** A parsed file as the rules see it. */
export interface SyntaxPage {
  readonly source: SourceFile;
  readonly root: Root;
  readonly names: DirectiveNames;
  /** Every node that has a place, in the order of the text. */
  readonly placed: readonly PlacedNode[];
}

/** A fault that a rule found. */
export interface SyntaxFault {
  readonly at: Range;
  readonly message: string;
  readonly notes?: readonly Note[];
  readonly suggestion?: Suggestion;
  /** Stretches of text that this fault explains: rules that run later stay silent there. */
  readonly covers?: readonly Range[];
}

/** One rule over the syntax of a file. */
export interface SyntaxRule {
  readonly card: RuleCard;
  /** Whether a finding makes what follows from the text unsure, so that later stages must not run. */
  readonly stops: boolean;
  readonly find: (page: SyntaxPage) => readonly SyntaxFault[];
}

/** Walks a parsed file once, for all rules. */
export function syntaxPage(source: SourceFile, root: Root, names: DirectiveNames): SyntaxPage {
  const placed: PlacedNode[] = [];
  const walk = (node: Nodes, parents: readonly Parents[]): void => {
    const at = rangeOf(node);
    if (at) placed.push({ node, at, parents });
    if (!('children' in node)) return;
    const within = [...parents, node];
    for (const child of node.children) walk(child, within);
  };
  walk(root, []);
  return { source, root, names, placed };
}

/** The place of a node; `null` for one that the parser made up. */
function rangeOf(node: Nodes): Range | null {
  const { start, end } = node.position ?? {};
  if (start?.offset === undefined || end?.offset === undefined) return null;
  return { start: start.offset, end: end.offset };
}

/** A range as a span of the page's file. */
export function span(page: SyntaxPage, { start, end }: Range) {
  return { file: page.source.path, start, end };
}

/** The range from an offset to the end of its line. */
export function lineFrom(page: SyntaxPage, start: number): Range {
  return firstLine(page, { start, end: page.source.text.length });
}

/** A range as far as its first line goes; what lies behind it is never looked at, since a line may be the whole file. */
function firstLine({ source }: SyntaxPage, { start, end }: Range): Range {
  const ending = source.text.slice(start, end).search(/[\r\n]/);
  return { start, end: ending < 0 ? end : start + ending };
}

/** The opening line of a directive, the line of a heading: what a person looks for when told of it. */
export function openingOf(page: SyntaxPage, { node, at }: PlacedNode): Range {
  return node.data?.directive?.fences[0] ?? firstLine(page, at);
}

/** A directive as an author names it: `:::note`. */
export function nameOf(node: Nodes): string {
  if (node.type === 'containerDirective') return `:::${node.name}`;
  if (node.type === 'leafDirective') return `::${node.name}`;
  return node.type === 'textDirective' ? `:${node.name}` : 'this heading';
}
