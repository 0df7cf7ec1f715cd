/** What stands behind the bumper cover of the Dray, and what our parts add there; millimetres of the van. */
import { type Camera, camera, hoop } from './camera.ts';
import { coverOf, face } from './dray.ts';
import { GREY, SHADE, TINT } from './pen.ts';

const WHITE = '#fff';
/** What lies in the dark behind the cover and under the bonnet. */
export const DARK = '#a9b1af';

/** The quarter view of the Dray's left front, of which closer pictures are crops. */
export const quarter = (scale: number, x: number, y: number, right = false): Camera =>
  camera({ round: 38, above: 16, scale, point: [0, 0, 600], stands: [x, y], right });

/** The front view of the Dray, of which closer pictures are crops. */
export const frontView = (scale: number, z: number, y = 200): Camera =>
  camera({ round: 0, above: 8, scale, point: [0, 0, z], stands: [320, y] });

/** A box by its front face (x), from y to y and z to z, and how deep it is: front, top and the side that is seen. */
function block(
  v: Camera,
  x: number,
  [y1, y2]: readonly [number, number],
  [z1, z2]: readonly [number, number],
  deep: number,
  fill: string,
): string {
  const side = v.sees(0.1, 1, 0)
    ? face(v, `M${x} ${y2} ${z1}L${x} ${y2} ${z2}L${x + deep} ${y2} ${z2}L${x + deep} ${y2} ${z1}Z`, SHADE)
    : '';
  return (
    face(v, `M${x} ${y1} ${z2}L${x} ${y2} ${z2}L${x + deep} ${y2} ${z2}L${x + deep} ${y1} ${z2}Z`, WHITE) +
    side +
    face(v, `M${x} ${y1} ${z1}L${x} ${y2} ${z1}L${x} ${y2} ${z2}L${x} ${y1} ${z2}Z`, fill)
  );
}

/** Where the four studs of the beam stand: y and z. */
export const studs = [
  [-150, 575],
  [150, 575],
  [-150, 505],
  [150, 505],
] as const;

const stripes = (x: number, y: number, z: readonly [number, number], gap: number): string =>
  Array.from(
    { length: Math.floor((2 * y) / gap) + 1 },
    (_, i) => `M${x} ${-y + i * gap} ${z[0]}L${x} ${-y + i * gap} ${z[1]}`,
  ).join('');

/** The front end without its cover: radiator, beam with its studs and grey caps, side guides. */
export const bareEnd = (v: Camera): string =>
  face(v, coverOf(v), DARK) +
  face(v, 'M320 -430 360L320 430 360L320 430 1010L320 -430 1010Z', GREY) +
  face(v, stripes(320, 430, [360, 1010], 61), 'none') +
  [-1, 1].map((s) => block(v, 330, s < 0 ? [-950, -880] : [880, 950], [560, 730], 60, SHADE)).join('') +
  beam(v);

export const beam = (v: Camera): string =>
  block(v, 160, [-800, 800], [470, 610], 90, WHITE) +
  block(v, 150, [-880, -800], [465, 615], 110, '#7d8684') +
  block(v, 150, [800, 880], [465, 615], 110, '#7d8684') +
  studs.map(([y, z]) => face(v, hoop(150, y, z, 15, 'front'), SHADE)).join('');

/** The grille shutter in front of radiator and beam: frame, five blades, motor; `fill` is the frame's. */
export const shutter = (v: Camera, fill = TINT): string =>
  face(v, 'M110 -430 390L110 430 390L110 430 1000L110 -430 1000Z', fill) +
  face(v, 'M109 -360 446L109 340 446L109 340 944L109 -360 944Z', SHADE) +
  [0, 1, 2, 3, 4]
    .map((i) => {
      const z = 452 + i * 98;
      return (
        face(v, `M108 -360 ${z}L108 340 ${z}L108 340 ${z + 84}L108 -360 ${z + 84}Z`, WHITE) +
        face(v, `M108 -360 ${z + 34}L108 340 ${z + 34}`, 'none')
      );
    })
    .join('') +
  block(v, 90, [350, 425], [600, 790], 30, GREY);

/** Where the shutter's bolts stand: y and z. */
export const shutterBolts = [
  [-396, 965],
  [385, 965],
  [-396, 422],
  [385, 422],
] as const;

/** Two lamps in their cradle: two arms on the studs, a plate below; `dx` and `dz` move it off. */
export const cradle = (v: Camera, dx = 0, dz = 0): string => {
  const arms = [-1, 1].map((s) =>
    block(v, 140 - dx, s < 0 ? [-190, -110] : [110, 190], [330 + dz, 605 + dz], 20, TINT),
  );
  return (
    arms.join('') +
    block(v, 140 - dx, [-190, 190], [300 + dz, 350 + dz], 60, TINT) +
    [-72, 72]
      .map(
        (y) =>
          face(v, hoop(130 - dx, y, 412 + dz, 66, 'front'), WHITE) +
          face(v, hoop(126 - dx, y, 412 + dz, 52, 'front'), GREY) +
          face(v, hoop(124 - dx, y, 412 + dz, 18, 'front'), WHITE),
      )
      .join('')
  );
};

/** A flange nut on a stud, or before it by some millimetres. */
export const cradleNut = (v: Camera, y: number, z: number, off = 0): string =>
  face(v, hoop(120 - off, y, z, 24, 'front'), TINT) +
  face(v, hexagon(118 - off, y, z, 17), WHITE) +
  face(v, hoop(118 - off, y, z, 8, 'front'), SHADE);

/** A flange bolt's head, looked at from the front. */
export const frontBolt = (v: Camera, x: number, y: number, z: number, r = 22): string =>
  face(v, hoop(x, y, z, r, 'front'), TINT) + face(v, hexagon(x, y, z, r * 0.7), WHITE);

const hexagon = (x: number, y: number, z: number, r: number): string => {
  const corner = (i: number): string => {
    const angle = ((i * 60 + 15) * Math.PI) / 180;
    return `${x} ${Math.round(y + r * Math.cos(angle))} ${Math.round(z + r * Math.sin(angle))}`;
  };
  return `M${[0, 1, 2, 3, 4, 5].map(corner).join('L')}Z`;
};
