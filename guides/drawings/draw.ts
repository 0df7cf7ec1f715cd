/**
 * Writes the drawings of the demo guides beside the guides that use them.
 * Run from anywhere: `npx tsx guides/drawings/draw.ts`. The drawings are kept in git, so the build needs no drawing.
 */
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { crashBar } from './crash-bar.ts';
import { fastenerPictures, toolPictures } from './crib.ts';
import { depthTransducer } from './depth-transducer.ts';
import { flushSensors } from './flush-sensors.ts';
import { lampCradle } from './lamp-cradle.ts';
import { platforms } from './platforms.ts';
import { procedures } from './procedures.ts';
import { roofVent } from './roof-vent.ts';
import { sideAwning } from './side-awning.ts';
import { switchPanel } from './switch-panel.ts';
import { swivelSeat } from './swivel-seat.ts';

const workspace = join(import.meta.dirname, '..');

const folders: readonly (readonly [string, Readonly<Record<string, string>>])[] = [
  ['pictures/tools', toolPictures],
  ['pictures/fasteners', fastenerPictures],
  ['platforms/pictures', platforms],
  ['procedures/pictures', procedures],
  ['roof-vent/pictures', roofVent],
  ['flush-sensors/pictures', flushSensors],
  ['side-awning/pictures', sideAwning],
  ['swivel-seat/pictures', swivelSeat],
  ['switch-panel/pictures', switchPanel],
  ['lamp-cradle/pictures', lampCradle],
  ['crash-bar/pictures', crashBar],
  ['depth-transducer/pictures', depthTransducer],
];

for (const [folder, drawings] of folders) {
  const target = join(workspace, folder);
  mkdirSync(target, { recursive: true });
  for (const [name, svg] of Object.entries(drawings)) writeFileSync(join(target, `${name}.svg`), svg);
}
