import type { CutHole, CutPattern, CutSlot, CutTemplate } from '../../model/cut-template.ts';
import type { Guide } from '../../model/guide.ts';
import type { Item } from '../../model/item.ts';
import type { When } from '../../model/when.ts';
import type { Written } from '../../source/span.ts';
import { placeOfTemplate } from '../builds/template-place.ts';

/** A hole, slot or row of holes of a template that an action can name. */
export type Feature = CutHole | CutSlot | CutPattern;

/** What the target of an action turns out to be. */
export type Target =
  | { readonly kind: 'item'; readonly item: Item }
  | { readonly kind: 'template'; readonly template: CutTemplate }
  | { readonly kind: 'hole'; readonly template: CutTemplate; readonly feature: Feature };

/** Every hole, slot and row of holes of a template. */
export function featuresOf(template: CutTemplate): readonly Feature[] {
  return [...template.holes, ...template.slots, ...template.patterns];
}

/** The item, template or hole with an id; `null` where the guide has none. */
export function findTarget(guide: Pick<Guide, 'items' | 'templates'>, id: string): Target | null {
  const item = guide.items.get(id);
  if (item) return { kind: 'item', item };
  const template = guide.templates.get(id);
  if (template) return { kind: 'template', template };
  for (const owner of guide.templates.values()) {
    const feature = featuresOf(owner).find((one) => one.id === id);
    if (feature) return { kind: 'hole', template: owner, feature };
  }
  return null;
}

/** The conditions under which a target is there: its own, and those of the place of its template. */
export function whensOfTarget(guide: Guide, target: Target): readonly Written<When>[] {
  if (target.kind === 'item') return target.item.when ? [target.item.when] : [];
  const own = target.kind === 'hole' && target.feature.when ? [target.feature.when] : [];
  const { at } = target.template;
  return [...placeOfTemplate(guide, target.template.id).map((value) => ({ value, at })), ...own];
}

/** How many holes a feature makes, on one side. */
export function holesOf(feature: Feature): number {
  return 'count' in feature ? feature.count : 1;
}
