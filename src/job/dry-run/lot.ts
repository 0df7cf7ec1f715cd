import type { Guide } from '../../model/guide.ts';
import type { Ref } from '../../model/inline.ts';
import type { Item, Side } from '../../model/item.ts';
import type { StateName } from '../../model/violation.ts';
import type { Span, Written } from '../../source/span.ts';
import { isFixing } from '../actions/actions.ts';
import { type Relation, related } from '../actions/relations.ts';
import { featuresOf } from '../actions/target.ts';
import { handledEach } from '../words/phrase.ts';
import { sharesSide } from './shares-side.ts';
import { type Thing, thingOf } from './thing.ts';

/** All pieces of one item, template or hole on one side: they are always handled together. */
export interface Lot {
  /** Position in the list of lots; relations below are lists of positions. */
  readonly index: number;
  readonly id: string;
  /** `null` for a template or a hole. */
  readonly thing: Thing | null;
  /** The template of a template or hole, whether it is cut as a whole, and where it is drawn. */
  readonly cut: { readonly template: string; readonly whole: boolean; readonly at: Span } | null;
  /** `null` for what has no sides. */
  readonly side: 'left' | 'right' | null;
  readonly sideWritten: Side | null;
  readonly count: number;
  /** How many pieces are handled: spares stay in the box. */
  readonly handled: number;
  readonly start: StateName;
  readonly holds: number[];
  /** Also what holds, sits on and covers the thing that it replaces, as far as that is still there. */
  readonly heldBy: number[];
  readonly on: number[];
  readonly plugs: number[];
  readonly covers: number[];
  readonly coveredBy: number[];
  readonly replaces: number[];
  readonly replacedBy: number[];
}

/** The lots of a guide with their relations. A sided thing relates to what is on its own side. */
export function lotsOf(guide: Guide): readonly Lot[] {
  const lots: Lot[] = [];
  const add = (
    id: string,
    item: Item | null,
    side: Written<Side> | null,
    count: number,
    cut: Lot['cut'] = null,
  ): void => {
    const written = side?.value ?? null;
    const sides = written === 'each' ? (['left', 'right'] as const) : [written];
    for (const one of sides) lots.push({ ...lot(lots.length, id, item, one, written, count, guide), cut });
  };
  for (const item of guide.items.values()) {
    const counted = 'count' in item;
    add(item.id, item, counted ? item.side : null, counted ? item.count.value : 1);
    // What must come off again is known for the whole and for each side: tape on two sides comes off on two.
    if (item.kind !== 'supply' || !item.temporary) continue;
    for (const one of ['left', 'right'] as const)
      lots.push(lot(lots.length, item.id, item, one, null, 1, guide));
  }
  for (const template of guide.templates.values()) {
    const side = template.side ? { value: template.side, at: template.at } : null;
    add(template.id, null, side, 1, { template: template.id, whole: true, at: template.at });
    for (const { id, at } of featuresOf(template)) {
      if (id !== null) add(id, null, side, 1, { template: template.id, whole: false, at });
    }
  }
  relate(lots, guide);
  return lots;
}

/**
 * What replaces another stands for it: it is held, covered and plugged as that one was, and covers what that one
 * covered. A fastener that replaces another holds what that one held, unless it says otherwise. A relation to what it
 * cannot name is told by another rule, and relates nothing.
 */
function relate(lots: readonly Lot[], { items }: Pick<Guide, 'items'>): void {
  const byId = new Map<string, Lot[]>();
  for (const one of lots) byId.set(one.id, [...(byId.get(one.id) ?? []), one]);
  const named = (from: Lot, refs: readonly Ref[], name: Relation['name']) =>
    refs.flatMap((ref) =>
      (byId.get(ref.value) ?? []).filter(
        (to) => to.thing && related[name].includes(to.thing.kind) && sharesSide(from.side, to.side),
      ),
    );
  for (const one of lots) {
    const item = one.thing && items.get(one.id);
    if (!item) continue;
    const old = 'replaces' in item && item.replaces ? named(one, [item.replaces], 'replaces') : [];
    const inherited = old.flatMap((other) => {
      const own = items.get(other.id);
      return own && 'holds' in own ? own.holds : [];
    });
    const holds = 'holds' in item && item.holds.length > 0 ? item.holds : inherited;
    link(one, named(one, holds, 'holds'), 'holds', 'heldBy');
    link(one, old, 'replaces', 'replacedBy');
    if ('on' in item) link(one, named(one, item.on, 'on'), 'on', 'plugs');
    if ('covers' in item) link(one, named(one, item.covers, 'covers'), 'covers', 'coveredBy');
  }
  for (const one of lots) for (const old of one.replaces) inherit(one, lots[old], lots);
}

function inherit(one: Lot, old: Lot | undefined, lots: readonly Lot[]): void {
  if (!old) return;
  const beside = (index: number) => sharesSide(one.side, lots[index]?.side ?? null) && index !== one.index;
  for (const back of ['heldBy', 'plugs', 'coveredBy'] as const) {
    one[back].push(...old[back].filter((index) => beside(index) && !one[back].includes(index)));
  }
  for (const index of old.covers.filter(beside)) {
    if (!one.covers.includes(index)) one.covers.push(index);
    const under = lots[index]?.coveredBy;
    if (under && !under.includes(one.index)) under.push(one.index);
  }
}

function link(
  from: Lot,
  to: readonly Lot[],
  there: 'holds' | 'on' | 'covers' | 'replaces',
  back: 'heldBy' | 'plugs' | 'coveredBy' | 'replacedBy',
): void {
  for (const other of to) {
    from[there].push(other.index);
    other[back].push(from.index);
  }
}

function lot(
  index: number,
  id: string,
  item: Item | null,
  side: 'left' | 'right' | null,
  sideWritten: Side | null,
  count: number,
  guide: Guide,
): Lot {
  return {
    index,
    id,
    thing: item && thingOf(item),
    cut: null,
    side,
    sideWritten,
    count,
    handled: item ? handledEach(item) : count,
    start: startOf(item, guide),
    holds: [],
    heldBy: [],
    on: [],
    plugs: [],
    covers: [],
    coveredBy: [],
    replaces: [],
    replacedBy: [],
  };
}

/** How a thing is before the work begins. A plug that sits on something from the box begins apart. */
function startOf(item: Item | null, guide: Guide): StateName {
  if (!item) return 'not done';
  switch (item.kind) {
    case 'kit':
      return 'in the box';
    case 'connector':
      return item.on.some((ref) => guide.items.get(ref.value)?.kind === 'kit') ? 'apart' : 'mated';
    case 'condition':
      return 'does not hold';
    case 'supply':
      return 'not on';
    case 'measure':
    case 'inspection':
      return 'not done';
    case 'setting':
      return 'as found';
    default:
      return isFixing(item) ? 'tight' : 'in place';
  }
}
