import type { Element, ElementContent, Nodes, Properties, Root } from 'hast';
import type { ProseElement, ProseNode } from '../model/prose.ts';
import type { SourceFile } from '../source/source-file.ts';
import type { Span } from '../source/span.ts';
import { isUnsafeAddress } from './address.ts';
import { keptAttributes, placeAttributes } from './attributes.ts';
import type { DirectiveFacts } from './directive-places.ts';
import type {
  ContainerDirective,
  DirectiveBase,
  Document,
  DocumentNode,
  Heading,
  RawProse,
  TextDirective,
} from './tree.ts';

type RawNode = ProseNode<TextDirective>;

/** What conversion needs to know besides the tree. */
interface Conversion {
  readonly source: SourceFile;
  /** Attribute names that may stand without a value. */
  readonly flags: ReadonlySet<string>;
}

/** Turns the HTML nodes of a whole file into the document's blocks and its footnotes. */
export function convertRoot(root: Root, given: Conversion): Pick<Document, 'nodes' | 'footnotes'> {
  const footnotes = root.children.filter(
    (node) => node.type === 'element' && 'dataFootnotes' in node.properties,
  );
  const blocks = root.children.filter((node) => !footnotes.includes(node));
  return { nodes: convertBlocks(blocks, given), footnotes: convertProse(footnotes, given, false) };
}

function convertBlocks(nodes: readonly Nodes[], given: Conversion): DocumentNode[] {
  return nodes.flatMap((node): DocumentNode[] => {
    if (node.type !== 'element') return [];
    const at = spanOf(node, given.source) ?? { file: given.source.path, start: 0, end: 0 };
    const facts = node.data?.directive;
    if (facts?.form === 'leaf') return [{ ...directiveBase(node, facts, at, given, false), form: 'leaf' }];
    if (facts?.form === 'container') return [convertContainer(node, facts, at, given)];
    if (/^h[1-6]$/.test(node.tagName)) return [convertHeading(node, at, given)];
    return [{ type: 'prose', content: convertProse([node], given, false), at }];
  });
}

function convertHeading(node: Element, at: Span, given: Conversion): Heading {
  const content = convertProse(node.children, given, false);
  const depth = Number(node.tagName.slice(1)) as Heading['depth'];
  const id = node.data?.headingId;
  return {
    type: 'heading',
    depth,
    id: id ? { value: id.value, at: { file: given.source.path, start: id.start, end: id.end } } : null,
    content,
    text: rawText(content).trim(),
    at,
  };
}

function convertContainer(
  node: Element,
  facts: DirectiveFacts,
  at: Span,
  given: Conversion,
): ContainerDirective {
  const opening = facts.fences[0];
  return {
    ...directiveBase(node, facts, at, given, false),
    form: 'container',
    openingAt: { ...at, start: opening?.start ?? at.start, end: opening?.end ?? at.end },
    children: convertBlocks(facts.brackets.length ? node.children.slice(1) : node.children, given),
  };
}

function directiveBase(
  node: Element,
  facts: DirectiveFacts,
  at: Span,
  given: Conversion,
  inTable: boolean,
): DirectiveBase {
  const text = given.source.text;
  const [open, close] = facts.brackets;
  const nameStart = at.start + (/^:+/.exec(text.slice(at.start, at.end))?.[0].length ?? 0);
  const nameAt = { ...at, start: nameStart, end: nameStart + facts.name.length };
  const label = open && close ? convertProse(labelNodes(node, facts), given, inTable) : null;
  const attributes = keptAttributes(given.source, placeAttributes(given.source, facts), given.flags);
  return {
    type: 'directive',
    name: facts.name,
    nameAt,
    label,
    labelText: rawText(label ?? []).trim(),
    labelAt:
      open && close
        ? trimmed(text, { ...at, start: open.end, end: close.start })
        : { ...at, start: nameAt.end, end: nameAt.end },
    // A table cell's own escape of `|` is still in the value, which the table took as it stands.
    attributes: inTable ? attributes.map(unescapePipes) : attributes,
    at,
  };
}

/** A container's label is its first paragraph; a leaf's or text's label is all that it holds. */
function labelNodes(node: Element, facts: DirectiveFacts): readonly ElementContent[] {
  if (facts.form !== 'container') return node.children;
  const paragraph = node.children[0];
  return paragraph?.type === 'element' ? paragraph.children : [];
}

function unescapePipes<A extends { readonly value: string | null }>(attribute: A): A {
  return { ...attribute, value: attribute.value?.replaceAll('\\|', '|') ?? null };
}

function convertProse(nodes: readonly Nodes[], given: Conversion, inTable: boolean): RawProse {
  return nodes.flatMap((node): RawNode[] => {
    const at = spanOf(node, given.source);
    if (node.type === 'text') return [{ type: 'text', value: node.value, at }];
    if (node.type !== 'element') return [];
    const facts = node.data?.directive;
    if (facts && at) return convertInlineDirective(node, facts, at, given, inTable);
    const inside = inTable || node.tagName === 'table';
    const element: ProseElement<TextDirective> = {
      type: 'element',
      tagName: node.tagName,
      properties: properties(node.properties),
      children: convertProse(node.children, given, inside),
      at,
    };
    return [element];
  });
}

/** A leaf or container within prose has no place there (a rule says so); what it holds is kept as prose. */
function convertInlineDirective(
  node: Element,
  facts: DirectiveFacts,
  at: Span,
  given: Conversion,
  inTable: boolean,
): RawNode[] {
  if (facts.form !== 'text') return [...convertProse(node.children, given, inTable)];
  return [{ ...directiveBase(node, facts, at, given, inTable), form: 'text' }];
}

/** Properties without what is empty, and without an address that would run code. */
function properties(from: Properties): ProseElement<never>['properties'] {
  const kept = Object.entries(from).flatMap(([name, value]): [string, PropertyValue][] => {
    if (value === null || value === undefined) return [];
    const address = name === 'href' || name === 'src';
    return address && isUnsafeAddress(String(value)) ? [] : [[name, value]];
  });
  return Object.fromEntries(kept);
}

type PropertyValue = ProseElement<never>['properties'][string];

function spanOf(node: Nodes, source: SourceFile): Span | null {
  const { start, end } = node.position ?? {};
  if (start?.offset === undefined || end?.offset === undefined) return null;
  return { file: source.path, start: start.offset, end: end.offset };
}

function trimmed(text: string, at: Span): Span {
  const inner = text.slice(at.start, at.end);
  const start = at.start + (inner.length - inner.trimStart().length);
  return { ...at, start, end: Math.max(start, at.start + inner.trimEnd().length) };
}

/** Prose as plain text; a directive counts with its own label, a picture with its alternative text. */
function rawText(prose: RawProse): string {
  return prose
    .map((node) => {
      if (node.type === 'text') return node.value;
      if (node.type === 'directive') return node.labelText;
      return node.tagName === 'img' ? String(node.properties.alt ?? '') : rawText(node.children);
    })
    .join('');
}
