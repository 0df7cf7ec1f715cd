import { actionsOf } from '../../job/actions/walk.ts';
import type { Guide } from '../../model/guide.ts';
import type { Violation } from '../../model/violation.ts';
import type { Before, Graph } from './graph.ts';
import type { VisitNode, VisitNodes } from './nodes.ts';

/** How often an order is played, at the most, before it is given up. */
const MOST_PLAYS = 60;

/** An order that the ledger accepts, and the links that it took; or that none was found. */
export type Arranged =
  | { readonly ok: true; readonly order: readonly string[]; readonly links: readonly Before[] }
  | { readonly ok: false };

/**
 * Looks for an order that the ledger accepts. Where playing one shows a fault, the step that shows it is put behind
 * all that the other guide does to the thing at fault, before it, or in between, whichever the written orders allow;
 * what has led nowhere is taken back.
 *
 * @param list the nodes in the order in which they are taken where the links leave a choice
 * @param faultIn plays an order: its first fault, `null` for a sound one
 */
export function arrange(
  nodes: VisitNodes,
  graph: Graph,
  list: readonly string[],
  compose: (order: readonly string[]) => Guide,
  faultIn: (guide: Guide) => Violation | null,
): Arranged {
  let plays = 0;
  const attempt = (links: readonly Before[], linked: Graph): Arranged | null => {
    const order = linked.order(list);
    if (!order || plays >= MOST_PLAYS) return null;
    plays += 1;
    const guide = compose(order);
    const fault = faultIn(guide);
    if (!fault) return { ok: true, order, links };
    for (const link of waysOut(fault, guide, order, nodes)) {
      // What is so already would only be played again.
      if (linked.leads(link.first, link.second)) continue;
      const next = linked.copy();
      if (!next.add(link)) continue;
      const found = attempt([...links, link], next);
      if (found) return found;
    }
    return null;
  };
  return attempt([], graph) ?? { ok: false };
}

/** What would part a step from the work of another guide on the thing at fault. */
function waysOut(
  fault: Violation,
  guide: Guide,
  order: readonly string[],
  { nodes }: VisitNodes,
): readonly Before[] {
  const shows = order.flatMap((id) => nodes.get(id) ?? []).find((node) => isShownBy(node, fault));
  if (!shows) return [];
  const things = thingsOf(fault, guide);
  const actors = actorsOn(
    things,
    order.flatMap((id) => nodes.get(id) ?? []),
  );
  const others = new Map<string, VisitNode[]>();
  for (const actor of actors) {
    if ([...actor.places.keys()].some((id) => shows.places.has(id))) continue;
    const key = [...actor.places.keys()].join(' ');
    others.set(key, [...(others.get(key) ?? []), actor]);
  }
  return [...others.values()].flatMap((theirs) => {
    const [first, last] = [theirs[0], theirs.at(-1)];
    if (!first || !last) return [];
    return [
      { first: last.id, second: shows.id },
      { first: shows.id, second: first.id },
      // While the other guide has it open.
      { first: first.id, second: shows.id },
      { first: shows.id, second: last.id },
    ];
  });
}

/** Nodes whose steps have their hands on some things. */
export function actorsOn(things: ReadonlySet<string>, nodes: readonly VisitNode[]): readonly VisitNode[] {
  return nodes.filter(
    ({ step }) => step && actionsOf(step).some(({ node }) => things.has(node.target.value)),
  );
}

function isShownBy({ step, places }: VisitNode, { step: shown, at }: Violation): boolean {
  if (shown) return step?.id === shown.id;
  return [...places.values()].some(({ intro }) =>
    intro.some((block) => block.at.file === at.file && block.at.start <= at.start && at.end <= block.at.end),
  );
}

/** What a fault is about, and what that in turn stands on: a state may have ended with another. */
export function thingsOf(fault: Violation, { items }: Guide): ReadonlySet<string> {
  const named = [
    ...('by' in fault ? [fault.by] : []),
    ...('part' in fault ? [fault.part] : []),
    ...(fault.kind === 'needs-unmet' ? [fault.need] : []),
    ...(fault.item === null ? [] : [fault.item]),
  ];
  const things = new Set(named);
  for (const id of things) {
    const item = items.get(id);
    if (item?.kind === 'condition') for (const { value } of item.needs) things.add(value);
  }
  return things;
}
