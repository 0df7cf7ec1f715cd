import type { RootContent } from 'hast';
import remarkParse from 'remark-parse';
import remarkRehype from 'remark-rehype';
import { unified } from 'unified';
import { gfmWithoutBareLinks } from './markdown.ts';

const parser = unified().use(remarkParse).use(gfmWithoutBareLinks).freeze();
const converter = unified()
  .use(remarkRehype, { allowDangerousHtml: true, clobberPrefix: 'footnote-' })
  .freeze();

/**
 * Reads Markdown that knows nothing of directives, as others write it, to the nodes of a page with their places. HTML in
 * it stays as it stands, in `raw` nodes: whoever asks for them takes words out of it and writes none of it.
 */
export function plainMarkdown(text: string): readonly RootContent[] {
  return converter.runSync(parser.parse(text)).children;
}
