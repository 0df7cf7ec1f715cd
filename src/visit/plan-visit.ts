import type { Report } from '../diagnostics/report.ts';
import { distinctOutcomes } from '../job/builds/outcomes.ts';
import { dryRun } from '../job/dry-run/index.ts';
import { computeJob } from '../job/index.ts';
import type { Guide } from '../model/guide.ts';
import type { Job } from '../model/job.ts';
import type { Shop } from '../model/shop.ts';
import type { Violation } from '../model/violation.ts';
import { composeVisit } from './compose.ts';
import { ledgerErrors } from './judge.ts';
import { mergeItems } from './merge-items.ts';
import { undoOf, type VisitNames, visitNames } from './names.ts';
import { type Arranged, arrange } from './order/arrange.ts';
import { dirtyFirst } from './order/dirt.ts';
import { type Before, Graph } from './order/graph.ts';
import { unlikeSteps, type VisitNodes, visitNodes } from './order/nodes.ts';
import { quickOrder } from './order/quick-order.ts';
import { orderReasons } from './order/reasons.ts';
import { type RefusedVisit, unordered } from './order/unordered.ts';
import { withOwnPlaces } from './own-places.ts';
import { type KnownBuilds, knownBuilds } from './request/known-builds.ts';
import type { VisitRequest } from './request/request.ts';
import { settled } from './request/settle.ts';
import { isNeverLonger, savingsOf, type VisitedGuide } from './savings.ts';

/** A visit planned: a guide like any other, and its job. */
export interface PlannedVisit {
  readonly guide: Guide;
  readonly job: Job;
}

/**
 * Plans several guides on one vehicle as one job. What they share is done once, as far as an order can be found; then
 * the schedule of one technician decides, with steps of different guides free of each other where the ledger and the
 * products allow. The plan never takes longer than the guides one after the other, and does not depend on the order
 * in which they are named. `null`, and a finding, where no order is possible.
 *
 * @param visited sound guides of one platform, each once, with their jobs
 */
export function planVisit(
  request: VisitRequest,
  visited: readonly VisitedGuide[],
  shop: Shop,
  report: Report,
): PlannedVisit | null {
  const sorted = [...visited].sort((a, b) => (a.guide.id < b.guide.id ? -1 : 1));
  const raw = sorted.map(({ guide }) => guide);
  const named = visitNames(raw, shop, new Set());
  const known = knownBuilds(request, raw, named, shop, report);
  if (!known) return null;
  const guides = raw.map((guide) => {
    const by = named.get(guide.id);
    return settled(guide, (when) => known.settles(by?.when(when) ?? when));
  });
  const ground = { request, guides, visited: sorted, known, shop };
  const refused: RefusedVisit[] = [];
  let longer: PlannedVisit | null = null;
  for (const { plan, nodes } of plansOf(ground)) {
    const errors = ledgerErrors(plan.guide, plan.job, shop);
    if (errors.length > 0) refused.push({ ...plan, errors, nodes });
    else if (isNeverLonger(savingsIn(plan))) return plan;
    else longer ??= plan;
  }
  // Where the guides in a row are not sound, no row is shorter.
  if (longer === null) report(unordered(request, refused));
  return longer;
}

/** What all ways of planning a visit have in common. */
interface Ground {
  readonly request: VisitRequest;
  readonly guides: readonly Guide[];
  readonly visited: readonly VisitedGuide[];
  readonly known: KnownBuilds;
  readonly shop: Shop;
}

/** The guides laid together with some steps repeated, and the order that was found for them. */
interface Layout {
  readonly names: ReadonlyMap<string, VisitNames>;
  readonly nodes: VisitNodes;
  readonly arranged: Arranged;
  /** Dirty work that was put before the clean work of another guide. */
  readonly dirt: readonly Before[];
  /** Steps that are done for each guide by itself though several share them. */
  readonly repeated: readonly string[];
  readonly compose: (order: readonly string[], links: readonly Before[]) => Guide;
}

/**
 * Which shared steps are done for each guide by itself, fewest first: none, then one with what undoes it, then all.
 * What is not the same work in each guide is always repeated.
 */
function sharings(guides: readonly Guide[], shop: Shop): readonly ReadonlySet<string>[] {
  const names = visitNames(guides, shop, new Set());
  const unlike = unlikeSteps(guides, names);
  const wanted = new Map<string, { count: number; minutes: number }>();
  for (const guide of guides) {
    for (const step of guide.sections.flatMap(({ steps }) => steps)) {
      const identity = names.get(guide.id)?.shared(step);
      if (identity === null || identity === undefined || identity.startsWith('undo ')) continue;
      const known = wanted.get(identity) ?? { count: 0, minutes: 0 };
      wanted.set(identity, {
        count: known.count + 1,
        minutes: known.minutes + (step.time?.value.likely ?? 0),
      });
    }
  }
  const shared = [...wanted]
    .filter(([identity, { count }]) => count > 1 && !unlike.has(identity))
    .sort(([one, a], [other, b]) => a.minutes - b.minutes || (one < other ? -1 : 1))
    .map(([identity]) => [identity, undoOf(identity)]);
  const repeating = (more: readonly string[]) => new Set([...unlike, ...more]);
  return shared.length === 0
    ? [repeating([])]
    : [repeating([]), ...shared.map(repeating), ...(shared.length > 1 ? [repeating(shared.flat())] : [])];
}

function laidOut({ request, guides, visited, known, shop }: Ground, repeated: ReadonlySet<string>): Layout {
  const names = visitNames(guides, shop, repeated);
  const own = guides.map((guide) => {
    const by = names.get(guide.id);
    return by ? withOwnPlaces(guide, by) : guide;
  });
  const titles = new Map(guides.map((guide) => [guide.id, workName(guide)]));
  const nameOf = (id: string) => titles.get(id) ?? id;
  const nodes = visitNodes(own, names);
  const items = mergeItems(own, names, nameOf);
  const told = visited.map(({ guide, job }) => ({
    id: guide.id,
    title: guide.title.value,
    name: nameOf(guide.id),
    partNumber: guide.partNumber?.value ?? null,
    revision: guide.revision?.value ?? null,
    fingerprint: job.fingerprint,
  }));
  const composed = (order: readonly string[], links: readonly Before[]) =>
    composeVisit(
      { request, guides: own, names, nameOf, builds: known.space, items, nodes: linked(nodes, links), told },
      order,
    );
  const list = [...new Set([...nodes.chains.values()].flat())];
  const find = (graph: Graph) => arrange(nodes, graph, list, (order) => composed(order, []), firstFault);
  const clean = Graph.ofChains(nodes);
  const dirt = dirtyFirst(nodes, { items, templates: composed(list, []).templates }, clean);
  const first = find(clean);
  const isClean = first.ok || dirt.length === 0;
  return {
    names,
    nodes,
    arranged: isClean ? first : find(Graph.ofChains(nodes)),
    dirt: isClean ? dirt : [],
    repeated: repeatedSteps(guides, names, visitNames(guides, shop, new Set())),
    compose: composed,
  };
}

/** The nodes with links that no author has written: what a step comes after. */
function linked({ nodes, chains }: VisitNodes, links: readonly Before[]): VisitNodes {
  if (links.length === 0) return { nodes, chains };
  return {
    chains,
    nodes: new Map(
      [...nodes].map(([id, node]) => {
        const added = links.flatMap(({ first, second }) => (second === id && node.step ? [first] : []));
        if (!node.step || added.length === 0) return [id, node];
        const { at } = node.step;
        const after = [...node.step.after, ...added.map((value) => ({ value, at }))];
        return [id, { ...node, step: { ...node.step, after } }];
      }),
    ),
  };
}

/** What tells the work of a guide from that of the others: its title up to the first comma. */
function workName({ title }: Guide): string {
  return title.value.split(',', 1)[0] ?? title.value;
}

function firstFault(guide: Guide): Violation | null {
  return dryRun(guide, distinctOutcomes(guide)).violations[0] ?? null;
}

/** Steps that would be shared if every shared step were, and are not. */
function repeatedSteps(
  guides: readonly Guide[],
  names: ReadonlyMap<string, VisitNames>,
  sharing: ReadonlyMap<string, VisitNames>,
): readonly string[] {
  const wanted = new Map<string, Set<string>>();
  for (const guide of guides) {
    for (const step of guide.sections.flatMap(({ steps }) => steps)) {
      const identity = sharing.get(guide.id)?.shared(step);
      const by = names.get(guide.id);
      if (!identity || !by) continue;
      wanted.set(identity, new Set([...(wanted.get(identity) ?? []), by.step(step.id)]));
    }
  }
  return [...wanted.values()].flatMap((ids) => (ids.size > 1 ? [...ids] : []));
}

/**
 * The plans of a visit, each only worked out when it is asked for: as much shared as can be before more is repeated;
 * of each the order of the schedule of one technician, then the order that was found, then that without dirty work
 * first; at last the guides in a row with nothing shared, which takes as long as they take.
 */
function* plansOf(ground: Ground): Generator<{ readonly plan: PlannedVisit; readonly nodes: VisitNodes }> {
  let layout: Layout | null = null;
  for (const repeated of sharings(ground.guides, ground.shop)) {
    layout = laidOut(ground, repeated);
    const { arranged, dirt, nodes, compose } = layout;
    if (!arranged.ok) continue;
    const { order } = arranged;
    yield { plan: finished(layout, quickOrder(compose(order, dirt), nodes), dirt, ground), nodes };
    yield { plan: finished(layout, order, dirt, ground), nodes };
    if (dirt.length > 0) yield { plan: finished(layout, order, [], ground), nodes };
  }
  if (!layout) return;
  // The last layout shares nothing.
  for (const row of rowsOf([...layout.nodes.chains.values()]))
    yield { plan: finished(layout, row.flat(), [], ground), nodes: layout.nodes };
}

/** The most guides of which every row is tried; of more, two. */
const MOST_IN_ROWS = 3;

/** The rows in which guides can be done one after the other. */
function rowsOf<T>(guides: readonly T[]): readonly (readonly T[])[] {
  if (guides.length > MOST_IN_ROWS) return [guides, guides.toReversed()];
  if (guides.length < 2) return [guides];
  return guides.flatMap((first, place) => rowsOf(guides.toSpliced(place, 1)).map((rest) => [first, ...rest]));
}

function finished(
  layout: Layout,
  order: readonly string[],
  links: readonly Before[],
  ground: Ground,
): PlannedVisit {
  const guide = layout.compose(order, links);
  const job = computeJob(guide, ground.shop.settings.crew);
  const { visit } = guide;
  if (!visit) throw new Error('what was composed is no visit');
  const savings = savingsOf(job, ground.visited, layout.names, ground.known.builds);
  const ledger = layout.arranged.ok ? layout.arranged.links : [];
  const reasons = orderReasons(guide, job, { dirt: links, ledger, repeated: layout.repeated });
  return { guide: { ...guide, visit: { ...visit, savings, reasons } }, job };
}

function savingsIn({ guide }: PlannedVisit) {
  return guide.visit?.savings ?? [];
}
