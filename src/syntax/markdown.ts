import type { Element, Root as HastRoot } from 'hast';
import type { Root } from 'mdast';
import { gfmFootnoteFromMarkdown } from 'mdast-util-gfm-footnote';
import { gfmStrikethroughFromMarkdown } from 'mdast-util-gfm-strikethrough';
import { gfmTableFromMarkdown } from 'mdast-util-gfm-table';
import { gfmTaskListItemFromMarkdown } from 'mdast-util-gfm-task-list-item';
import { gfmFootnote } from 'micromark-extension-gfm-footnote';
import { gfmStrikethrough } from 'micromark-extension-gfm-strikethrough';
import { gfmTable } from 'micromark-extension-gfm-table';
import { gfmTaskListItem } from 'micromark-extension-gfm-task-list-item';
import rehypeSanitize, { defaultSchema } from 'rehype-sanitize';
import remarkDirective from 'remark-directive';
import remarkFrontmatter from 'remark-frontmatter';
import remarkParse from 'remark-parse';
import remarkRehype, { defaultHandlers, type Options } from 'remark-rehype';
import { type Processor, unified } from 'unified';
import { directivePlaces } from './directive-places.ts';

/** The element that stands for a directive of any form between mdast and our own tree. */
const directiveTag = 'x-directive';

/** Parses Markdown with directives, the GFM parts that a guide may use, and front matter. */
export function parseMarkdown(text: string): Root {
  return parser.parse(text);
}

/** Turns a parsed document into sanitised HTML nodes; directives become `x-directive` elements with their facts. */
export function toHtmlTree(root: Root): HastRoot {
  return converter.runSync(root);
}

const parser = unified()
  .use(remarkParse)
  .use(gfmWithoutBareLinks)
  .use(remarkFrontmatter, ['yaml'])
  .use(remarkDirective)
  .use(directivePlaces)
  .freeze();

/** GFM by its parts: remark-gfm cannot leave out autolink literals, and a bare address is text here. */
export function gfmWithoutBareLinks(this: Processor): void {
  const data = this.data();
  // A single tilde is how a technician writes "about"; only two strike through.
  const syntax = [gfmTable(), gfmTaskListItem(), gfmStrikethrough({ singleTilde: false }), gfmFootnote()];
  data.micromarkExtensions = [...(data.micromarkExtensions ?? []), ...syntax];
  data.fromMarkdownExtensions = [
    ...(data.fromMarkdownExtensions ?? []),
    gfmTableFromMarkdown(),
    gfmTaskListItemFromMarkdown(),
    gfmStrikethroughFromMarkdown(),
    gfmFootnoteFromMarkdown(),
  ];
}

type Handlers = NonNullable<Options['handlers']>;

const directive: NonNullable<Handlers['textDirective']> = (state, node): Element => {
  const element: Element = {
    type: 'element',
    tagName: directiveTag,
    properties: {},
    children: state.all(node),
  };
  state.patch(node, element);
  if (node.data?.directive) element.data = { directive: node.data.directive };
  return element;
};

/** remark-rehype hands on only what it knows; a heading's own id must come through. */
const heading: NonNullable<Handlers['heading']> = (state, node) => {
  const element: Element = defaultHandlers.heading(state, node);
  if (node.data?.headingId) element.data = { headingId: node.data.headingId };
  return element;
};

const converter = unified()
  .use(remarkRehype, {
    clobberPrefix: 'footnote-',
    handlers: { heading, textDirective: directive, leafDirective: directive, containerDirective: directive },
  })
  .use(rehypeSanitize, {
    ...defaultSchema,
    tagNames: [...(defaultSchema.tagNames ?? []), directiveTag],
    // Ids are made here, never by the author's HTML; a prefix would part the footnotes from their links.
    clobberPrefix: '',
    // Addresses are judged in convert.ts, where an unsafe one can be reported with its place.
    protocols: {},
  })
  .freeze();
