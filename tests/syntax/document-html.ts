import type { ElementContent } from 'hast';
import { proseToHtml } from '../../src/html/prose.ts';
import { stringify } from '../../src/html/stringify.ts';
import type { Document, DocumentNode, RawProse } from '../../src/syntax/tree.ts';

/** A document as HTML, with directives left out: what Markdown alone makes of it. */
export function documentHtml(document: Document): string {
  const blocks = document.nodes.map((node) => stringify(blockHtml(node)).html);
  return blocks.map((block) => `${block}\n`).join('');
}

function blockHtml(node: DocumentNode): ElementContent[] {
  if (node.type === 'prose') return html(node.content);
  if (node.type === 'directive') return [];
  return [{ type: 'element', tagName: `h${node.depth}`, properties: {}, children: html(node.content) }];
}

function html(prose: RawProse): ElementContent[] {
  return proseToHtml(prose, () => []);
}
