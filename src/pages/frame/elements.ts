import type { ProseElement, ProseNode } from '../../model/prose.ts';

/** A node of prose in which everything of Baybook's own has become words and elements. */
export type PlainNode = ProseNode<never>;

/** A run of such nodes. */
export type PlainProse = readonly PlainNode[];

/** An element that the page adds, by hast's property names. */
export function element(
  tagName: string,
  properties: ProseElement<never>['properties'],
  children: PlainProse,
): ProseElement<never> {
  return { type: 'element', tagName, properties, children, at: null };
}

/** Words that the page adds. */
export function text(value: string): PlainNode {
  return { type: 'text', value, at: null };
}
