/**
 * The Larkspur Dray as all its drawings show it: one set of millimetres, seen by a camera from the front, the side or
 * above. y counts to the side that is seen. The van is invented.
 */
import { type Camera, hoop, isInFrame } from './camera.ts';
import { GREY, INK, NARROW, SHADE, TINT } from './pen.ts';

const HALF = 980;
const FRONT_AXLE = 1000;
const REAR_AXLE = 4350;
export const TYRE = '#8d9694';
const GLASS = '#dfe7ea';
const SIDE = '#f3f5f4';
const WHITE = '#fff';

/** A face in one colour, or lines where the colour is `none`; its edge is the group's. Nothing where it is out of the box. */
export function face(v: Camera, d: string, fill: string, forward = 0): string {
  const flat = v.moved([-forward, 0, 0], d);
  return isInFrame(flat) ? `<path d="${flat}" fill="${fill}"/>` : '';
}

/** Faces with narrow edges. */
export const scenery = (...faces: readonly string[]): string =>
  `<g stroke="${INK}" stroke-width="${NARROW}" stroke-linejoin="round" stroke-linecap="round">${faces.join('')}</g>`;

/** The plan of the far corner of the nose, from its flank to its front: how far behind the foremost point, and y. */
const CORNER = [
  [340, -HALF],
  [100, -HALF],
  [30, -800],
  [12, -460],
] as const;

/** How much of the far corner is out of sight, from 0 to 1: up to where the line of sight grazes it. */
function outOfSight(v: Camera): number {
  const across = CORNER.map(([x, y]) => v.at(x, y, 0)[0]);
  const [a = 0, b = 0, c = 0, d = 0] = across;
  for (let t = 0; t < 1; t += 0.02) {
    const run = (1 - t) * (1 - t) * (b - a) + 2 * t * (1 - t) * (c - b) + t * t * (d - c);
    if (run * (d - a) > 0) return t;
  }
  return 0;
}

/** A run round the nose at a height, from where the far side is seen to the near side; `x` is its foremost point. */
function nose(v: Camera, x: number, z: number, back = false): string {
  const t = outOfSight(v);
  const far = rest(t).map(([dx, y]) => `${x + dx} ${y} ${z}`);
  const near = CORNER.map(([dx, y]) => `${x + dx} ${-y} ${z}`);
  return back
    ? `L${near[0]}C${near[1]} ${near[2]} ${near[3]}C${x} 200 ${z} ${x} -200 ${z} ${far[3]}C${far[2]} ${far[1]} ${far[0]}`
    : `L${far[0]}C${far[1]} ${far[2]} ${far[3]}C${x} -200 ${z} ${x} 200 ${z} ${near[3]}C${near[2]} ${near[1]} ${near[0]}`;
}

/** What is left of the corner's curve after a part of it is cut off (de Casteljau). */
function rest(t: number): (readonly [number, number])[] {
  type Pair = readonly [number, number];
  const between = ([ax, ay]: Pair, [bx, by]: Pair): Pair => [ax + (bx - ax) * t, ay + (by - ay) * t];
  const [a, b, c, d] = CORNER;
  const [ab, bc, cd] = [between(a, b), between(b, c), between(c, d)];
  const [abc, bcd] = [between(ab, bc), between(bc, cd)];
  const round = ([x, y]: Pair): Pair => [Math.round(x), Math.round(y)];
  return [between(abc, bcd), bcd, cd, d].map(round);
}

const begin = (run: string): string => run.replace('L', 'M');

const arch = (x: number): string =>
  `M${x - 430} ${HALF} 330C${x - 440} ${HALF} 600 ${x - 240} ${HALF} 790 ${x} ${HALF} 790C${x + 240} ${HALF} 790 ${x + 440} ${HALF} 600 ${x + 430} ${HALF} 330`;

const side = `M380 ${HALF} 330L5380 ${HALF} 330L5400 ${HALF} 1200L5400 910 2280C5400 900 2400 5360 890 2440 5240 880 2440L1760 880 2440C1680 880 2440 1620 880 2420 1560 880 2340L900 965 1310L470 ${HALF} 1080Z`;
const farSide = `M470 -${HALF} 1080L900 -965 1310L1560 -880 2340L5200 -890 2380L5380 -${HALF} 330L1500 -${HALF} 330Z`;
const front = (v: Camera): string =>
  `${begin(nose(v, 50, 300))}L470 ${HALF} 1080${nose(v, 130, 1060, true)}Z`;
const bonnet = (v: Camera): string =>
  `${begin(nose(v, 130, 1060))}L470 ${HALF} 1080L900 965 1310C840 500 1350 840 -500 1350 900 -965 1310Z`;
const screen =
  'M900 965 1310L1560 880 2340C1500 400 2380 1500 -400 2380 1560 -880 2340L900 -965 1310C840 -500 1350 840 500 1350 900 965 1310Z';
const roof =
  'M1560 880 2340C1620 880 2420 1680 880 2440 1760 880 2440L5240 880 2440C5380 500 2490 5380 -500 2490 5240 -880 2440L1760 -880 2440C1680 -880 2440 1620 -880 2420 1560 -880 2340C1500 -400 2380 1500 400 2380 1560 880 2340Z';
const glass =
  'M960 880 1380L1540 800 2270C1500 400 2300 1500 -400 2300 1540 -800 2270L960 -880 1380C900 -400 1400 900 400 1400 960 880 1380Z';
/** The outline of the front door. */
export const door = `M1470 ${HALF} 370L1470 ${HALF} 800C1430 ${HALF} 950 1230 ${HALF} 1100 1180 966 1310L1680 880 2290L2350 882 2290L2350 ${HALF} 1250L2350 ${HALF} 370Z`;
const flank = `M1470 ${HALF} 345L1470 ${HALF} 800C1430 ${HALF} 950 1230 ${HALF} 1100 1180 966 1310L1700 880 2350L5330 890 2350L5400 ${HALF} 1200L5380 ${HALF} 345Z`;
const doorPane = 'M1300 958 1350L1712 890 2210L2275 892 2210L2275 958 1350Z';
const slider = `M2450 ${HALF} 370L2450 ${HALF} 1250L2450 884 2300L3720 884 2300L3720 ${HALF} 1250L3720 ${HALF} 370ZM3720 ${HALF} 1260L5150 ${HALF} 1260M3720 ${HALF} 1220L5150 ${HALF} 1220`;
const panels = `M2450 ${HALF} 370L2450 884 2380M3900 ${HALF} 620L3900 884 2380M2350 ${HALF} 620L5380 ${HALF} 620`;
const channel = 'M1760 880 2440L5240 880 2440M1740 880 2400L5330 890 2400';
/** The outline of the bumper cover, which reaches up to the bonnet between the headlamps, round the grille. */
export function coverOf(v: Camera): string {
  const [far3, far2, far1, far0] = rest(outOfSight(v))
    .map(([dx, y]) => `${20 + dx} ${y} 740`)
    .toReversed();
  return (
    `M${far0}C${far1} ${far2} ${far3}L112 -455 1030C102 -200 1030 102 200 1030 112 455 1030L32 460 740` +
    `C50 800 740 120 ${HALF} 740 360 ${HALF} 740L750 ${HALF} 690C640 ${HALF} 600 585 ${HALF} 480 575 ${HALF} 320${nose(v, 60, 290, true)}Z`
  );
}

/** A headlamp; the far one ends where the corner hides it. */
function headlamp(v: Camera, s: 1 | -1): string {
  const whole = s === 1 || v.sees(0, -1, 0);
  const [x, y] = rest(outOfSight(v))[0] ?? [0, 0];
  const shape = whole
    ? `M62 ${s * 470} 800L112 ${s * 470} 1010C120 ${s * 760} 1030 220 ${s * 950} 1050 440 ${s * 981} 1065L330 ${s * 978} 900C160 ${s * 910} 830 80 ${s * 700} 800 62 ${s * 470} 800Z`
    : `M62 -470 800L112 -470 1010C118 -600 1020 ${x} ${Math.round((y - 470) / 2)} 1036 ${x + 70} ${y + 10} 1044L${x + 40} ${y + 10} 824C${x - 20} ${Math.round((y - 470) / 2)} 808 70 -600 802 62 -470 800Z`;
  return (
    face(v, shape, GREY) +
    face(v, hoop(86, s * 640, 908, 82, 'front'), WHITE) +
    face(v, hoop(84, s * 640, 908, 36, 'front'), GREY) +
    (whole ? face(v, hoop(150, s * 830, 940, 58, 'front'), WHITE) : '')
  );
}

/** The headlamps, the same in each picture. */
const headlamps = (v: Camera): string => headlamp(v, -1) + headlamp(v, 1);

const bar = (z: number): string => {
  const x = 54 + (z - 790) / 4;
  return `M${x} -430 ${z}C${x - 10} -200 ${z} ${x - 10} 200 ${z} ${x} 430 ${z}`;
};

/** The grille between the headlamps, with three bars. */
const grille = (v: Camera, forward: number): string =>
  face(v, `${bar(780)}L106 430 995C96 200 995 96 -200 995 106 -430 995Z`, SHADE, forward) +
  face(v, bar(835) + bar(888) + bar(942), 'none', forward);

/** The bumper cover, moved forward by some millimetres: grille, number plate, lower intake and two fog lamps. */
export const cover = (v: Camera, forward = 0, tinted = false): string =>
  face(v, coverOf(v), tinted ? TINT : WHITE, forward) +
  grille(v, forward) +
  face(
    v,
    'M40 -480 370C34 -200 360 34 200 360 40 480 370L30 440 460C24 200 450 24 -200 450 30 -440 460Z',
    SHADE,
    forward,
  ) +
  face(v, 'M36 -470 400L36 470 400M33 -450 430L33 450 430', 'none', forward) +
  face(v, 'M14 -260 520L14 260 520L14 260 630L14 -260 630Z', WHITE, forward) +
  [-1, 1]
    .map(
      (s) =>
        face(v, hoop(78, s * 700, 440, 62, 'front'), GREY, forward) +
        face(v, hoop(78, s * 700, 440, 34, 'front'), WHITE, forward),
    )
    .join('');

/** Turns what stands at an axle about its upright, so that its front edge goes inwards by `turn` millimetres. */
const turned = (d: string, x: number, turn: number): string =>
  d.replace(
    /(-?[\d.]+) (-?[\d.]+) (-?[\d.]+)/g,
    (_, px, py, pz) => `${px} ${Number(py) + ((Number(px) - x) / 350) * turn} ${pz}`,
  );

/** The side is not seen edge on. */
const seesSide = (v: Camera): boolean => v.sees(0.1, 1, 0);

/** What is seen of a tyre behind its wheel, or of both from the front. */
const tyreBehind = (v: Camera, x: number, turn: number): string =>
  seesSide(v)
    ? face(v, turned(hoop(x, 740, 350, 350, 'side'), x, turn), TYRE)
    : [-1, 1]
        .map((s) =>
          face(
            v,
            `M${x} ${s * 720} 400L${x} ${s * 720} 30L${x} ${s * 750} 0L${x} ${s * 920} 0L${x} ${s * 950} 30L${x} ${s * 950} 400Z`,
            TYRE,
          ),
        )
        .join('');

/** A wheel in its arch, seen from its side. */
function wheel(v: Camera, x: number, turn: number): string {
  const disc = (r: number, fill: string): string =>
    face(v, turned(hoop(x, 950, 350, r, 'side'), x, turn), fill);
  return face(v, arch(x), TYRE) + disc(350, TYRE) + disc(225, GREY) + disc(185, WHITE) + disc(70, GREY);
}

const mirror = (v: Camera, s: 1 | -1): string =>
  face(
    v,
    `M1330 ${s * 950} 1400L1300 ${s * 1160} 1380L1290 ${s * 1180} 1700C1290 ${s * 1160} 1740 1290 ${s * 1040} 1740 1300 ${s * 1020} 1700L1310 ${s * 1010} 1450Z`,
    GREY,
  );

/** The outline of the van as one thick edge, its faces white. */
function body(v: Camera): string {
  const faces = v.flat(side + front(v) + bonnet(v) + screen + roof);
  return `<path d="${v.flat(farSide)}${faces}" fill="#fff" stroke-width="5"/><path d="${faces}" fill="#fff" stroke="none"/>`;
}

const handle = (v: Camera): string =>
  face(v, `M2180 ${HALF} 1150L2300 ${HALF} 1150L2300 ${HALF} 1110L2180 ${HALF} 1110Z`, GREY);

/** What is seen of the side: `slides` where it is the right one, which has the sliding door. */
const sideOf = (v: Camera, slides: boolean, open: boolean): string =>
  `<g stroke="none">${face(v, flank, SIDE)}</g>` +
  face(v, door, 'none') +
  (open ? '' : face(v, doorPane, GLASS) + handle(v)) +
  face(v, slides ? slider : panels, 'none') +
  face(v, channel, 'none') +
  face(v, `M5330 ${HALF} 820L5395 ${HALF} 820L5398 940 1480L5330 945 1480Z`, SHADE);

/** How the van is shown. */
interface Look {
  /** The right-hand side is seen, which has the sliding door. */
  readonly slides?: boolean;
  /** How far the front edge of the front wheel is turned inwards, in millimetres. */
  readonly turn?: number;
  /** The front door is left out. */
  readonly open?: boolean;
  /** What stands in the place of the bumper cover, where that is not on the van as it is. */
  readonly end?: string;
}

/** The whole van, or what of it lies in the frame. */
export function van(v: Camera, { slides = false, turn = 0, open = false, end }: Look = {}): string {
  const axles = [
    [FRONT_AXLE, turn],
    [REAR_AXLE, 0],
  ] as const;
  return scenery(
    mirror(v, -1),
    ...axles.map(([x, t]) => tyreBehind(v, x, t)),
    body(v),
    face(v, screen, WHITE),
    face(v, glass, GLASS),
    face(v, begin(nose(v, 130, 1060)), 'none'),
    ...(seesSide(v) ? [sideOf(v, slides, open), ...axles.map(([x, t]) => wheel(v, x, t))] : []),
    headlamps(v),
    end ?? cover(v),
    open ? '' : mirror(v, 1),
  );
}
