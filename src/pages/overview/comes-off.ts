import { actionsOf } from '../../job/actions/walk.ts';
import { countWords, listed } from '../../job/index.ts';
import type { Connector, Fastener, Item, Part } from '../../model/item.ts';
import { type GuideContext, stepRef } from '../frame/context.ts';
import { itemAnchor } from '../frame/mention.ts';
import { ownPictureOf } from '../frame/own-picture.ts';
import { shownWhen } from '../frame/plans.ts';
import { fixingWords, pageOfItem } from './gather.ts';
import type { ComesOffRow } from './list-views.ts';

type VehicleItem = Part | Fastener | Connector;

/** A line for each thing that comes off, in the order of declaration. */
export function comesOffRows(context: GuideContext): readonly ComesOffRow[] {
  return comesOff(context).map(({ item, first }) => ({
    ...shownWhen(context, item.when),
    item: item.id,
    id: itemAnchor(item.id),
    name: item.noun.label,
    page: pageOfItem(item, context),
    picture: ownPictureOf(item, context),
    count: countWords(item),
    detail: detailWords(item, context),
    first: [first ? stepRef(context, first) : null].filter((ref) => ref !== null),
  }));
}

/** A thing that comes off, and the id of the first step that acts on it. */
interface ComesOff {
  readonly item: VehicleItem;
  readonly first: string | undefined;
}

/** The parts, fasteners and connectors of the vehicle that the job touches, in the order of declaration. */
export function comesOff({ guide, steps }: Pick<GuideContext, 'guide' | 'steps'>): readonly ComesOff[] {
  const firstSteps = firstActions(steps);
  return [...guide.items.values()].filter(isOfVehicle).flatMap((item) => {
    const first = firstSteps.get(item.id);
    // A platform's parts are there for all its guides; one that this job leaves alone is no line of it.
    return !first && item.kind === 'part' && item.fromPlatform ? [] : [{ item, first }];
  });
}

/** Whether an item is a part, fastener or connector of the vehicle. */
export function isOfVehicle(item: Item): item is VehicleItem {
  return item.kind === 'part' || item.kind === 'fastener' || item.kind === 'connector';
}

/** "Flange bolt, 10 mm hexagon, 8 N·m (70.8 lbf·in)", or the part that a connector sits on. */
function detailWords(item: VehicleItem, { shop, guide }: GuideContext): string | null {
  if (item.kind === 'connector') {
    const on = item.on.map((ref) => guide.items.get(ref.value)?.noun.singular ?? ref.value);
    return on.length > 0 ? `on the ${listed(on)}` : null;
  }
  if (item.kind === 'part') return null;
  const type = item.type ? shop.fastenerTypes.get(item.type.value)?.noun.singular : undefined;
  const parts = [type, fixingWords(item), item.reuse ? undefined : 'used once: replace it'];
  return parts.filter((part) => part).join(', ') || null;
}

/** The step of each item's first action. */
function firstActions(steps: GuideContext['steps']): ReadonlyMap<string, string> {
  const first = new Map<string, string>();
  for (const { step } of steps.values()) {
    for (const { node } of actionsOf(step)) {
      if (!first.has(node.target.value)) first.set(node.target.value, step.id);
    }
  }
  return first;
}
