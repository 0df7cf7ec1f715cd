import { shareAPanel } from '../../cut/shape/neighbours.ts';
import { cuttersOf } from '../../job/actions/cutters.ts';
import { lengthless, piecesOn } from '../../job/actions/grip.ts';
import { type Feature, featuresOf } from '../../job/actions/target.ts';
import { placeOfTemplate } from '../../job/builds/template-place.ts';
import { actionsOf, enumerateBuilds, findTarget, isFixing, stepsOf } from '../../job/index.ts';
import type { CutTemplate } from '../../model/cut-template.ts';
import type { Guide } from '../../model/guide.ts';
import type { Fastener, Item, KitItem, Rating } from '../../model/item.ts';
import type { NotChecked } from '../../model/not-checked.ts';
import type { When } from '../../model/when.ts';
import type { Written } from '../../source/span.ts';
import { clearanceHoles, judgeRivetNutHole } from '../../trade/holes.ts';
import { strengthOf } from '../../trade/strength.ts';
import { hasWidthOf } from '../../trade/widths.ts';
import { buildsWith } from '../builds/witness.ts';
import { isRivetNut, sizeOf } from './holes.ts';
import { uncheckedCures, uncheckedWork } from './unstated-care.ts';

/** What the rules of the trade would judge and could not, in the order of declaration. */
export function notChecked(guide: Guide): readonly NotChecked[] {
  const items = [...guide.items.values()];
  return [
    ...items.flatMap((item) => (isFixing(item) ? uncheckedFixing(item) : [])),
    ...uncheckedFits(guide),
    ...items.flatMap((item) => (isFixing(item) ? uncheckedStack(item, guide) : [])),
    ...[...guide.templates.values()].flatMap((template) => uncheckedTemplate(template, guide)),
    ...uncheckedPanels(guide),
    ...uncheckedCuts(guide),
    ...uncheckedWiring(items),
    ...uncheckedLoads(items.filter((item) => item.kind === 'rating')),
    ...unstatedLoads(guide),
    ...uncheckedCures(guide),
    ...uncheckedWork(guide),
  ];
}

function uncheckedFixing(item: Fastener | KitItem): readonly NotChecked[] {
  const { id, torque, thread, grade, drive, when } = item;
  const whens = listOf(when);
  const lacks = !thread
    ? 'thread'
    : !grade
      ? 'grade'
      : strengthOf(thread.value, grade.value)
        ? null
        : 'table';
  const flats = drive && 'across' in drive.value ? drive.value : null;
  return [
    ...(torque && lacks ? [{ check: 'torque', item: id, lacks, whens } as const] : []),
    ...(flats && thread && !hasWidthOf(flats, thread.value)
      ? [{ check: 'width', item: id, lacks: 'table', whens } as const]
      : []),
  ];
}

/** A tool that is named for a fastener whose drive nobody states. */
function uncheckedFits(guide: Guide): readonly NotChecked[] {
  const told = new Set<string>();
  return stepsOf(guide).flatMap((step) =>
    actionsOf(step).flatMap(({ node, whens }): readonly NotChecked[] => {
      const item = guide.items.get(node.target.value);
      if (!item || !isFixing(item) || item.drive || item.unknown.has('drive')) return [];
      return [...node.with, ...item.with].flatMap(({ value }) => {
        const tool = guide.items.get(value);
        const key = `${item.id} ${value}`;
        if (tool?.kind !== 'tool' || !tool.drive || told.has(key)) return [];
        told.add(key);
        return [{ check: 'fit', item: item.id, tool: value, lacks: 'drive', whens } as const];
      });
    }),
  );
}

/** A bolt with something on it, of which a length or a thread is not stated. */
function uncheckedStack(bolt: Fastener | KitItem, guide: Guide): readonly NotChecked[] {
  if (bolt.stack.length === 0) return [];
  const whens = listOf(bolt.when);
  const isPlain = ({ noun }: Item) => /\b(?:washer|spacer|sleeve|plate|ring)s?\b/i.test(noun.label);
  const nuts = piecesOn(bolt, guide).filter((piece) => isFixing(piece) && !isPlain(piece));
  const [long] = lengthless(bolt, guide);
  const bare = [bolt, ...nuts].filter((piece) => isFixing(piece) && !piece.thread);
  const [nut] = nuts.length > 0 && bare.length <= nuts.length ? bare : [];
  return [
    ...(long ? [{ check: 'grip', item: bolt.id, piece: long.id, lacks: 'length', whens } as const] : []),
    ...(nut ? [{ check: 'joint', item: bolt.id, piece: nut.id, lacks: 'thread', whens } as const] : []),
  ];
}

/** Holes of which nothing says what goes through, or that no table has. */
function uncheckedTemplate(template: CutTemplate, { items }: Guide): readonly NotChecked[] {
  const lackOf = (feature: Feature): 'fastener' | 'thread' | 'table' | null => {
    if (feature.for === null) return 'fastener';
    const item = items.get(feature.for.value);
    if (!item) return null;
    if (!('thread' in item) || !item.thread) return isFixing(item) || isRivetNut(item) ? 'thread' : null;
    if (!isFixing(item)) return null;
    const known = isRivetNut(item)
      ? judgeRivetNutHole(sizeOf(feature), item.thread.value)
      : clearanceHoles(item.thread.value);
    return known ? null : 'table';
  };
  return featuresOf(template).flatMap((feature) => {
    const lacks = lackOf(feature);
    const { label, when } = feature;
    return lacks ? [{ check: 'hole', item: template.id, label, lacks, whens: listOf(when) } as const] : [];
  });
}

/** Two templates that some build cuts in one panel, whose places cannot be compared. */
function uncheckedPanels(guide: Guide): readonly NotChecked[] {
  const templates = [...guide.templates.values()].filter(({ panel }) => panel);
  return templates.flatMap((one, index) =>
    templates.slice(index + 1).flatMap((other): readonly NotChecked[] => {
      const apart = one.panel?.value !== other.panel?.value || forOtherSides(one, other);
      if (apart || shareAPanel(one, other)) return [];
      const whens = [one, other].flatMap(({ id }) => placeOfTemplate(guide, id));
      const both = whens.length === 0 || buildsWith(whens, enumerateBuilds(guide.builds).builds).length > 0;
      return both ? [{ check: 'panel', item: one.id, other: other.id, lacks: 'datums', whens }] : [];
    }),
  );
}

/** Whether each of two templates is for one side of the vehicle, and not for the same. */
function forOtherSides({ side }: CutTemplate, other: CutTemplate): boolean {
  const sides = [side, other.side];
  return sides.includes('left') && sides.includes('right');
}

/** Cuts by a tool whose least radius nobody states, so that their corners are not held against it. */
function uncheckedCuts(guide: Guide): readonly NotChecked[] {
  const told = new Set<string>();
  return stepsOf(guide).flatMap((step) =>
    actionsOf(step).flatMap(({ node, whens }): readonly NotChecked[] => {
      if (node.verb !== 'cut' || findTarget(guide, node.target.value)?.kind !== 'template') return [];
      const tools = cuttersOf(node, step).flatMap(({ value }) => {
        const tool = guide.items.get(value);
        return tool?.kind === 'tool' ? [tool] : [];
      });
      // Where the step only mentions tools, one of them cuts, and the others do something else.
      if (node.with.length === 0 && tools.some(({ cutterRadius }) => cutterRadius)) return [];
      return tools.flatMap(({ id, cutterRadius, unknown }) => {
        const key = `${node.target.value} ${id}`;
        if (cutterRadius || unknown.has('cutter-radius') || told.has(key)) return [];
        told.add(key);
        return [{ check: 'cut', item: node.target.value, tool: id, lacks: 'radius', whens } as const];
      });
    }),
  );
}

/** What brings wires or fuses along, by its name. */
const wiring = /\b(?:loom|harness|relay|fuse|inverter|wiring)\b/i;

function uncheckedWiring(items: readonly Item[]): readonly NotChecked[] {
  if (items.some(({ kind }) => kind === 'circuit')) return [];
  return items.flatMap(({ kind, noun, id, when }) =>
    kind === 'kit' && wiring.test(noun.label)
      ? [{ check: 'wiring', item: id, lacks: 'circuit', whens: listOf(when) } as const]
      : [],
  );
}

/** A claim that meets no limit of its own kind, and each limit of a kind that is near it. */
function uncheckedLoads(ratings: readonly Rating[]): readonly NotChecked[] {
  return ratings.flatMap(({ id, claim, limit, unknown, when }): readonly NotChecked[] => {
    const whens = listOf(when);
    const isBare = !claim && !limit && !unknown.has('claim') && !unknown.has('limit');
    if (isBare) return [{ check: 'load', item: id, lacks: 'figure', whens }];
    if (!claim) return [];
    const own = claim.value.dimension;
    const limits = ratings.filter(({ limit }) => limit);
    const against = limits.filter(({ limit }) => limit && isNear(limit.value.dimension, own));
    if (against.length > 0) {
      return against.map(
        (one) => ({ check: 'load', item: id, against: one.id, lacks: 'kind', whens }) as const,
      );
    }
    const judged = limits.some(({ limit }) => limit?.value.dimension === own);
    return judged ? [] : [{ check: 'load', item: id, lacks: 'limit', whens }];
  });
}

/** What a guide of a visit adds to a limit that others load too, and does not state. */
function unstatedLoads({ visit }: Guide): readonly NotChecked[] {
  const nameOf = (id: string) => visit?.guides.find((one) => one.id === id)?.name ?? id;
  return (visit?.loads ?? []).flatMap(({ rating, silent }) =>
    silent.map(
      (id) => ({ check: 'load', item: rating, guide: nameOf(id), lacks: 'claim', whens: [] }) as const,
    ),
  );
}

/** Kinds that speak of the same thing in ways that cannot be turned into each other without more facts. */
function isNear(one: string, other: string): boolean {
  const pair = [one, other].sort().join(' ');
  return pair === 'force mass' || pair === 'current power';
}

function listOf(when: Written<When> | null): readonly When[] {
  return when ? [when.value] : [];
}
