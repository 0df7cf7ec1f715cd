import type { Report } from '../diagnostics/report.ts';
import { finding } from '../diagnostics/rule-card.ts';
import type { Item } from '../model/item.ts';
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
): { readonly items: ReadonlyMap<string, Item>; readonly templates: DeclaredTemplate[] } {
  const things = nameSpace(report);
  const items = new Map<string, Item>();
  for (const item of draft.items) {
    const earlier = items.get(item.id);
    if (earlier && sameThing(earlier, item)) continue;
    if (things.claim(item.id, item.idAt)) items.set(item.id, item);
  }
  const templates = draft.templates.filter(({ template, idAt }) => things.claim(template.id, idAt));
  for (const { template } of templates) {
    for (const { id, at } of [...template.holes, ...template.slots, ...template.patterns]) {
      if (id !== null) things.claim(id, at);
    }
  }
  claimPlaces(draft, report);
  return { items: new Map([...items].map(([id, item]) => [id, asFastener(item, items)])), templates };
}

/** What comes in the box and takes the place of a fastener is one, whatever else is said of it. */
function asFastener(item: Item, items: ReadonlyMap<string, Item>): Item {
  if (item.kind !== 'kit' || !item.replaces) return item;
  const old = items.get(item.replaces.value);
  return old?.kind === 'fastener' ? { ...item, isFastener: true } : item;
}

/** A crib tool, or a part that the platform declares, may be named by a guide and by a procedure that it places. */
function sameThing(a: Item, b: Item): boolean {
  if (a.kind !== b.kind || a.origins.length + b.origins.length === 0) return false;
  if (a.kind === 'tool' || a.kind === 'wear') return a.noun.label === b.noun.label;
  return a.kind === 'part' && b.kind === 'part' && a.fromPlatform && b.fromPlatform;
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
