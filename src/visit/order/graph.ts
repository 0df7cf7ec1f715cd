import type { VisitNodes } from './nodes.ts';

/** What must be done before what, by the ids of nodes. */
export interface Before {
  readonly first: string;
  readonly second: string;
}

/** Nodes with all that must come before each. */
export class Graph {
  readonly #before = new Map<string, Set<string>>();
  readonly #after = new Map<string, Set<string>>();

  /** The orders in which the authors have written their guides. */
  static ofChains({ nodes, chains }: VisitNodes): Graph {
    const graph = new Graph(nodes.keys());
    for (const chain of chains.values()) {
      for (const [place, second] of chain.entries()) {
        const first = chain[place - 1];
        if (first !== undefined) graph.#link(first, second);
      }
    }
    return graph;
  }

  private constructor(ids: Iterable<string>) {
    for (const id of ids) {
      this.#before.set(id, new Set());
      this.#after.set(id, new Set());
    }
  }

  /** The same with more links. A link that would close a circle is left out, with all others after it. */
  with(links: readonly Before[]): Graph | null {
    const graph = this.copy();
    for (const link of links) if (!graph.add(link)) return null;
    return graph;
  }

  copy(): Graph {
    const graph = new Graph(this.#before.keys());
    for (const [second, firsts] of this.#before) for (const first of firsts) graph.#link(first, second);
    return graph;
  }

  /** Adds a link, unless that closes a circle; says whether it was added. */
  add({ first, second }: Before): boolean {
    if (first === second || this.leads(second, first)) return false;
    this.#link(first, second);
    return true;
  }

  /** Whether one node must come before another, through others too. */
  leads(from: string, to: string): boolean {
    const seen = new Set<string>();
    const open = [from];
    for (let id = open.pop(); id !== undefined; id = open.pop()) {
      if (id === to) return true;
      for (const next of this.#after.get(id) ?? []) {
        if (seen.has(next)) continue;
        seen.add(next);
        open.push(next);
      }
    }
    return false;
  }

  /**
   * An order that all links allow: of what can come next always the first by the list. `null` where the links go
   * round in a circle.
   */
  order(list: readonly string[]): readonly string[] | null {
    const waiting = new Map([...this.#before].map(([id, firsts]) => [id, firsts.size]));
    const done: string[] = [];
    while (done.length < waiting.size) {
      const next = list.find((id) => waiting.get(id) === 0);
      if (next === undefined) return null;
      waiting.set(next, -1);
      done.push(next);
      for (const after of this.#after.get(next) ?? []) waiting.set(after, (waiting.get(after) ?? 0) - 1);
    }
    return done;
  }

  #link(first: string, second: string): void {
    this.#before.get(second)?.add(first);
    this.#after.get(first)?.add(second);
  }
}
