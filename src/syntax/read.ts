import type { Nodes, Root } from 'mdast';

import type { Report } from '../diagnostics/report.ts';
import { finding } from '../diagnostics/rule-card.ts';
import type { SourceFile } from '../source/source-file.ts';
import { type Written, wholeFile } from '../source/span.ts';
import { convertRoot } from './convert.ts';
import { takeHeadingId } from './heading-id.ts';
import { parseMarkdown, toHtmlTree } from './markdown.ts';
import type { DirectiveNames } from './names.ts';
import { judge } from './rules/index.ts';
import { syntaxPage } from './rules/rule.ts';
import { textOversized } from './rules/text-oversized.ts';
import type { Document } from './tree.ts';

/** A file as read. `sound` is false where a fault of syntax makes what follows from the text unsure. */
export interface DocumentRead {
  readonly document: Document;
  readonly sound: boolean;
}

/** Reads a Markdown file: front matter, headings, prose and directives with their places. Never throws. */
export function readMarkdown(source: SourceFile, names: DirectiveNames, report: Report): DocumentRead {
  if (source.text.length > mostCharacters)
    return refused(source, 'this file is too large to be a guide', report);
  if (levels(source.text) > mostLevels) return refused(source, tooDeep, report);
  if (mostEmphasis(source.text) > mostMarks) return refused(source, tooManyMarks, report);
  const directives = directivesIn(source.text);
  if (directives > mostDirectives) return refused(source, tooManyDirectives(directives), report);
  const root = parseMarkdown(keepingOffsets(source.text));
  if (!isShallow(root)) return refused(source, tooDeep, report);
  const page = syntaxPage(source, root, names);
  for (const { node } of page.placed) if (node.type === 'heading') takeHeadingId(node, source);
  const sound = judge(page, report);
  const blocks = convertRoot(toHtmlTree(root), { source, flags: names.flags });
  return { document: { file: source.path, frontMatter: frontMatter(root, source), ...blocks }, sound };
}

/** The longest guide seen has some 60,000 characters. */
const mostCharacters = 200_000;

/** More levels than any guide needs, and far fewer than would exhaust the stack of what walks the tree. */
const mostLevels = 64;

const tooDeep = 'lists, quotations or containers stand too deep in one another';

/**
 * How deep containers, and the quotation and list marks of one line, stand in one another at most. Told
 * before parsing, since each level slows down the parser and a damaged file would hold it up for minutes.
 */
function levels(text: string): number {
  let open = 0;
  let most = 0;
  for (const [, name] of text.matchAll(/(?:^|[\r\n])[ \t]*:{3,}([^\s:]?)/g)) {
    open = Math.max(0, open + (name ? 1 : -1));
    most = Math.max(most, open);
  }
  for (const [marks] of text.matchAll(/(?:^|[\r\n])(?:[ \t]*(?:>|[-+*](?=\s)|\d{1,9}[.)](?=\s)))+/g)) {
    most = Math.max(most, marks.match(/>|[-+*]|[.)]/g)?.length ?? 0);
  }
  return most;
}

/** More than any paragraph needs; the parser compares each mark with each, so that 50,000 hold it up for minutes. */
const mostMarks = 4_000;

const tooManyMarks = 'one paragraph holds too many marks of emphasis (* _ ~)';

/** The most runs of emphasis marks in one block of text. */
function mostEmphasis(text: string): number {
  const blocks = text.split(/(?:\r\n|\n|\r)[ \t]*(?:\r\n|\n|\r)/);
  return blocks.reduce((most, block) => Math.max(most, block.match(/\*+|_+|~+/g)?.length ?? 0), 0);
}

/** A guide of 250 steps that is as full as the fullest of the demo has 4,500; each costs the reading as much as a paragraph. */
const mostDirectives = 5_000;

const tooManyDirectives = (count: number) =>
  `${count} directives and mentions stand in this file; a guide has at most ${mostDirectives}: make two guides of it`;

/** How many places of a text look like a directive of any form. */
function directivesIn(text: string): number {
  return text.match(/:[a-z][a-z-]*[[{]|^[ \t]*:{2,}[a-z]/gm)?.length ?? 0;
}

function isShallow(root: Root): boolean {
  let level: readonly Nodes[] = [root];
  for (let depth = 0; level.length > 0; depth += 1) {
    if (depth > mostLevels) return false;
    level = level.flatMap((node) => ('children' in node ? node.children : []));
  }
  return true;
}

/** A file of which only the front matter is read, so that it lacks nothing else. */
function refused(source: SourceFile, message: string, report: Report): DocumentRead {
  report(finding(textOversized, wholeFile(source.path), message));
  const opening = /^---[ \t]*[\r\n]/.test(source.text);
  const closing = /(?:\r\n|\n|\r)---[ \t]*(?=[\r\n]|$)/.exec(source.text);
  const head = opening && closing ? source.text.slice(0, closing.index + closing[0].length) : '';
  const document = {
    file: source.path,
    frontMatter: frontMatter(parseMarkdown(head), source),
    nodes: [],
    footnotes: [],
  };
  return { document, sound: false };
}

/** The parser skips a byte-order mark without counting it, which would shift every place by one. */
function keepingOffsets(text: string): string {
  return text.replace(/^\uFEFF/, '\u200B');
}

/** The YAML is cut from the source, so that its offsets are the file's whatever its line endings are. */
function frontMatter(root: Root, source: SourceFile): Written<string> | null {
  const node = root.children[0];
  if (node?.type !== 'yaml') return null;
  const fenced = source.text.slice(0, node.position?.end.offset ?? 0);
  const start = source.lineStarts[1] ?? fenced.length;
  const end = Math.max(start, fenced.search(/(\r\n|\n|\r)---[ \t]*$/));
  return { value: fenced.slice(start, end), at: { file: source.path, start, end } };
}
