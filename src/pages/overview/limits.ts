import type { Circuit, Item, Rating } from '../../model/item.ts';
import { weakestLink } from '../../trade/towing.ts';
import { convert, formatBoth, quantityOf } from '../../units/format.ts';
import type { Dimension } from '../../units/quantity.ts';
import { circuitWords } from '../frame/circuit-words.ts';
import type { GuideContext } from '../frame/context.ts';
import { itemAnchor } from '../frame/mention.ts';
import { shownWhen } from '../frame/plans.ts';
import type { LimitRow } from './list-views.ts';

/** What the job may carry or feed: ratings, claimed loads and circuits, in the order of declaration. */
export function limitRows(context: GuideContext): readonly LimitRow[] {
  const items = [...context.guide.items.values()];
  const governing = governingIds(items.filter(isRating));
  return items.filter(isLimit).map((item) => ({
    ...shownWhen(context, item.when),
    item: item.id,
    id: itemAnchor(item.id),
    name: item.noun.label,
    value:
      item.kind === 'rating'
        ? [ratingWords(item), sumWords(item, context)].filter((part) => part !== '').join('; ')
        : circuitWords(item, context.guide),
    governs: governing.has(item.id),
  }));
}

/** Whether an item is a rating or a circuit. */
export function isLimit(item: Item): item is Rating | Circuit {
  return item.kind === 'rating' || item.kind === 'circuit';
}

function isRating(item: Item): item is Rating {
  return item.kind === 'rating';
}

/** The weakest link of each kind of limit, where there is more than one to choose from. */
function governingIds(ratings: readonly Rating[]): ReadonlySet<string> {
  const byKind = new Map<Dimension, Rating[]>();
  for (const rating of ratings) {
    const kind = rating.limit?.value.dimension;
    if (kind) byKind.set(kind, [...(byKind.get(kind) ?? []), rating]);
  }
  const weakest = [...byKind.values()]
    .filter((links) => links.length > 1)
    .map((links) =>
      weakestLink(links.flatMap(({ id, limit }) => (limit ? [{ name: id, rating: limit.value, id }] : []))),
    );
  return new Set(weakest.flatMap((link) => link?.id ?? []));
}

/** "At most 75 kg (165 lb)" or "load 28 kg (61.7 lb)". */
export function ratingWords({ limit, claim }: Rating): string {
  const parts = [
    limit ? `at most ${formatBoth(limit.value)}` : null,
    claim ? `load ${formatBoth(claim.value)}` : null,
  ];
  return parts.filter((part) => part !== null).join(', ');
}

/** "28 kg (61.7 lb) + 6 kg (13.2 lb) = 34 kg (75 lb) of all jobs": what the guides of a visit load a limit with. */
function sumWords({ id, limit }: Rating, { guide: { items, visit } }: GuideContext): string {
  const load = visit?.loads.find(({ rating }) => rating === id);
  const parts = (load?.claims ?? []).flatMap(({ item }) => {
    const one = items.get(item);
    const claimed = one?.kind === 'rating' ? one.claim : one?.kind === 'circuit' ? one.load : null;
    return claimed ? [claimed.value] : [];
  });
  if (!limit || parts.length < 2) return '';
  const { dimension, unit } = limit.value;
  const sum = quantityOf(
    dimension,
    parts.reduce((total, part) => total + convert(part, unit), 0),
    unit,
  );
  return `${parts.map(formatBoth).join(' + ')} = ${formatBoth(sum)} of all jobs`;
}
