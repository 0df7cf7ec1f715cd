import type { Root } from 'mdast';
import { visit } from 'unist-util-visit';
import type { Report } from '../diagnostics/report.ts';
import type { SourceFile } from '../source/source-file.ts';
import type { Written } from '../source/span.ts';
import { convertRoot } from './convert.ts';
import { takeHeadingId } from './heading-id.ts';
import { parseMarkdown, toHtmlTree } from './markdown.ts';
import type { Document } from './tree.ts';

/** The directives that exist, by the form they are written in, as `directives/` knows them. */
export interface DirectiveNames {
  readonly leaf: ReadonlySet<string>;
  readonly container: ReadonlySet<string>;
  readonly text: ReadonlySet<string>;
  /** Attributes that may stand without a value, on any directive. */
  readonly flags: ReadonlySet<string>;
}

/** A file as read. `sound` is false where a fault of syntax makes what follows from the text unsure. */
export interface Reading {
  readonly document: Document;
  readonly sound: boolean;
}

/** Reads a Markdown file: front matter, headings, prose and directives with their places. Never throws. */
export function readMarkdown(source: SourceFile, names: DirectiveNames, report: Report): Reading {
  const root = parseMarkdown(source.text);
  visit(root, 'heading', (heading) => takeHeadingId(heading, source));
  const sound = report !== undefined;
  const document: Document = {
    file: source.path,
    frontMatter: frontMatter(root, source),
    ...convertRoot(toHtmlTree(root), { source, flags: names.flags }),
  };
  return { document, sound };
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
