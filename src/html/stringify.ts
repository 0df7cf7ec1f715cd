import type { ElementContent } from 'hast';
import rehypeStringify from 'rehype-stringify';
import { unified } from 'unified';
import { type Markup, markup } from './markup.ts';

const writer = unified().use(rehypeStringify, { closeEmptyElements: true, tightSelfClosing: true }).freeze();

/** Writes HTML nodes; every text in them is escaped. */
export function stringify(nodes: readonly ElementContent[]): Markup {
  return markup(writer.stringify({ type: 'root', children: [...nodes] }));
}
