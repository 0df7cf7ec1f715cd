import type { Guide, Step } from '../model/guide.ts';
import type { Action, Verb } from '../model/inline.ts';
import type { Supply } from '../model/item.ts';
import type { Build } from '../model/when.ts';
import type { Span } from '../source/span.ts';
import type { Quantity } from '../units/quantity.ts';
import { featuresOf } from './actions/target.ts';
import { actionsOf } from './actions/walk.ts';
import { allHold } from './builds/when.ts';

/** What the time of a product asks of a later step of a plan. */
export interface ProductDemand {
  /** Dry before it is worked on, cured before what needs it, or still open when what it is for goes on. */
  readonly kind: 'dries' | 'cures' | 'open-time';
  readonly supply: Supply;
  /** Where it is put on: the place in the plan, and the action. */
  readonly from: number;
  readonly applied: Action;
  /** The place in the plan that has to wait, or to be in time, and what shows it. */
  readonly to: number;
  readonly at: Span;
  readonly time: Quantity<'time'>;
}

/** What may not be done to a thing while something on it dries. */
const spoils: ReadonlySet<Verb> = new Set(['fit', 'refit', 'move-back', 'start', 'bond', 'clean', 'apply']);
/** What a product that stays open for a while is put on for. */
const puts: ReadonlySet<Verb> = new Set(['fit', 'refit', 'move-back', 'start', 'bond']);

/** What puts a thing over whatever it covers. */
const closes: ReadonlySet<Verb> = new Set(['fit', 'refit', 'move-back']);

interface Deed {
  readonly place: number;
  readonly action: Action;
}

/** Every demand of the products that a plan puts on: for each time of each, the first work that it concerns. */
export function productDemands(guide: Guide, build: Build, steps: readonly Step[]): readonly ProductDemand[] {
  const timed = [...guide.items.values()].some(
    (item) => item.kind === 'supply' && (item.dries || item.cures || item.openTime),
  );
  if (!timed) return [];
  const deeds = steps.flatMap((step, place): Deed[] =>
    actionsOf(step).flatMap(({ node, whens }) => (allHold(whens, build) ? [{ place, action: node }] : [])),
  );
  return deeds.flatMap((deed, index) => {
    const supply = guide.items.get(deed.action.target.value);
    if (deed.action.verb !== 'apply' || supply?.kind !== 'supply') return [];
    return demandsOf(supply, deed, deeds.slice(index + 1), steps, guide);
  });
}

function demandsOf(
  supply: Supply,
  { place: from, action: applied }: Deed,
  later: readonly Deed[],
  steps: readonly Step[],
  guide: Guide,
): readonly ProductDemand[] {
  const on = new Set(applied.on.map(({ value }) => value));
  const touching = (verbs: ReadonlySet<Verb>, under: typeof restsOn = restsOn) =>
    later.find(
      ({ action }) =>
        verbs.has(action.verb) &&
        action.target.value !== supply.id &&
        [...action.on.map(({ value }) => value), ...under(action.target.value, guide)].some((id) =>
          on.has(id),
        ),
    );
  const spoilt = [touching(spoils), touching(closes, liesOver)].flatMap((deed) => deed ?? []);
  const [spoiling] = spoilt.sort((a, b) => later.indexOf(a) - later.indexOf(b));
  // In a visit, what another guide needs is what that guide itself puts on.
  const isAsked = sharesWork(steps[from], guide);
  const needing = firstNeed(
    supply,
    from,
    later.filter(({ place }) => isAsked(steps[place])),
    steps,
    guide,
  );
  const demand = (
    kind: ProductDemand['kind'],
    time: Supply['dries'],
    found: { readonly place: number; readonly at: Span } | null,
  ): readonly ProductDemand[] =>
    time && found ? [{ kind, supply, from, applied, to: found.place, at: found.at, time: time.value }] : [];
  const at = (deed: Deed | undefined) => (deed ? { place: deed.place, at: deed.action.at } : null);
  return [
    ...demand('dries', supply.dries, first(at(spoiling), supply.cures ? null : needing)),
    ...demand('cures', supply.cures, needing),
    ...demand('open-time', supply.openTime, at(touching(puts))),
  ];
}

/** Whether a step of a visit is the work of a guide that another step is the work of too; else always. */
function sharesWork(one: Step | undefined, { visit }: Guide): (other: Step | undefined) => boolean {
  const own = one && visit?.steps.get(one.id);
  return (other) => {
    const others = other && visit?.steps.get(other.id);
    return !own || !others || own.guides.some((guide) => others.guides.includes(guide));
  };
}

/** The first step, or action, after a supply is put on that names it under `needs`. */
function firstNeed(
  { id }: Supply,
  from: number,
  later: readonly Deed[],
  steps: readonly Step[],
  guide: Guide,
): { readonly place: number; readonly at: Span } | null {
  const place = steps.findIndex(
    (step, index) =>
      index > from && sharesWork(steps[from], guide)(step) && step.needs.some(({ value }) => value === id),
  );
  const need = steps[place]?.needs.find(({ value }) => value === id);
  const acting = later.find(({ action }) =>
    guide.items.get(action.target.value)?.needs.some(({ value }) => value === id),
  );
  return first(
    need ? { place, at: need.at } : null,
    acting ? { place: acting.place, at: acting.action.at } : null,
  );
}

function first<P extends { readonly place: number }>(one: P | null, other: P | null): P | null {
  if (!one || !other) return one ?? other;
  return other.place < one.place ? other : one;
}

/** What lies under a thing that is put in its place: itself, what it holds or sits on, the panel of its hole. */
function restsOn(id: string, guide: Guide): readonly string[] {
  const item = guide.items.get(id);
  const panels = [...guide.templates.values()].flatMap((template) =>
    template.panel && featuresOf(template).some((hole) => hole.for?.value === id)
      ? [template.panel.value]
      : [],
  );
  return [
    id,
    ...(item && 'holds' in item ? item.holds.map(({ value }) => value) : []),
    ...(item && 'on' in item ? item.on.map(({ value }) => value) : []),
    ...panels,
  ];
}

/** What a thing lies over once it is in its place. */
function liesOver(id: string, guide: Guide): readonly string[] {
  const item = guide.items.get(id);
  return item && 'covers' in item ? item.covers.map(({ value }) => value) : [];
}
