/** The drawings of the roof vent guide. Marks in `guide.md` are fractions of these 640 × 400 boxes. */
import { type Camera, camera, hoop } from './camera.ts';
import { face, scenery, van } from './dray.ts';
import { flatHand, hexHead, smallPlug, torqueWrench } from './hardware.ts';
import {
  accentLine,
  arrow,
  box,
  cable,
  centreLine,
  circle,
  GREY,
  INK,
  NARROW,
  pane,
  path,
  place,
  sheet,
  TINT,
  turnArrow,
  window,
} from './pen.ts';

/** The middle of the opening, and the bows on both sides of it: millimetres along the van. */
const MIDDLE = 2980;
const BOWS = [2140, 2700, 3260, 3820] as const;
const PAPER = '#f3ecd2';

/** From above and from the left, the nose on the left: the view of all that is done on the roof. */
const overRoof = (scale: number): Camera =>
  camera({ round: 62, above: 46, scale, point: [MIDDLE, 0, 2485], stands: [320, 190] });

/** A bow under the skin: two dashed lines and the row of spot welds that shows it. */
function bow(v: Camera, x: number): string {
  const across = (at: number): string => `M${at} 860 2445C${at} 400 2490 ${at} -400 2490 ${at} -860 2445`;
  const welds = [-700, -460, -220, 220, 460, 700].map((y) => hoop(x, y, 2478, 14, 'floor')).join('');
  return (
    `<path d="${v.flat(across(x - 30) + across(x + 30))}" fill="none" stroke="${INK}" stroke-width="${NARROW}" stroke-dasharray="7 4"/>` +
    `<path d="${v.flat(welds)}" fill="${INK}"/>`
  );
}

const opening = (v: Camera): string =>
  v.flat(
    `M${MIDDLE - 175} -200 2488L${MIDDLE + 175} -200 2488L${MIDDLE + 200} -175 2488L${MIDDLE + 200} 175 2488L${MIDDLE + 175} 200 2488L${MIDDLE - 175} 200 2488L${MIDDLE - 200} 175 2488L${MIDDLE - 200} -175 2488Z`,
  );

function roofPlan(): string {
  const seen = overRoof(0.125);
  const [[x1, y1], [x2, y2]] = [seen.at(1640, 0, 2470), seen.at(5330, 0, 2470)];
  const [[x3, y3], [x4, y4]] = [seen.at(MIDDLE, -780, 2460), seen.at(MIDDLE, 780, 2460)];
  return sheet(
    van(seen),
    ...BOWS.map((x) => bow(seen, x)),
    centreLine(x1, y1, x2, y2),
    centreLine(x3, y3, x4, y4),
    `<path d="${opening(seen)}" fill="${TINT}"/>`,
    accentLine(opening(seen), false, 4),
  );
}

function sheets(): string {
  const seen = overRoof(0.3);
  const flat = (y: number, x: number, h: number, w: number): string =>
    `M${MIDDLE + x} ${y} 2488L${MIDDLE + x + w} ${y} 2488L${MIDDLE + x + w} ${y + h} 2488L${MIDDLE + x} ${y + h} 2488Z`;
  const crosses = [
    [0, -210],
    [0, 0],
    [0, 210],
    [-290, 0],
    [290, 0],
  ].map(([x = 0, y = 0]) => {
    const at = MIDDLE + x;
    return `${hoop(at, y, 2488, 16, 'floor')}M${at - 30} ${y} 2488L${at + 30} ${y} 2488M${at} ${y - 30} 2488L${at} ${y + 30} 2488`;
  });
  return sheet(
    van(seen),
    bow(seen, 2700),
    bow(seen, 3260),
    scenery(
      face(seen, flat(-500, -500, 1000, 1000), PAPER),
      face(seen, flat(-210, -290, 210, 290), '#fff'),
      face(seen, flat(-210, 0, 210, 290), '#fff'),
      face(seen, flat(0, -290, 210, 290), '#fff'),
      face(seen, flat(0, 0, 210, 290), '#fff'),
      face(seen, crosses.join(''), 'none'),
    ),
    accentLine(opening(seen), false, 4),
  );
}

const ROOF = 176;

/** The load space below the roof, and on its far wall the pillars and the rail between them. */
const inside =
  `<path d="M0 ${ROOF + 10}H640V400H0Z" fill="#eff2f1"/>` +
  path(`M0 318H640M0 338H640${[66, 126, 514, 574].map((x) => `M${x} ${ROOF + 50}V400`).join('')}`, 'detail');

/** The roof in section along the van: air above, the load space below, and the two bows beside the opening. */
const section = (gap: readonly [number, number]): string =>
  inside +
  path(`M0 ${ROOF}H${gap[0]}V${ROOF + 10}H0Z`, 'shade') +
  path(`M${gap[1]} ${ROOF}H640V${ROOF + 10}H${gap[1]}Z`, 'shade') +
  [96, 544].map(profile).join('');

/** A bow in section: a hat profile under the skin. */
const profile = (x: number): string =>
  path(
    `M${x - 52} ${ROOF + 10}V${ROOF + 18}H${x - 30}V${ROOF + 62}H${x + 30}V${ROOF + 18}H${x + 52}V${ROOF + 10}H${x + 20}V${ROOF + 52}H${x - 20}V${ROOF + 10}Z`,
    'shade',
  );

function saw(): string {
  return sheet(
    section([200, 460]),
    path(`M0 ${ROOF - 4}H196M464 ${ROOF - 4}H640`, 'bold'),
    `<path d="M120 ${ROOF - 6}H400V${ROOF}H120Z" fill="${PAPER}" stroke="${INK}" stroke-width="${NARROW}"/>`,
    box(370, ROOF, 90, 10, 'shade'),
    box(206, ROOF, 152, 10, 'item'),
    path(`M360 ${ROOF - 14}V${ROOF + 66}L353 ${ROOF + 58}V${ROOF - 14}Z`, 'part'),
    path(`M246 ${ROOF - 16}H400V${ROOF - 6}H246Z`, 'part'),
    place(
      6,
      -34,
      path(
        'M270 190V128C270 104 250 104 240 98C212 80 228 44 262 46L356 54C392 58 398 84 390 116L384 190Z',
        'part',
      ) +
        path('M284 78C300 70 328 72 342 80C350 88 344 98 330 98H294C280 96 278 86 284 78Z', 'back') +
        path('M276 132H388M276 150H386M276 168H385', 'detail') +
        path('M262 46C236 38 214 30 196 6', 'bold'),
    ),
    flatHand(258, ROOF + 12, true),
    flatHand(306, ROOF + 12),
    arrow(420, ROOF - 58, 500, ROOF - 58, 18),
  );
}

/** The way of the feed, seen through the left side. */
function feed(): string {
  const seen = camera({ round: 56, above: 9, scale: 0.108, point: [2700, 980, 0], stands: [352, 348] });
  const p = (x: number, y: number, z: number): string => seen.at(x, y, z).map(Math.round).join(' ');
  const [[fx, fy], [ex, ey]] = [seen.at(1480, 980, 1010), seen.at(2860, 60, 2490)];
  const ties: readonly (readonly [number, number, number])[] = [
    [2400, 970, 1330],
    [2400, 930, 1640],
    [2400, 900, 1950],
    [2500, 880, 2350],
    [2710, 700, 2450],
    [2710, 420, 2470],
  ];
  return sheet(
    van(seen),
    ...BOWS.slice(0, 3).map((x) => bow(seen, x)),
    scenery(
      face(seen, 'M2780 -200 2480L2780 200 2480L2780 200 2560L2780 -200 2560Z', GREY),
      face(seen, 'M2780 200 2480L3180 200 2480L3180 200 2560L2780 200 2560Z', GREY),
      face(seen, 'M2780 -200 2560L3180 -200 2560L3180 200 2560L2780 200 2560Z', '#fff'),
    ),
    box(fx - 30, fy - 20, 40, 44, 'shade', 4),
    path(`M${Math.round(fx) - 24} ${Math.round(fy) - 6}h28m-28 10h28m-28 10h28`, 'detail'),
    cable(
      `M${p(1560, 980, 1010)}C${p(2100, 980, 1000)} ${p(2400, 980, 960)} ${p(2400, 975, 1250)}L${p(2400, 890, 2200)}C${p(2400, 884, 2330)} ${p(2480, 880, 2400)} ${p(2700, 760, 2450)}C${p(2720, 600, 2460)} ${p(2710, 300, 2480)} ${p(2860, 60, 2490)}`,
    ),
    ...ties.map(([x, y, z]) => {
      const [tx, ty] = seen.at(x, y, z);
      return box(tx - 7, ty - 4, 14, 8, 'part', 2);
    }),
    place(ex, ey, smallPlug(0, 0, -20)),
    place(fx + 12, fy, smallPlug(0, 0, 180)),
  );
}

/** The vent over its opening in section, `lid` its height; the skin's upper face is y 0, the opening 0 to `w`. */
const vent = (w: number, lid: number): string =>
  path(`M-34 -14H${w + 34}V0H${w + 6}V22H${w - 8}V0H8V22H-6V0H-34Z`, 'part') +
  path(
    `M-10 -14C-6 ${-lid} 20 ${-lid} 30 ${-lid}H${w - 30}C${w - 20} ${-lid} ${w + 6} ${-lid} ${w + 10} -14Z`,
    'face',
  ) +
  path(`M${w / 2 - 46} -4H${w / 2 + 46}M${w / 2} -4V${-lid + 8}`, 'bold') +
  box(w / 2 - 14, -16, 28, 12, 'back');

/** Where the joint is, and the joint itself, larger. */
function joint(): string {
  const strip =
    `<path d="M0 84H640V128H0Z" fill="#eff2f1"/>` +
    path('M0 74H220V82H0Z', 'shade') +
    path('M420 74H640V82H420Z', 'shade') +
    [120, 520].map((x) => place(x - 96 * 0.6, 74 - ROOF * 0.6, profile(96), 0, 0.6)).join('') +
    place(220, 74, vent(200, 52)) +
    box(196, 84, 28, 9, 'item') +
    box(416, 84, 28, 9, 'item') +
    circle(210, 82, 30, 'bold');
  return sheet(
    window('whole', pane(0, 0, 640, 128), strip),
    path('M188 104L20 150M232 104L620 150', 'detail'),
    window(
      'near',
      pane(20, 150, 600, 240),
      `<path d="M20 284H620V390H20Z" fill="#eff2f1"/>` +
        path('M10 264H300V284H10Z', 'shade') +
        path('M120 246C112 254 108 260 112 264H300C318 264 316 246 300 246Z', 'back') +
        path('M130 206H450V150H520V370H470V246H130C120 238 120 214 130 206Z', 'part') +
        path('M150 286H420V314H150Z', 'item') +
        accentLine('M303 262V286', false, 8) +
        path('M346 208V314', 'hidden') +
        path('M362 208V314', 'hidden') +
        box(336, 315, 36, 6, 'item', 2) +
        box(342, 321, 24, 18, 'item', 2) +
        path('M350 321V339M358 321V339', 'detail') +
        arrow(354, 386, 354, 346, 14) +
        arrow(230, 160, 230, 198, 14),
    ),
    box(20, 150, 600, 240, 'bold'),
  );
}

/** The ring from below, between the two bows, the side rails of the roof above and below it. */
function frame(): string {
  const xs = [200, 320, 440];
  const heads = [
    ...xs.flatMap((x) => [hexHead(x, 88, 15), hexHead(x, 328, 15)]),
    ...[148, 208, 268].flatMap((y) => [hexHead(178, y, 15), hexHead(462, y, 15)]),
  ];
  const bar = (x: number): string =>
    box(x, 22, 58, 356, 'shade') + path(`M${x + 14} 22V378M${x + 44} 22V378`, 'detail');
  return sheet(
    `<path d="M0 0H640V400H0Z" fill="#eff2f1"/>`,
    box(-4, -4, 648, 26, 'shade'),
    box(-4, 378, 648, 26, 'shade'),
    bar(38),
    bar(544),
    box(150, 58, 340, 300, 'item', 22),
    box(206, 116, 228, 184, 'face', 14),
    circle(320, 208, 82, 'back'),
    ...[0, 60, 120, 180, 240, 300].map((turn) =>
      place(320, 208, path('M12 -6C40 -26 66 -24 76 -14C60 6 36 12 14 6Z', 'face'), turn),
    ),
    circle(320, 208, 16, 'part'),
    ...heads,
    place(200, 88, torqueWrench(), 196),
    turnArrow(200, 88, 34, 250, 400),
  );
}

/** The roof in section along the van: a hose above the vent, the lance that waxes over the bow below. */
function leakTest(): string {
  const drop = (x: number, y: number): string =>
    path(`M${x} ${y}C${x - 6} ${y + 10} ${x + 6} ${y + 10} ${x} ${y}`, 'detail');
  return sheet(
    inside,
    path(`M0 ${ROOF}H60V${ROOF + 10}H0Z`, 'shade'),
    path(`M290 ${ROOF}H640V${ROOF + 10}H290Z`, 'shade'),
    place(60, ROOF, vent(230, 66)),
    box(30, ROOF + 12, 52, 12, 'back'),
    box(268, ROOF + 12, 52, 12, 'back'),
    profile(470),
    path('M640 30C560 10 480 8 400 46', 'bold'),
    path('M640 44C562 24 486 22 408 58', 'bold'),
    path('M410 40L374 58L382 78L420 60Z', 'part'),
    ...[
      [358, 84],
      [340, 96],
      [322, 108],
      [366, 104],
      [346, 124],
      [326, 140],
      [372, 130],
      [352, 152],
    ].map(([x = 0, y = 0]) => drop(x, y)),
    path('M230 400C300 380 372 340 400 280C410 256 420 240 430 226', 'bold'),
    circle(434, 220, 8, 'item'),
    ...[-70, -30, 10, 50].map((turn) => place(434, 220, path('M13 0H34', 'detail'), turn)),
    accentLine(`M440 ${ROOF + 14}V${ROOF + 66}H502V${ROOF + 20}`, false, 5),
  );
}

/** File names under the guide's `pictures/`. */
export const roofVent: Readonly<Record<string, string>> = {
  'roof-plan': roofPlan(),
  sheets: sheets(),
  saw: saw(),
  feed: feed(),
  section: joint(),
  frame: frame(),
  'leak-test': leakTest(),
};
