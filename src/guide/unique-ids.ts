import type { Report } from '../diagnostics/report.ts';
import { finding } from '../diagnostics/rule-card.ts';
import { whenKey } from '../job/builds/when.ts';
import type { Ref } from '../model/inline.ts';
import type { Item } from '../model/item.ts';
import type { Sequence } from '../model/sequence.ts';
import type { Zone } from '../model/zone.ts';
import type { Span } from '../source/span.ts';
import type { DeclaredTemplate, Draft } from './draft.ts';
import { isStep } from './draft.ts';
import { idDoubled } from './rules/id-doubled.ts';

/**
 * The items and templates of a guide by id. Items, templates and their holes share one name space, sections,
 * steps and placed procedures another; an id that is given twice is told with both places, and the first counts.
 */
export function uniqueIds(
  draft: Draft,
  report: Report,
): {
  readonly items: ReadonlyMap<string, Item>;
  readonly templates: DeclaredTemplate[];
  readonly sequences: readonly Sequence[];
  readonly zones: ReadonlyMap<string, Zone>;
} {
  const things = nameSpace(report);
  const items = new Map<string, Item>();
  for (const item of draft.items) {
    const earlier = items.get(item.id);
    if (earlier && sameThing(earlier, item)) items.set(item.id, joined(earlier, item));
    else if (things.claim(item.id, item.idAt)) items.set(item.id, item);
  }
  // Two placements of one procedure bring its templates once.
  const drawn = draft.templates.filter(
    ({ template, idAt }, index) =>
      draft.templates.findIndex((one) => one.template.id === template.id && isSamePlace(one.idAt, idAt)) ===
      index,
  );
  const templates = drawn.filter(({ template, idAt }) => things.claim(template.id, idAt));
  for (const { template } of templates) {
    for (const { id, at } of [...template.holes, ...template.slots, ...template.patterns]) {
      if (id !== null) things.claim(id, at);
    }
  }
  const sequences = draft.sequences.filter(({ id, idAt }) => things.claim(id, idAt));
  const areas = nameSpace(report);
  const zones = draft.zones.filter(({ id, idAt }) => areas.claim(id, idAt));
  claimPlaces(draft, report);
  return {
    items: new Map([...items].map(([id, item]) => [id, asFastener(item, items)])),
    templates,
    sequences,
    zones: new Map(zones.map((zone) => [zone.id, zone])),
  };
}

/** What comes in the box and takes the place of a fastener is one, whatever else is said of it. */
function asFastener(item: Item, items: ReadonlyMap<string, Item>): Item {
  if (item.kind !== 'kit' || !item.replaces) return item;
  const old = items.get(item.replaces.value);
  return old?.kind === 'fastener' ? { ...item, isFastener: true } : item;
}

/**
 * A crib tool, or a part or state that the platform declares, may be named by a guide and by a procedure that it places;
 * two placements of one procedure share what it declares.
 */
function sameThing(a: Item, b: Item): boolean {
  if (a.kind !== b.kind || a.origins.length + b.origins.length === 0) return false;
  if (isSamePlace(a.idAt, b.idAt)) return true;
  if (a.kind === 'tool' || a.kind === 'wear') return a.noun.label === b.noun.label;
  return 'fromPlatform' in a && a.fromPlatform && 'fromPlatform' in b && b.fromPlatform;
}

function isSamePlace(a: Span, b: Span): boolean {
  return a.file === b.file && a.start === b.start;
}

/** One thing with all that is said of it in two places: it is there where either is. */
function joined(a: Item, b: Item): Item {
  const also = (some: readonly Ref[], more: readonly Ref[]) => [
    ...some,
    ...more.filter(({ value }) => !some.some((one) => one.value === value)),
  ];
  const when =
    a.when && b.when && whenKey(a.when.value) !== whenKey(b.when.value)
      ? { value: { kind: 'or' as const, of: [a.when.value, b.when.value], at: a.when.at }, at: a.when.at }
      : a.when && b.when;
  return {
    ...a,
    when,
    needs: also(a.needs, b.needs),
    work: a.work ?? b.work,
    immobile: a.immobile || b.immobile,
    zones: also(a.zones, b.zones),
    picture: a.picture ?? b.picture,
    ...('covers' in a && 'covers' in b ? { covers: also(a.covers, b.covers) } : {}),
  };
}

function claimPlaces(draft: Draft, report: Report): void {
  const places = nameSpace(report);
  for (const section of draft.sections) {
    if (section.id !== '') places.claim(section.id, section.idAt);
    for (const entry of section.entries) {
      if (isStep(entry)) places.claim(entry.id, entry.idAt);
      else if (entry.type === 'procedure' && entry.id) places.claim(entry.id.value, entry.id.at);
    }
  }
}

function nameSpace(report: Report) {
  const taken = new Map<string, Span>();
  return {
    /** Takes an id; `false`, and a finding, where it is taken. */
    claim(id: string, at: Span): boolean {
      const first = taken.get(id);
      if (!first) {
        taken.set(id, at);
        return true;
      }
      const notes = [{ message: 'first given here', at: first }];
      report(finding(idDoubled, at, `the id "${id}" is given twice`, { notes }));
      return false;
    },
  };
}
