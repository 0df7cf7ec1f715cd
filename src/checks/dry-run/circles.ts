import { type Relation, relationsOf } from '../../job/actions/relations.ts';
import type { Item } from '../../model/item.ts';

/** Relations that lead from an item back to it, once round. */
export type Circle = readonly Relation[];

/** What orders nothing: a bar may cover the very bolt that goes through it. */
const apart: ReadonlySet<Relation['name']> = new Set<Relation['name']>(['needs', 'takes', 'stack', 'coat']);

/** The circles that what holds, sits on, covers and replaces forms: of each item the shortest, if it is in one. */
export function circlesOf(items: ReadonlyMap<string, Item>): readonly Circle[] {
  const edges = [...items.values()].flatMap(relationsOf).filter(({ name }) => !apart.has(name));
  return [...items.keys()].map((id) => circleFrom(id, edges)).filter((circle) => circle.length > 0);
}

/**
 * The items that stand in a circle. No order of steps is right for them, so whatever else is found about them
 * only repeats that.
 */
export function circled(items: ReadonlyMap<string, Item>): ReadonlySet<string> {
  return new Set(circlesOf(items).flatMap((circle) => circle.map(({ from }) => from.id)));
}

/** The relations that lead from an item back to it, the shortest way; empty where none do. */
function circleFrom(id: string, edges: readonly Relation[]): Circle {
  const reached = new Set<string>();
  let paths: readonly Circle[] = edges.filter(({ from }) => from.id === id).map((edge) => [edge]);
  while (paths.length > 0) {
    const closed = paths.find((path) => path.at(-1)?.to.value === id);
    if (closed) return closed;
    paths = paths.flatMap((path) => {
      const end = path.at(-1)?.to.value ?? '';
      if (reached.has(end)) return [];
      reached.add(end);
      return edges.filter(({ from }) => from.id === end).map((edge) => [...path, edge]);
    });
  }
  return [];
}
