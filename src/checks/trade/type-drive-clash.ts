import { finding, type RuleCard } from '../../diagnostics/rule-card.ts';
import { formatDrive, writtenDrive } from '../../trade/drives.ts';
import type { Rule } from '../rule.ts';

const body = (screw: string): string => `${screw}

::step[Feel the screw]{#feel}

See that the :fastener[liner-screw] sits flat.`;

const types = 'panel-screw:\n  name: Panel screw\n  drive: T25\n';

const card: RuleCard = {
  code: 'type-drive-clash',
  severity: 'error',
  title: 'A fastener has another drive than its type',
  why: 'The list of fastener types says what turns them, and so does the guide. When the two differ, one of them sends the technician for the wrong tool.',
  bad: {
    'fasteners.yaml': types,
    'example/guide.md': body('::fastener[Liner screw]{#liner-screw type=panel-screw drive=T20}'),
  },
  good: {
    'fasteners.yaml': types,
    'example/guide.md': body('::fastener[Liner screw]{#liner-screw type=panel-screw}'),
  },
};

/** Where a fastener and its type both state a drive, they agree. */
export const typeDriveClash: Rule = {
  card,
  run: ({ guide, shop }, report) => {
    for (const item of guide.items.values()) {
      if (item.kind !== 'fastener' || !item.type || !item.drive) continue;
      const type = shop.fastenerTypes.get(item.type.value);
      if (!type?.drive || writtenDrive(type.drive.value) === writtenDrive(item.drive.value)) continue;
      const message = `the ${item.noun.singular} has ${formatDrive(item.drive.value)} here, but its type, ${type.noun.singular}, has ${formatDrive(type.drive.value)}; take the drive out here, or name another type`;
      const notes = [{ message: 'the type states its drive here', at: type.drive.at }];
      report(finding(card, item.drive.at, message, { notes }));
    }
  },
};
