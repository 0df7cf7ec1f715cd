/** The right-hand seat of the Dray in its doorway, with seat box, dash and the other seat; millimetres of the van. */
import { type Camera, camera } from './camera.ts';
import { door, face, scenery, van } from './dray.ts';
import { GREY, SHADE, TINT, window } from './pen.ts';

const WHITE = '#fff';
const INSIDE = '#e4e8e6';

/** Points along the van and up, in order round a side that bulges everywhere. */
type Profile = readonly (readonly [number, number])[];

/** A body with the same side from `far` to `near`: of its faces those that are seen, its side last. */
export function extrude(
  v: Camera,
  profile: Profile,
  far: number,
  near: number,
  fill = WHITE,
  end = fill,
): string {
  const middle = profile.reduce(
    ([ax, az], [x, z]) => [ax + x / profile.length, az + z / profile.length],
    [0, 0],
  );
  const faces = profile.map(([x1, z1], i) => {
    const [x2, z2] = profile[(i + 1) % profile.length] ?? [x1, z1];
    const [nx, nz] = [z2 - z1, x1 - x2];
    const out =
      nx * ((x1 + x2) / 2 - (middle[0] ?? 0)) + nz * ((z1 + z2) / 2 - (middle[1] ?? 0)) > 0 ? 1 : -1;
    const size = Math.hypot(nx, nz) * out;
    return v.sees(nx / size, 0, nz / size)
      ? face(v, `M${x1} ${far} ${z1}L${x2} ${far} ${z2}L${x2} ${near} ${z2}L${x1} ${near} ${z1}Z`, fill)
      : '';
  });
  return faces.join('') + face(v, `M${profile.map(([x, z]) => `${x} ${near} ${z}`).join('L')}Z`, end);
}

const CUSHION: Profile = [
  [1540, 880],
  [1530, 950],
  [1570, 990],
  [2060, 960],
  [2090, 900],
  [2070, 860],
];
const BACK: Profile = [
  [1990, 970],
  [2120, 930],
  [2250, 1560],
  [2220, 1620],
  [2150, 1600],
];
const HEAD: Profile = [
  [2160, 1650],
  [2240, 1630],
  [2270, 1780],
  [2200, 1800],
];
const RAIL: Profile = [
  [1560, 800],
  [1560, 845],
  [2150, 845],
  [2150, 800],
];

/** How far the seat is tipped back about its rear edge, in degrees, lifted, and moved out of the door, in millimetres. */
interface SeatAt {
  readonly tipped?: number;
  readonly up?: number;
  readonly out?: number;
  readonly fill?: string;
}

/** A point of the seat where it is tipped and lifted. */
export function onSeat(x: number, z: number, { tipped = 0, up = 0 }: SeatAt): readonly [number, number] {
  const [dx, dz, angle] = [x - 2150, z - 810, (tipped * Math.PI) / 180];
  return [
    Math.round(2150 + dx * Math.cos(angle) + dz * Math.sin(angle)),
    Math.round(810 + up - dx * Math.sin(angle) + dz * Math.cos(angle)),
  ];
}

export function seat(v: Camera, at: SeatAt = {}): string {
  const { out = 0, fill = WHITE } = at;
  const set = (profile: Profile): Profile => profile.map(([x, z]) => onSeat(x, z, at));
  const [near, far] = [820 + out, 340 + out];
  return (
    extrude(v, set(RAIL), far + 70, far + 110, SHADE) +
    extrude(v, set(RAIL), near - 110, near - 70, SHADE) +
    extrude(v, set(HEAD), far + 130, near - 130, fill) +
    extrude(v, set(BACK), far, near, fill) +
    extrude(v, set(CUSHION), far, near, fill)
  );
}

/** The pressed steel box that carries the seat, with an opening in its side. */
export const seatBox = (v: Camera, fill = GREY): string =>
  extrude(
    v,
    [
      [1620, 440],
      [1650, 800],
      [2130, 800],
      [2150, 440],
    ],
    390,
    780,
    fill,
  );

const DASH: Profile = [
  [1180, 780],
  [1200, 1090],
  [1300, 1120],
  [1420, 1060],
  [1400, 860],
  [1330, 780],
];

const floor = 'M1150 -900 440L1150 960 440L2700 960 440L2700 -900 440Z';

/** What is in the cab besides the seat: floor, dash with its glovebox, the other seat. */
export const cab = (v: Camera): string =>
  face(v, floor, WHITE) +
  extrude(
    v,
    [
      [1600, 440],
      [1640, 800],
      [2130, 800],
      [2150, 440],
    ],
    -800,
    -400,
    INSIDE,
  ) +
  extrude(v, HEAD, -690, -470, INSIDE) +
  extrude(v, BACK, -820, -340, INSIDE) +
  extrude(v, CUSHION, -820, -340, INSIDE) +
  extrude(v, DASH, -880, 880, INSIDE, SHADE) +
  face(v, 'M1404 300 1010L1404 760 1010L1404 760 890L1404 300 890Z', 'none');

/** Looking in at the right-hand door, which is left out: a point of the cab stands in the box. */
export const doorway = (
  scale: number,
  point: readonly [number, number],
  stands: readonly [number, number],
): Camera => camera({ round: 62, above: 14, scale, point: [point[0], 780, point[1]], stands, right: true });

/** The van, and through its doorway the cab with what is drawn in it. */
export const inDoorway = (v: Camera, content: string): string =>
  van(v, { slides: true, open: true }) +
  window('doorway', v.flat(door), scenery(`<path d="${v.flat(door)}" fill="${INSIDE}"/>`, cab(v), content)) +
  `<path d="${v.flat(door)}" fill="none" stroke="#1b1f22" stroke-width="3" stroke-linejoin="round"/>`;

/** Looking down into the cab from the right, roof and door left out. */
export const intoCab = (scale: number, stands: readonly [number, number]): Camera =>
  camera({ round: 58, above: 40, scale, point: [1890, 590, 800], stands, right: true });

/** What stands round the seat box, looked at from above: the sill with the pillar behind the door, dash, other seat. */
export const roundSeatBox = (v: Camera): string =>
  cab(v) +
  extrude(
    v,
    [
      [1200, 380],
      [1200, 470],
      [2360, 470],
      [2360, 380],
    ],
    900,
    980,
    WHITE,
  ) +
  extrude(
    v,
    [
      [2350, 380],
      [2350, 1250],
      [2450, 1250],
      [2450, 380],
    ],
    880,
    980,
    WHITE,
  );

/** The adapter on the seat box: plate, turntable, opening in the middle, handle to the door. */
export const adapter = (v: Camera): string =>
  extrude(
    v,
    [
      [1630, 802],
      [1630, 836],
      [2130, 836],
      [2130, 802],
    ],
    370,
    800,
    TINT,
  );
