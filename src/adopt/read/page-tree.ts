import type { ElementContent, RootContent } from 'hast';
import { type DefaultTreeAdapterMap, parse, parseFragment } from 'parse5';

/** A node of an old page, wherever it comes from: an element with a tag, or a text without. */
export interface PageNode {
  /** In lower case; empty for a text. */
  readonly tag: string;
  readonly text: string;
  readonly attributes: ReadonlyMap<string, string>;
  readonly children: readonly PageNode[];
  /** Counted from 1; 0 where it is not known. */
  readonly line: number;
}

type ParsedNode = DefaultTreeAdapterMap['node'];

/** More levels than any page needs; what lies deeper is taken as its words. */
const mostLevels = 200;

/** An HTML page as browsers read it (WHATWG HTML, section 13.2); `lines` asks for the lines of its source. */
export function pageFromHtml(html: string, lines: boolean): readonly PageNode[] {
  return parse(html, { sourceCodeLocationInfo: lines }).childNodes.flatMap((node) => fromParsed(node, 0));
}

/** Nodes of Markdown; HTML within it is read as it stands. */
export function pageFromMarkdown(nodes: readonly (RootContent | ElementContent)[]): readonly PageNode[] {
  return nodes.flatMap((node): readonly PageNode[] => {
    const line = node.position?.start.line ?? 0;
    if (node.type === 'text') return [textNode(node.value, line)];
    if (node.type === 'raw')
      return parseFragment(node.value)
        .childNodes.flatMap((one) => fromParsed(one, 0))
        .map((one) => ({ ...one, line }));
    if (node.type !== 'element') return [];
    const attributes = Object.entries(node.properties).map(
      ([name, value]) => [name.toLowerCase(), String(value)] as const,
    );
    return [
      {
        tag: node.tagName,
        text: '',
        attributes: new Map(attributes),
        children: pageFromMarkdown(node.children),
        line,
      },
    ];
  });
}

function fromParsed(node: ParsedNode, level: number): readonly PageNode[] {
  const line = 'sourceCodeLocation' in node ? (node.sourceCodeLocation?.startLine ?? 0) : 0;
  if ('value' in node) return [textNode(node.value, line)];
  if (!('tagName' in node)) return [];
  const children = 'content' in node ? node.content.childNodes : node.childNodes;
  return [
    {
      tag: node.tagName,
      text: '',
      attributes: new Map(node.attrs.map(({ name, value }) => [name, value])),
      children:
        level < mostLevels
          ? children.flatMap((child) => fromParsed(child, level + 1))
          : [textNode(textContent(node), line)],
      line,
    },
  ];
}

function textNode(text: string, line: number): PageNode {
  return { tag: '', text, attributes: new Map(), children: [], line };
}

/** The words of a parsed node, however deep they lie: no call for each level, so that depth cannot exhaust the stack. */
function textContent(from: ParsedNode): string {
  const words: string[] = [];
  const left: ParsedNode[] = [from];
  for (let node = left.pop(); node; node = left.pop()) {
    if ('value' in node) words.push(node.value);
    else if ('childNodes' in node) for (const child of node.childNodes.toReversed()) left.push(child);
  }
  return words.join(' ');
}
