import { zonesOfThing } from '../../job/index.ts';
import { lowered } from '../../job/words/noun.ts';
import type { CutTemplate } from '../../model/cut-template.ts';
import type { Part } from '../../model/item.ts';
import type { GuideContext } from '../frame/context.ts';
import { shownWhen } from '../frame/plans.ts';
import { comesOff } from '../overview/comes-off.ts';
import { placeName } from '../overview/vehicle.ts';
import type { IntakePlace } from './bay-data.ts';

/**
 * What is looked over before the job: each part of the vehicle that it handles or cuts, in the order of declaration.
 * Where the platform has zones they stand zone by zone, as one walks round the vehicle, and say in which they lie.
 */
export function intakePlaces(context: GuideContext): readonly IntakePlace[] {
  const { guide } = context;
  const touched = new Set([...comesOff(context).map(({ item }) => item.id), ...panels(guide.templates)]);
  const parts = [...guide.items.values()].filter((item): item is Part => item.kind === 'part');
  const order = [...guide.zones.keys()];
  return parts
    .filter(({ id }) => touched.has(id))
    .map((part) => ({ part, zone: zonesOfThing(guide, part.id)[0] }))
    .toSorted((a, b) => rank(a.zone, order) - rank(b.zone, order))
    .map(({ part: { id, noun, when }, zone }) => ({
      id,
      name: zone === undefined ? noun.label : `${placeName(guide, zone)}: ${lowered(noun.label)}`,
      plans: shownWhen(context, when).plans,
    }));
}

/** What lies in no zone comes last. */
function rank(zone: string | undefined, order: readonly string[]): number {
  return zone === undefined ? order.length : order.indexOf(zone);
}

function panels(templates: ReadonlyMap<string, CutTemplate>): readonly string[] {
  return [...templates.values()].flatMap(({ panel }) => panel?.value ?? []);
}
