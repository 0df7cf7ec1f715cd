import { type GatherLine, isFixing, itemTorqueWords, listed, lowered, whereUsed } from '../../job/index.ts';
import type { Item } from '../../model/item.ts';
import type { GatherList, GatherSupply, GatherTool, Plan } from '../../model/job.ts';
import { formatDrive } from '../../trade/drives.ts';
import { packsFor } from '../../trade/packs.ts';
import { convert, formatBoth, quantityOf } from '../../units/format.ts';
import { type GuideContext, stepRefs } from '../frame/context.ts';
import { itemAnchor } from '../frame/mention.ts';
import { ownPictureOf } from '../frame/own-picture.ts';
import { shownIn, shownWhen, varying } from '../frame/plans.ts';
import { fastenerTypePath, toolPath } from '../frame/reference-paths.ts';
import type { VaryingView } from '../frame/shared-views.ts';
import { typeOfItem } from '../frame/type-of-item.ts';
import { mergeSets } from './gather-sets.ts';
import type { GatherRow, GatherView } from './list-views.ts';

/** What must be within reach, over all plans: each thing once, with the builds that need it. */
export function gatherView(context: GuideContext, nones: readonly string[]): GatherView {
  const rows = <L extends GatherLine>(list: (gather: GatherList) => readonly L[], amount: AmountOf<L>) =>
    gatherRows(context, (plan) => whereUsed(list(plan.gather), list, context.job), amount);
  return {
    // What protects is worn in every build, also where no step says so again.
    wear: inOrderOfUse(gatherRows(context, ({ gather }) => gather.wear, none)),
    tools: mergeSets(inOrderOfUse(rows((gather) => gather.tools, countAtOnce)), context.guide.items),
    supplies: rows((gather) => gather.supplies, declaredAmount),
    // What is in the box is in the box, whether this build uses it or not.
    kit: gatherRows(
      context,
      ({ gather }) => gather.kit,
      ({ count, perSide }) => (perSide === null ? String(count) : `${count} (${perSide} each side)`),
    ),
    nones,
  };
}

type AmountOf<L extends GatherLine> = (line: L) => string | null;

const none = () => null;

/** "2, to work side by side": a technician alone needs one. */
function countAtOnce({ atOnce }: GatherTool): string | null {
  return atOnce > 1 ? `${atOnce}, to work side by side` : null;
}

function declaredAmount({ declared }: GatherSupply): string | null {
  return declared ? formatBoth(declared) : null;
}

/** "2 packs of 300 ml (10.1 US fl oz)": what is fetched, in whole packages; `null` where they cannot be reckoned. */
function packWords(item: Item): string | null {
  if (item.kind !== 'supply' || !item.pack) return null;
  const pack = item.pack.value;
  const wanted = item.quantity?.value;
  const of = `of ${formatBoth(pack)}`;
  const packs = wanted ? packsFor(wanted, pack) : null;
  if (packs === null) return `in packs ${of}`;
  return `${packs} ${packs === 1 ? 'pack' : 'packs'} ${of}`;
}

function gatherRows<L extends GatherLine>(
  context: GuideContext,
  linesOf: (plan: Plan) => readonly L[],
  amountOf: AmountOf<L>,
): readonly GatherRow[] {
  const ids = new Set(context.job.plans.flatMap((plan) => linesOf(plan).map((line) => line.item)));
  return [...ids].flatMap((id) => {
    const item = context.guide.items.get(id);
    if (!item) return [];
    const lineIn = (plan: Plan) => linesOf(plan).find((line) => line.item === id);
    const amountIn = (plan: Plan) => {
      const line = lineIn(plan);
      return line ? amountOf(line) : null;
    };
    const plans = context.job.plans.filter((plan) => lineIn(plan));
    const amount = varying(context, amountIn);
    return {
      ...(item.when ? shownWhen(context, item.when) : shownIn(context, plans)),
      item: id,
      id: itemAnchor(id),
      name: item.noun.label,
      page: pageOfItem(item, context),
      picture: ownPictureOf(item, context),
      detail: detailOf(item, context),
      amount: amount.length === 1 ? amount.map(({ text }) => ({ text, plans: null, only: null })) : amount,
      used: item.kind === 'supply' ? usedAmounts(context, id) : [],
      first: stepRefs(context, (plan) => lineIn(plan)?.firstStep ?? null),
      sizes: [],
    };
  });
}

/** Where the site tells more of an item: the page of a thing of the crib, or of a kind of fastener. */
export function pageOfItem(item: Item, { shop, shelf }: GuideContext): string | null {
  if (shop.crib.has(item.id)) return shelf.page(toolPath(item.id));
  const type = typeOfItem(item, shop);
  return type && shelf.page(fastenerTypePath(type.id));
}

/** Sorted by the step that needs it first; what no step names stands last. */
function inOrderOfUse(rows: readonly GatherRow[]): readonly GatherRow[] {
  const place = (row: GatherRow) =>
    Math.min(...row.first.map((step) => step.number), Number.MAX_SAFE_INTEGER);
  return [...rows].sort((a, b) => place(a) - place(b));
}

/** What else is said of an item: the tools that serve as well; the packages to fetch; drive, thread, grade and torque of a fixing. */
function detailOf(item: Item, { guide, shop }: GuideContext): string | null {
  if (item.kind === 'tool') {
    const others = item.or.map(
      (ref) => (guide.items.get(ref.value) ?? shop.crib.get(ref.value))?.noun.label ?? ref.value,
    );
    return others.length > 0 ? `or ${listed(others.map(lowered), 'or')}` : null;
  }
  if (item.kind === 'supply') return packWords(item);
  return isFixing(item) ? fixingWords(item) : null;
}

/** "M8x1.25, grade 8, 13 mm hexagon, 25 N·m (18.4 lbf·ft)": what is known of a fastener, in words. */
export function fixingWords(item: Item): string | null {
  if (!isFixing(item)) return null;
  const parts = [
    item.thread?.value.name,
    item.grade ? `grade ${item.grade.value}` : undefined,
    item.drive ? formatDrive(item.drive.value) : undefined,
    itemTorqueWords(item) || undefined,
  ].filter((part) => part !== undefined);
  return parts.length > 0 ? parts.join(', ') : null;
}

/** How much of a supply the steps use, in the unit of its declaration. */
function usedAmounts(context: GuideContext, id: string): readonly VaryingView[] {
  return varying(context, (plan) => {
    const line = plan.gather.supplies.find((supply) => supply.item === id);
    if (!line?.declared || line.used === null) return null;
    const { declared, used } = line;
    const value = convert({ ...declared, base: used as typeof declared.base }, declared.unit);
    return formatBoth(quantityOf(declared.dimension, value, declared.unit));
  });
}
