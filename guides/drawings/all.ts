/** Every drawing of the demo guides, by the file that it is kept in below `guides/`. */
import { crashBar } from './crash-bar.ts';
import { fastenerPictures, toolPictures } from './crib.ts';
import { depthTransducer } from './depth-transducer.ts';
import { flushSensors } from './flush-sensors.ts';
import { lampCradle } from './lamp-cradle.ts';
import { crashBarParts, depthTransducerParts, flushSensorsParts, switchPanelParts } from './parts.ts';
import { platforms } from './platforms.ts';
import { procedures } from './procedures.ts';
import { roofVent } from './roof-vent.ts';
import { sideAwning } from './side-awning.ts';
import { switchPanel } from './switch-panel.ts';
import { swivelSeat } from './swivel-seat.ts';

const folders: readonly (readonly [string, Readonly<Record<string, string>>])[] = [
  ['pictures/tools', toolPictures],
  ['pictures/fasteners', fastenerPictures],
  ['platforms/pictures', platforms],
  ['procedures/pictures', procedures],
  ['roof-vent/pictures', roofVent],
  ['flush-sensors/pictures', flushSensors],
  ['flush-sensors/pictures/parts', flushSensorsParts],
  ['side-awning/pictures', sideAwning],
  ['swivel-seat/pictures', swivelSeat],
  ['switch-panel/pictures', switchPanel],
  ['switch-panel/pictures/parts', switchPanelParts],
  ['lamp-cradle/pictures', lampCradle],
  ['crash-bar/pictures', crashBar],
  ['crash-bar/pictures/parts', crashBarParts],
  ['depth-transducer/pictures', depthTransducer],
  ['depth-transducer/pictures/parts', depthTransducerParts],
];

export const drawings: ReadonlyMap<string, string> = new Map(
  folders.flatMap(([folder, drawn]) =>
    Object.entries(drawn).map(([name, svg]): [string, string] => [`${folder}/${name}.svg`, svg]),
  ),
);
