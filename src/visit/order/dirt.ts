import { actionsOf } from '../../job/actions/walk.ts';
import type { Guide } from '../../model/guide.ts';
import type { Verb } from '../../model/inline.ts';
import type { Item } from '../../model/item.ts';
import type { Before, Graph } from './graph.ts';
import type { VisitNode, VisitNodes } from './nodes.ts';
import { templateCutBy } from './routes.ts';

const throwsChips: ReadonlySet<Verb> = new Set(['cut', 'drill']);

/** What chips must not get into: an open connector, a joint that is glued. */
const keptClean: ReadonlySet<Verb> = new Set(['connect', 'bond']);

/**
 * Dirty work of one guide before the clean work of the others, as far as the written orders allow: swarf in a bead of
 * sealant makes a leak, and in a plug a short circuit. Common practice, no source.
 */
export function dirtyFirst(
  { nodes, chains }: VisitNodes,
  guide: Pick<Guide, 'items' | 'templates'>,
  graph: Graph,
): readonly Before[] {
  const own = [...chains.values()].flatMap((chain) => chain.flatMap((id) => nodes.get(id) ?? []));
  const alone = [...new Set(own)].filter(({ places }) => places.size === 1);
  const dirty = alone.filter((node) => verbsOf(node).some(({ verb }) => throwsChips.has(verb)));
  const clean = alone.filter((node) =>
    verbsOf(node).some(
      ({ verb, target }) => keptClean.has(verb) || isSealed(verb, guide.items.get(target.value)),
    ),
  );
  return dirty.flatMap((first) =>
    [...clean, ...alone.filter((node) => isRoutedAcross(node, first, guide))].flatMap((second) => {
      if (guideOf(first) === guideOf(second)) return [];
      const link = { first: first.id, second: second.id };
      return graph.add(link) ? [link] : [];
    }),
  );
}

/** Whether a step routes something along a part that another cuts into. */
function isRoutedAcross(
  node: VisitNode,
  cutting: VisitNode,
  guide: Pick<Guide, 'items' | 'templates'>,
): boolean {
  const panels = new Set(verbsOf(cutting).map((action) => templateCutBy(action, guide)?.panel?.value));
  return verbsOf(node).some(({ verb, on }) => verb === 'route' && on.some(({ value }) => panels.has(value)));
}

function guideOf({ places }: VisitNode): string | undefined {
  return [...places.keys()][0];
}

function verbsOf({ step }: VisitNode) {
  return step ? actionsOf(step).map(({ node }) => node) : [];
}

/** What is put on and has to cure, or to be covered while it is open. */
function isSealed(verb: Verb, item: Item | undefined): boolean {
  return verb === 'apply' && item?.kind === 'supply' && (item.cures !== null || item.openTime !== null);
}
