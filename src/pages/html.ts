import type { Element, Root } from 'hast';
import rehypeStringify from 'rehype-stringify';
import { unified } from 'unified';
import type { PlainProse } from './elements.ts';
import { type Markup, markup } from './markup.ts';

const writer = unified().use(rehypeStringify).freeze();

export function stringify(nodes: PlainProse): Markup {
  return markup(writer.stringify({ type: 'root', children: nodes } as unknown as Root));
}

export function stringifyElement(element: Element): Markup {
  return markup(writer.stringify({ type: 'root', children: [element] }));
}
