import type { Element, ElementContent } from 'hast';
import { paintReferences } from './svg-values.ts';

/** What an element points at, by id. */
export function references(element: Element): string[] {
  const ids: string[] = [];
  for (const [name, value] of Object.entries(element.properties)) {
    if (typeof value !== 'string') continue;
    if (name === 'href' && value.startsWith('#')) ids.push(value.slice(1));
    else ids.push(...paintReferences(value));
  }
  return ids;
}

/** Every element of a tree by its id, and every element in order. */
export function elementsOf(root: Element): {
  readonly all: Element[];
  readonly byId: ReadonlyMap<string, Element>;
} {
  const all = [root];
  const byId = new Map<string, Element>();
  for (const element of all) {
    const { id } = element.properties;
    if (typeof id === 'string' && !byId.has(id)) byId.set(id, element);
    all.push(...element.children.filter(isElement));
  }
  return { all, byId };
}

/** Steps from group to part to what it uses and on, beyond which nobody drew by hand. */
const MAX_STEPS = 200;

/**
 * How many elements a browser would draw once every `use` is unfolded: `Infinity` where one unfolds into
 * itself, or through more steps than {@link MAX_STEPS}. Ten lines that each use the line before ten times are ten thousand million shapes.
 */
export function unfoldedSize(root: Element): number {
  const { byId } = elementsOf(root);
  const sizes = new Map<Element, number>();
  const size = (element: Element, steps: number): number => {
    const known = sizes.get(element);
    if (known !== undefined) return known;
    if (steps > MAX_STEPS) return Number.POSITIVE_INFINITY;
    sizes.set(element, Number.POSITIVE_INFINITY);
    const used = references(element).flatMap((id) => byId.get(id) ?? []);
    const parts = [...element.children.filter(isElement), ...used];
    const total = parts.reduce((sum, part) => sum + size(part, steps + 1), 1);
    sizes.set(element, total);
    return total;
  };
  return size(root, 0);
}

function isElement(node: ElementContent): node is Element {
  return node.type === 'element';
}
