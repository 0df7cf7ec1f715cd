import type { ElementContent, Properties } from 'hast';

/** Running text, as `model/prose.ts` has it; this room stands below the model and knows only its shape. */
interface Text {
  readonly type: 'text';
  readonly value: string;
}

/** An element of prose. */
interface Parent<I> {
  readonly type: 'element';
  readonly tagName: string;
  readonly properties: { readonly [name: string]: string | number | boolean | readonly (string | number)[] };
  readonly children: readonly Node<I>[];
}

type Node<I> = Text | Parent<I> | I;

/** A node that is neither text nor an element: a mention, an action, a directive. */
interface Own {
  readonly type: string;
}

/** Prose as HTML nodes. What is not Markdown's own is rendered by the caller, who knows what it means. */
export function proseToHtml<I extends Own>(
  prose: readonly Node<I>[],
  render: (inline: I) => readonly ElementContent[],
): ElementContent[] {
  return prose.flatMap((node): readonly ElementContent[] => {
    if (isText(node)) return [{ type: 'text', value: node.value }];
    if (!isElement(node)) return render(node);
    const children = proseToHtml(node.children, render);
    return [{ type: 'element', tagName: node.tagName, properties: propertiesOf(node), children }];
  });
}

/** Prose as plain text; a picture counts with its alternative text, the caller says the words of the rest. */
export function plainText<I extends Own>(prose: readonly Node<I>[], say: (inline: I) => string): string {
  return prose
    .map((node) => {
      if (isText(node)) return node.value;
      if (!isElement(node)) return say(node);
      return node.tagName === 'img' ? String(node.properties.alt ?? '') : plainText(node.children, say);
    })
    .join('');
}

function isText<I extends Own>(node: Node<I>): node is Text {
  return node.type === 'text';
}

function isElement<I extends Own>(node: Parent<I> | I): node is Parent<I> {
  return node.type === 'element';
}

/** A copy, since hast's lists may be changed and ours may not. */
function propertiesOf(node: Parent<unknown>): Properties {
  const copied = Object.entries(node.properties).map(([name, value]) => [
    name,
    Array.isArray(value) ? [...value] : value,
  ]);
  return Object.fromEntries(copied);
}
