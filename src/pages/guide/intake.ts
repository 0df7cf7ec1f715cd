import type { CutTemplate } from '../../model/cut-template.ts';
import type { Part } from '../../model/item.ts';
import type { GuideContext } from '../frame/context.ts';
import { shownWhen } from '../frame/plans.ts';
import { comesOffRows } from '../overview/comes-off.ts';
import type { IntakePlace } from './bay-data.ts';

/** What is looked over before the job: each part of the vehicle that it handles or cuts, in the order of declaration. */
export function intakePlaces(context: GuideContext): readonly IntakePlace[] {
  const { items, templates } = context.guide;
  const touched = new Set([...comesOffRows(context).map(({ item }) => item), ...panels(templates)]);
  const parts = [...items.values()].filter((item): item is Part => item.kind === 'part');
  return parts
    .filter(({ id }) => touched.has(id))
    .map(({ id, noun, when }) => ({ id, name: noun.label, plans: shownWhen(context, when).plans }));
}

function panels(templates: ReadonlyMap<string, CutTemplate>): readonly string[] {
  return [...templates.values()].flatMap(({ panel }) => panel?.value ?? []);
}
