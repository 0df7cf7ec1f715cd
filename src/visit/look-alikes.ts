import type { Report } from '../diagnostics/report.ts';
import { finding } from '../diagnostics/rule-card.ts';
import type { Guide } from '../model/guide.ts';
import type { Connector, Fastener, Item, Part } from '../model/item.ts';
import { writtenDrive } from '../trade/drives.ts';
import { visitLookAlike } from './rules.ts';

/** A thing of the vehicle. */
type OfVehicle = Part | Fastener | Connector;

/**
 * Asks about what two guides declare each for itself, and that seems to be one thing of the vehicle: of the same kind,
 * label and drive, on the same side.
 */
export function reportLookAlikes(guides: readonly Guide[], report: Report): void {
  const seen = new Map<string, { readonly guide: Guide; readonly item: OfVehicle }>();
  for (const guide of guides) {
    for (const item of guide.items.values()) {
      if (!isOfVehicle(item) || item.at.file !== guide.file) continue;
      if ('fromPlatform' in item && item.fromPlatform) continue;
      if (item.kind === 'connector' && isOfBox(item, guide)) continue;
      const key = looks(item);
      const earlier = seen.get(key);
      if (!earlier) seen.set(key, { guide, item });
      else if (earlier.guide !== guide) {
        const message = `“${item.noun.label}” seems to be one thing with what “${earlier.guide.title.value}” calls so; ${mends[item.kind]}, or tell the two apart in their labels`;
        report(
          finding(visitLookAlike, item.at, message, {
            notes: [{ message: 'declared here too', at: earlier.item.at }],
          }),
        );
      }
    }
  }
}

const mends: { readonly [K in OfVehicle['kind']]: string } = {
  part: 'if it is, declare it on the platform',
  fastener: 'if it is, let both guides place one procedure that handles it',
  connector: 'if it is, let both guides place one procedure that handles it',
};

/** Whether a connector comes with what is in the box. */
function isOfBox({ on }: Connector, { items }: Guide): boolean {
  return on.some(({ value }) => items.get(value)?.kind === 'kit');
}

function isOfVehicle(item: Item): item is OfVehicle {
  return item.kind === 'part' || item.kind === 'fastener' || item.kind === 'connector';
}

function looks(item: OfVehicle): string {
  const drive = item.kind === 'fastener' && item.drive ? writtenDrive(item.drive.value) : '';
  return [item.kind, item.noun.label.toLowerCase(), drive, item.side?.value ?? ''].join('\n');
}
