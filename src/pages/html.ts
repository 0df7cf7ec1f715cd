import type { Root } from 'hast';
import rehypeStringify from 'rehype-stringify';
import { unified } from 'unified';
import { type Markup, markup } from './markup.ts';
import type { PlainProse } from './elements.ts';

const writer = unified().use(rehypeStringify).freeze();

export function stringify(nodes: PlainProse): Markup {
  return markup(writer.stringify({ type: 'root', children: nodes } as unknown as Root));
}
