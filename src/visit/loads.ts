import type { Report } from '../diagnostics/report.ts';
import { finding } from '../diagnostics/rule-card.ts';
import { isIn } from '../job/actions/uses.ts';
import type { Guide } from '../model/guide.ts';
import type { Item } from '../model/item.ts';
import type { Job } from '../model/job.ts';
import type { SharedLoad } from '../model/visit.ts';
import { convert, formatBoth, quantityOf } from '../units/format.ts';
import type { Quantity } from '../units/quantity.ts';
import type { VisitNames } from './names.ts';
import { visitLoadExceeded } from './rules.ts';

/**
 * The limits that several guides of a visit load together: each is one thing in all of them, as a rating of the
 * platform is, and whatever any of them claims of its kind counts towards it; of a limit in amperes, what a circuit
 * draws does too.
 */
export function sharedLoads(
  guides: readonly Guide[],
  names: ReadonlyMap<string, VisitNames>,
): readonly SharedLoad[] {
  const loads = new Map<
    string,
    { readonly rating: string; claims: SharedLoad['claims']; guides: string[]; silent: string[] }
  >();
  for (const guide of guides) {
    const by = names.get(guide.id);
    if (!by) continue;
    for (const item of guide.items.values()) {
      if (item.kind !== 'rating' || !item.limit) continue;
      const rating = by.item(item.id);
      const { dimension } = item.limit.value;
      const own = [...guide.items.values()].filter((one) => loadOf(one)?.dimension === dimension);
      const known = loads.get(rating) ?? { rating, claims: [], guides: [], silent: [] };
      loads.set(rating, {
        rating,
        claims: [...known.claims, ...own.map(({ id }) => ({ item: by.item(id), guide: guide.id }))],
        guides: [...known.guides, guide.id],
        silent: own.length === 0 ? [...known.silent, guide.id] : known.silent,
      });
    }
  }
  return [...loads.values()]
    .filter((load) => load.guides.length > 1)
    .map(({ rating, claims, silent }) => ({ rating, claims, silent }));
}

/** What an item loads something else with; `null` where it loads nothing. */
function loadOf(item: Item): Quantity | null {
  if (item.kind === 'rating') return item.claim?.value ?? null;
  return item.kind === 'circuit' ? (item.load?.value ?? null) : null;
}

/** Tells of each limit that the guides of a visit together exceed, in the build that loads it most. */
export function reportLoads({ items, visit }: Guide, job: Job, report: Report): void {
  for (const { rating, claims } of visit?.loads ?? []) {
    const limited = items.get(rating);
    if (limited?.kind !== 'rating' || !limited.limit) continue;
    const limit = limited.limit.value;
    const builds = job.plans.flatMap((plan) => plan.builds);
    const inBuild = builds.map((build) =>
      claims.flatMap(({ item }) => {
        const one = items.get(item);
        return one && isIn(one, build) ? [one] : [];
      }),
    );
    const most = inBuild.reduce((a, b) => (sumOf(b, limit).base > sumOf(a, limit).base ? b : a), []);
    const last = most.at(-1);
    const sum = sumOf(most, limit);
    if (!last || sum.base <= limit.base) continue;
    const parts = most.flatMap((one) => {
      const load = loadOf(one);
      return load ? [formatBoth(load)] : [];
    });
    const message = `the ${limited.noun.singular} may be ${formatBoth(limit)} at most, and these jobs load it with ${parts.join(' + ')} = ${formatBoth(sum)}`;
    const notes = [
      ...most.slice(0, -1).map((one) => ({ message: `the ${one.noun.singular}`, at: one.at })),
      { message: 'the limit', at: limited.at },
    ];
    report(finding(visitLoadExceeded, last.at, message, { notes }));
  }
}

function sumOf(items: readonly Item[], { dimension, unit }: Quantity): Quantity {
  const sum = items.reduce((total, item) => {
    const load = loadOf(item);
    return load ? total + convert(load, unit) : total;
  }, 0);
  return quantityOf(dimension, sum, unit);
}
