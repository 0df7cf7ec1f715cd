import type { Report } from '../diagnostics/report.ts';
import { finding } from '../diagnostics/rule-card.ts';
import { nearest } from '../diagnostics/suggest.ts';
import { misplaced } from '../directives/rules/directive-misplaced.ts';
import type { Guide, Step } from '../model/guide.ts';
import type { Ref } from '../model/inline.ts';
import type { Item } from '../model/item.ts';
import type { Zone } from '../model/zone.ts';
import type { Draft } from './draft.ts';
import { zoneUnknown } from './rules/zone-unknown.ts';

/** Tells of zones that stand where only a platform's are read. */
export function reportStrayZones({ zones }: Draft, report: Report): void {
  for (const { at } of zones) {
    const message = 'a zone is a part of the platform’s drawing; declare it in the file of the platform';
    report(finding(misplaced, at, message));
  }
}

/** The zones that a guide's own file and its procedures name and the platform lacks; each place is told once. */
export function reportUnknownZones(
  { items, sections }: Pick<Guide, 'items' | 'sections'>,
  { file, zones }: { readonly file: string; readonly zones: ReadonlyMap<string, Zone> },
  report: Report,
): void {
  const steps = sections.flatMap((section) => section.steps);
  // A derived step says again what its source says; what stands on the platform is told there.
  const told = new Set<string>();
  for (const ref of [...items.values(), ...steps].flatMap(named)) {
    const place = `${ref.at.file} ${ref.at.start}`;
    if (ref.at.file === file || told.has(place)) continue;
    told.add(place);
    reportUnknownZone(ref, zones, report);
  }
}

/** Tells of a name that no zone of the platform has. */
export function reportUnknownZone(ref: Ref, zones: ReadonlyMap<string, Zone>, report: Report): void {
  if (zones.has(ref.value)) return;
  const likely = nearest(ref.value, zones.keys())[0];
  const message =
    zones.size === 0
      ? `the platform has no zones, so that there is no zone "${ref.value}"; declare it there, as in ::zone[Front end]{#front at="0%,45%,24%,90%"}`
      : `the platform has no zone "${ref.value}"`;
  report(finding(zoneUnknown, ref.at, message, likely ? { suggestion: { at: ref.at, text: likely } } : {}));
}

function named({ zones }: Item | Step): readonly Ref[] {
  return zones === 'off' ? [] : zones;
}
