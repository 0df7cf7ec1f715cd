/** The drawings of the swivel seat guide. Marks in `guide.md` are fractions of these 640 × 400 boxes. */
import { type Camera, hoop } from './camera.ts';
import { face, scenery } from './dray.ts';
import {
  adapter,
  doorway,
  extrude,
  inDoorway,
  intoCab,
  onSeat,
  roundSeatBox,
  seat,
  seatBox,
} from './dray-cab.ts';
import { boltSide, clipHead, crossHead, lobeHead, plug, ratchet, smallPlug } from './hardware.ts';
import {
  arrow,
  box,
  cable,
  circle,
  pane,
  path,
  place,
  SHADE,
  sheet,
  TINT,
  turnArrow,
  way,
  window,
} from './pen.ts';

const spot = (v: Camera, draw: (x: number, y: number) => string, x: number, y: number, z: number): string => {
  const [px, py] = v.at(x, y, z);
  return draw(px, py);
};

/** The skirt round the front and the near side of the seat box. */
const skirtOf = (v: Camera): string =>
  extrude(
    v,
    [
      [1590, 450],
      [1620, 770],
      [2140, 770],
      [2160, 450],
    ],
    360,
    810,
    TINT,
  ) + face(v, 'M1660 812 510L1680 812 720L2090 812 720L2100 812 510Z', 'none');

function skirt(): string {
  const v = intoCab(0.42, [330, 150]);
  return sheet(
    scenery(roundSeatBox(v), seatBox(v), skirtOf(v), seat(v)),
    [430, 585, 740].map((y) => spot(v, (x, py) => clipHead(x, py, 8), 1616, y, 735)).join(''),
    [395, 775].map((y) => spot(v, (x, py) => crossHead(x, py, 10), 1594, y, 500)).join(''),
    way(({ arrow: motion }) => {
      const [ax, ay] = v.at(1580, 585, 580);
      const [bx, by] = v.at(1400, 585, 580);
      return motion(ax, ay, bx, by, 16);
    }),
  );
}

const BOLTS = [
  [1590, 430],
  [1590, 730],
  [2110, 430],
  [2110, 730],
] as const;

function seatBolts(): string {
  const v = intoCab(0.42, [330, 200]);
  const rail = (y: number): string =>
    extrude(
      v,
      [
        [1550, 802],
        [1550, 830],
        [2160, 830],
        [2160, 802],
      ],
      y - 36,
      y + 36,
      SHADE,
    ) + face(v, `M1630 ${y} 831L2070 ${y} 831`, 'none');
  const [sx, sy] = v.at(1590, 730, 832);
  const ghost = v.flat(
    'M1540 340 900L1540 820 900L2090 820 900L2090 340 900ZM2000 340 980L2000 820 980L2180 820 1400L2180 340 1400Z',
  );
  return sheet(
    scenery(roundSeatBox(v), seatBox(v), rail(430), rail(730)),
    path(ghost, 'hidden'),
    BOLTS.map(([x, y]) => spot(v, (px, py) => lobeHead(px, py, 12), x, y, 832)).join(''),
    place(sx + 86, sy + 76, ratchet(0, 0)),
    path(`M${sx + 80} ${sy + 76}h12v28l-6 8l-6 -8Z`, 'item'),
    path(`M${sx + 4} ${sy + 12}L${sx + 78} ${sy + 108}`, 'hidden'),
    way(({ turn }) => turn(sx, sy, 28, 330, 190)),
  );
}

/** A plug on its loom out of the seat box, and its other half at the seat. */
function plugPair(v: Camera, x: number, tipped: number, down: number): string {
  const [x1, y1] = v.at(x, 600, 800);
  const [sx, sz] = onSeat(x, 850, { tipped });
  const [x2, y2] = v.at(sx, 600, sz);
  return (
    cable(`M${x1} ${y1}C${x1 - 6} ${y1 - 20} ${x1 + 8} ${y1 - 30} ${x1} ${y1 - 40}`) +
    place(x1, y1 - 42, smallPlug(0, 0, -90)) +
    cable(`M${x2} ${y2}C${x2} ${y2 + 14} ${x2 + 4} ${y2 + 16} ${x2 + 2} ${y2 + down}`)
  );
}

function tipped(): string {
  const v = doorway(0.42, [1850, 860], [330, 220]);
  const at = { tipped: 34 };
  const [tx, tz] = onSeat(1540, 900, at);
  const [ax, ay] = v.at(tx, 700, tz);
  return sheet(
    inDoorway(v, seatBox(v) + seat(v, at) + plugPair(v, 1700, 34, 24) + plugPair(v, 1880, 34, 16)),
    arrow(ax + 44, ay + 60, ax + 30, ay + 4, 16),
    window(
      'close',
      pane(0, 270, 190, 130),
      `<rect y="270" width="190" height="130" fill="#fff"/>${place(150, 350, plug(1.2))}`,
    ),
    box(0, 270, 190, 130, 'bold'),
    arrow(118, 316, 118, 284, 10),
  );
}

function heater(): string {
  const v = doorway(0.62, [1960, 920], [330, 210]);
  const at = { tipped: 34 };
  const [ux, uz] = onSeat(1960, 846, at);
  const [px, py] = v.at(ux, 825, uz);
  const tube = (x: number): string => {
    const [tx, tz] = onSeat(x, 838, at);
    return face(v, hoop(tx, 822, tz, 22, 'side'), SHADE);
  };
  return sheet(
    inDoorway(v, seatBox(v) + seat(v, at) + tube(1640) + tube(2060)),
    place(px - 10, py + 16, place(0, 0, plug(1.1)), 212),
    box(px - 14, py - 2, 30, 26, 'part', 4),
    way(({ arrow: motion }) => motion(px + 30, py + 70, px + 92, py + 106, 16)),
  );
}

function seatOut(): string {
  const v = doorway(0.25, [1900, 1000], [330, 222]);
  const out = { up: 260, out: 760, fill: TINT };
  const [ux, uy] = v.at(1800, 590, 1060);
  const [ox, oy] = v.at(1420, 1300, 1100);
  return sheet(
    inDoorway(v, seatBox(v) + arrow(ux, uy + 20, ux, uy - 40, 14)),
    scenery(seat(v, out)),
    arrow(ox + 20, oy + 6, ox - 20, oy + 62, 16),
  );
}

const disc = (v: Camera, r: number, fill: string): string => face(v, hoop(1880, 585, 838, r, 'floor'), fill);

const plate = (v: Camera): string =>
  adapter(v) +
  disc(v, 190, '#fff') +
  disc(v, 160, 'none') +
  face(
    v,
    'M1640 800 800L1640 800 830L1690 800 830L1690 960 830L1740 960 830L1740 960 800L1640 960 800Z',
    '#fff',
  );

function adapterOn(): string {
  const v = intoCab(0.5, [330, 220]);
  return sheet(
    scenery(roundSeatBox(v), seatBox(v), plate(v), disc(v, 60, SHADE)),
    (
      [
        [1670, 410],
        [1670, 760],
        [2090, 410],
        [2090, 760],
      ] as const
    )
      .map(([x, y]) => spot(v, (px, py) => lobeHead(px, py, 12), x, y, 838))
      .join(''),
    spot(v, (x, y) => spot(v, (x2, y2) => arrow(x, y, x2, y2, 12), 1670, 585, 838), 1770, 585, 838),
  );
}

function loop(): string {
  const v = intoCab(0.5, [330, 250]);
  const [x, y] = v.at(1880, 585, 838);
  return sheet(
    scenery(roundSeatBox(v), seatBox(v), plate(v), disc(v, 74, TINT), disc(v, 50, SHADE)),
    cable(
      `M${x} ${y + 6}C${x - 4} ${y - 60} ${x - 70} ${y - 70} ${x - 60} ${y - 130}C${x - 50} ${y - 180} ${x + 60} ${y - 180} ${x + 60} ${y - 120}C${x + 60} ${y - 80} ${x + 100} ${y - 90} ${x + 130} ${y - 130}`,
    ),
    path(`M${x - 25} ${y + 4}A26 17 0 0 0 ${x + 25} ${y + 4}`, 'bold'),
    turnArrow(x, y + 6, 110, 160, 40),
  );
}

/** The seat on the adapter: tipped back for its plugs, or down. */
function onAdapter(v: Camera, back: number): string {
  return (
    seatBox(v) +
    adapter(v) +
    face(
      v,
      'M1640 800 800L1640 800 830L1690 800 830L1690 930 830L1740 930 830L1740 930 800L1640 930 800Z',
      '#fff',
    ) +
    seat(v, { tipped: back, up: 40 })
  );
}

function seatSet(): string {
  const v = doorway(0.42, [1850, 860], [330, 220]);
  const at = { tipped: 34 };
  const [tx, tz] = onSeat(1540, 900, at);
  const [ax, ay] = v.at(tx, 700, tz);
  const joined = (x: number): string => {
    const [x1, y1] = v.at(x, 600, 838);
    const [sx, sz] = onSeat(x, 850, { tipped: 34, up: 40 });
    const [x2, y2] = v.at(sx, 600, sz);
    return (
      cable(`M${x1} ${y1}C${x1 - 6} ${y1 - 30} ${x2 + 8} ${y2 + 30} ${x2} ${y2}`) +
      place((x1 + x2) / 2 - 2, (y1 + y2) / 2 - 8, smallPlug(0, 0, -90))
    );
  };
  return sheet(
    inDoorway(v, onAdapter(v, 34) + joined(1690) + joined(1800) + joined(1910)),
    arrow(ax + 60, ay - 40, ax + 74, ay + 26, 16),
  );
}

function seatOn(): string {
  const v = doorway(0.36, [1850, 960], [330, 200]);
  const bolt = (x: number): string => {
    const [px, py] = v.at(x, 790, 800);
    return place(px, py + 16, boltSide(26, 8), 180);
  };
  const [hx, hy] = v.at(1700, 930, 815);
  const [tx, ty] = v.at(1880, 590, 1000);
  return sheet(
    inDoorway(v, onAdapter(v, 0)),
    bolt(1800),
    bolt(2090),
    circle(hx, hy, 5, 'item'),
    turnArrow(tx, ty - 30, 74, 150, 30),
  );
}

/** File names under the guide's `pictures/`. */
export const swivelSeat: Readonly<Record<string, string>> = {
  skirt: skirt(),
  'seat-bolts': seatBolts(),
  tipped: tipped(),
  heater: heater(),
  'seat-out': seatOut(),
  adapter: adapterOn(),
  loop: loop(),
  'seat-set': seatSet(),
  'seat-on': seatOn(),
};
