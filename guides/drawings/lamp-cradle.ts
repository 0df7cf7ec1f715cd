/** The drawings of the lamp cradle guide. Marks in `guide.md` are fractions of these 640 × 400 boxes. */
import { type Camera, camera, hoop } from './camera.ts';
import { cover, face, scenery, TYRE, van } from './dray.ts';
import {
  bareEnd,
  cradle,
  cradleNut,
  DARK,
  frontBolt,
  frontView,
  quarter,
  shutter,
  shutterBolts,
  studs,
} from './dray-front.ts';
import { boltSide, clipHead, hatch, hexHead, lifter, lobeHead, plug, smallPlug, tape } from './hardware.ts';
import {
  accentLine,
  arrow,
  box,
  cable,
  centreLine,
  circle,
  ellipse,
  GREY,
  pane,
  path,
  place,
  SHADE,
  sheet,
  turnArrow,
  way,
  window,
} from './pen.ts';

/** The left front arch from its side twice: liner on, then folded back so that the arch screw can be reached. */
function arch(): string {
  const seen = camera({ round: 64, above: 5, scale: 0.32, point: [640, 980, 560], stands: [204, 206] });
  const on = seen.flat(
    'M750 985 690C640 985 600 585 985 480 575 985 320L662 985 320C672 985 470 706 985 560 796 985 636Z',
  );
  const gap = seen.flat(
    'M750 985 690C640 985 600 585 985 480 575 985 320L630 985 320C640 985 480 676 985 580 774 985 660Z',
  );
  const folded = seen.flat(
    'M830 985 660C760 985 620 726 985 540 716 985 400L806 985 400C816 985 500 840 985 570 890 985 620Z',
  );
  const spots = (points: readonly (readonly [number, number])[]) =>
    points.map(([x, z]) => seen.at(x, 985, z));
  const screws = spots([
    [742, 648],
    [684, 585],
    [649, 510],
  ]);
  const clips = spots([
    [629, 430],
    [619, 352],
  ]);
  const [fx, fy] = seen.at(690, 985, 630);
  return sheet(
    window(
      'on',
      pane(0, 0, 317, 400),
      van(seen, { turn: 110 }) +
        path(on, 'item') +
        screws.map(([x, y]) => lobeHead(x, y, 8)).join('') +
        clips.map(([x, y]) => clipHead(x, y, 8)).join(''),
    ),
    window(
      'back',
      pane(323, 0, 317, 400),
      van(seen, { turn: 110 }) +
        path(gap, 'shade') +
        path(folded, 'item') +
        place(fx, fy + 8, boltSide(40, 9), 180),
      323,
    ),
    path('M320 10V390', 'bold'),
    way(
      ({ arrow, turn }) =>
        turn(323 + fx + 26, fy + 66, 52, 150, 40) + arrow(323 + fx - 2, fy + 32, 323 + fx - 2, fy + 88, 11),
    ),
  );
}

/** The front from below, its nose above: what hangs between the wheels. */
function undertray(): string {
  const tyre = (x: number): string =>
    `<rect x="${x}" y="196" width="62" height="186" rx="16" fill="${TYRE}"/>` +
    path([220, 244, 268, 292, 316, 340, 364].map((y) => `M${x + 6} ${y}H${x + 56}`).join(''), 'detail');
  const stand = (x: number): string =>
    box(x, 366, 40, 30, 'back', 3) + path(`M${x + 6} 374H${x + 34}M${x + 20} 366V396`, 'detail');
  return sheet(
    path('M40 400V170C40 96 120 44 240 34H400C520 44 600 96 600 170V400Z', 'face'),
    path('M66 400V180C66 116 136 66 246 58H394C504 66 574 116 574 180V400', 'detail'),
    path('M72 200C100 180 130 170 150 170V400H72Z', 'back'),
    path('M568 200C540 180 510 170 490 170V400H568Z', 'back'),
    tyre(66),
    tyre(512),
    path('M128 300L190 276V326L128 320ZM512 300L450 276V326L512 320Z', 'face'),
    stand(150),
    stand(450),
    path('M150 388H490', 'detail'),
    path('M196 62H444L466 92L452 352C452 362 446 368 436 368H204C194 368 188 362 188 352L174 92Z', 'item'),
    path('M214 120H426L416 336H224Z', 'detail'),
    path('M232 152H408M230 178H410M238 310H402', 'detail'),
    ...[200, 248, 296, 344, 392, 440].map((x) => lobeHead(x, 80, 11)),
    hexHead(192, 190, 11),
    hexHead(448, 190, 11),
    hexHead(202, 340, 11),
    hexHead(438, 340, 11),
    place(
      320,
      250,
      way(({ arrow }) => arrow(0, -40, 0, 40, 20)),
    ),
  );
}

/** Where the seven clips are, bonnet open, and how one comes out. */
function topClip(): string {
  const seen = camera({ round: 0, above: 40, scale: 0.31, point: [200, 0, 1030], stands: [320, 100] });
  const clips = [-420, -280, -140, 0, 140, 280, 420].map((y) => seen.at(170, y, 1040));
  const panels = (x: number): string =>
    box(x - 85, 300, 66, 12, 'part') +
    box(x + 19, 300, 66, 12, 'part') +
    box(x - 85, 312, 66, 12, 'back') +
    box(x + 19, 312, 66, 12, 'back');
  const body = (x: number, y: number, spread: number): string =>
    path(
      `M${x - 38} ${y - 11}H${x + 38}V${y}H${x + 15}L${x + 15 + spread} ${y + 54}L${x + 8} ${y + 72}L${x + 5} ${y + 4}H${x - 5}L${x - 8} ${y + 72}L${x - 15 - spread} ${y + 54}L${x - 15} ${y}H${x - 38}Z`,
      'item',
    );
  const pin = (x: number, y: number): string =>
    path(
      `M${x - 24} ${y - 11}H${x + 24}V${y - 2}H${x + 6}L${x + 5} ${y + 54}L${x} ${y + 62}L${x - 5} ${y + 54}L${x - 6} ${y - 2}H${x - 24}Z`,
      'part',
    );
  const bay = (d: string, fill: string): string => face(seen, d, fill);
  const open = scenery(
    bay(
      'M900 965 1310L470 980 1070C300 960 1045 150 800 1035 130 460 1035L130 -460 1035C150 -800 1035 300 -960 1045 470 -980 1070L900 -965 1310Z',
      DARK,
    ),
    bay('M130 -460 1040L130 460 1040L250 500 1045L250 -500 1045Z', '#fff'),
    bay('M330 -300 1090L330 160 1090L640 160 1110L640 -300 1110Z', GREY),
    bay('M380 -250 1100L380 110 1100M460 -250 1100L460 110 1100M540 -250 1100L540 110 1100', 'none'),
    bay('M340 430 1090L340 780 1090L640 780 1110L640 430 1110Z', '#fff'),
    bay(hoop(560, 520, 1110, 34, 'floor') + hoop(560, 690, 1110, 34, 'floor'), SHADE),
    bay('M340 -780 1090L340 -520 1090L600 -520 1110L600 -780 1110Z', GREY),
  );
  return sheet(
    window(
      'front',
      pane(0, 0, 640, 200),
      van(seen) + open + clips.map(([x, y]) => clipHead(x, y, 9)).join(''),
    ),
    path('M0 200H640', 'bold'),
    path('M213 214V390M427 214V390', 'detail'),
    panels(108),
    body(108, 300, 11),
    pin(108, 289),
    panels(320),
    body(320, 300, 4),
    pin(320, 264),
    place(299, 264, lifter(0, 0), 190),
    panels(532),
    body(532, 252, 0),
    pin(532, 226),
    way(({ arrow }) => arrow(372, 290, 372, 236, 11) + arrow(588, 296, 588, 226, 13)),
  );
}

/** The cover a good metre before the van. */
function coverOff(): string {
  const seen = quarter(0.19, 290, 205);
  const [x1, y1] = seen.at(120, 0, 560);
  const [x2, y2] = seen.at(-900, 60, 990);
  const ahead = (y: number, z: number, motion: typeof arrow): string => {
    const [ax, ay] = seen.at(-1240, y, z);
    const [bx, by] = seen.at(-1560, y, z);
    return motion(ax, ay, bx, by, 16);
  };
  return sheet(
    van(seen, { end: bareEnd(seen) }),
    cable(`M${x1} ${y1}C${x1 - 20} ${y1 + 40} ${x2 + 50} ${y2 - 40} ${x2 + 24} ${y2 - 6}`),
    place(x2 + 22, y2 - 8, smallPlug(0, 0, 150)),
    scenery(cover(seen, 1150, true)),
    way(({ arrow: motion }) => ahead(-640, 330, motion) + ahead(900, 330, motion)),
  );
}

/** The back of the cover's left end with the fog lamp in it, and a thumb on the latch of its plug. */
function plugRelease(): string {
  return sheet(
    path(
      'M0 40C120 24 300 20 470 30C560 36 610 60 624 110C590 160 574 230 570 330C420 372 200 384 0 380Z',
      'face',
    ),
    path(
      'M0 70C120 54 300 50 460 58C540 64 580 84 590 118C560 170 546 240 542 312C400 346 200 356 0 352',
      'detail',
    ),
    `<path d="M640 96C606 150 588 240 592 400H640Z" fill="${TYRE}"/>`,
    path('M0 120L90 112V300L0 306Z', 'shade'),
    path('M624 110C590 160 574 230 570 330', 'bold'),
    ...[
      [600, 130],
      [580, 190],
      [566, 262],
    ].map(([x = 0, y = 0]) => circle(x - 16, y, 5, 'shade')),
    path('M400 96C480 96 520 146 520 206C520 270 470 314 400 314C372 314 372 96 400 96Z', 'back'),
    ellipse(400, 205, 26, 109, 'part'),
    box(366, 172, 40, 68, 'part', 4),
    place(352, 206, plug(2.2)),
    thumb(302, 150),
    way(({ arrow }) => arrow(316, 290, 216, 290, 18)),
    arrow(376, 84, 330, 138, 12),
  );
}

/** The tip of a gloved thumb that presses down at a point. */
const thumb = (x: number, y: number): string =>
  place(
    x,
    y,
    path('M-24 -150C-26 -100 -30 -60 -26 -22C-22 4 18 6 24 -18C30 -50 34 -100 44 -150Z', 'glove') +
      path('M-12 -20C-14 -38 -10 -50 0 -50C10 -50 14 -38 12 -20M-20 -78C-6 -70 14 -70 30 -76', 'detail'),
    -16,
  );

function shutterOff(): string {
  const seen = frontView(0.3, 650);
  const [x, y] = seen.at(90, 425, 700);
  const lower = (side: number, motion: typeof arrow): string =>
    motion(320 + side * 40, 292, 320 + side * 62, 350, 16);
  return sheet(
    van(seen, {
      end:
        bareEnd(seen) +
        shutter(seen) +
        shutterBolts.map(([by, z]) => frontBolt(seen, 100, by, z, 28)).join(''),
    }),
    cable(`M${x + 20} ${y}C${x + 44} ${y + 4} ${x + 40} ${y + 40} ${x + 46} ${y + 66}`),
    place(x + 2, y, smallPlug(0, 0, 180)),
    way(({ arrow: motion }) => lower(-1, motion) + lower(1, motion)),
  );
}

/** The cover on its trestles, outside up, and its lower edge nearer: what is drawn in the detail is at home there. */
function onTrestles(patch: string, detail: string): string {
  const seen = frontView(0.235, 650, 108);
  const trestle = (x: number): string =>
    path(`M${x - 40} 186L${x - 52} 216M${x + 40} 186L${x + 52} 216`, 'bold') +
    box(x - 52, 178, 104, 12, 'shade', 3);
  return sheet(
    window('above', pane(0, 0, 640, 214), scenery(cover(seen)) + trestle(180) + trestle(460) + patch),
    path('M290 190L20 222M350 190L620 222', 'detail'),
    window('near', pane(20, 222, 600, 170), detail),
    box(20, 222, 600, 170, 'bold'),
  );
}

/** The lower edge of the cover near its middle, with the foot of the plate's recess above. */
const lowerEdge =
  path('M10 216H630V366C440 378 200 378 10 366Z', 'face') +
  path('M10 254C200 262 440 262 630 254', 'detail') +
  box(150, 210, 340, 34, 'back', 4);

const NOTCH = 'M220 374V300A14 14 0 0 1 234 286H406A14 14 0 0 1 420 300V374';

function notch(): string {
  const masking = '#f3ecd2';
  return onTrestles(
    `<path d="M246 170H394V184C350 186 290 186 246 184Z" fill="${masking}" stroke="#1b1f22" stroke-width="1.3"/>` +
      accentLine('M300 185V174H340V185', false, 2),
    lowerEdge +
      tape(60, 268, 520, 108) +
      `<path d="M0 366C200 378 440 378 640 366V400H0Z" fill="#fff"/>` +
      path('M10 366C200 378 440 378 630 366', 'bold') +
      hatch(224, 290, 192, 84, 16) +
      accentLine(NOTCH, false, 4) +
      centreLine(320, 214, 320, 392) +
      [170, 470]
        .map((x) => circle(x, 322, 9, 'item') + path(`M${x - 15} 322H${x + 15}M${x} 307V337`, 'detail'))
        .join(''),
  );
}

function bezel(): string {
  return onTrestles(
    accentLine('M298 187V172H342V187', false, 6),
    `<path d="M10 216H630V366C560 371 490 374 430 375V300A20 20 0 0 0 410 280H230A20 20 0 0 0 210 300V375C140 374 70 370 10 366Z" fill="#fff" stroke="#1b1f22" stroke-width="3"/>` +
      path('M10 254C200 262 440 262 630 254', 'detail') +
      box(150, 210, 340, 34, 'back', 4) +
      accentLine('M210 374V300A20 20 0 0 1 230 280H410A20 20 0 0 1 430 300V374', false, 6) +
      path(
        'M146 396V290A32 32 0 0 1 178 258H462A32 32 0 0 1 494 290V396H448V308A18 18 0 0 0 430 290H210A18 18 0 0 0 192 308V396Z',
        'item',
      ) +
      lobeHead(169, 322, 12) +
      lobeHead(471, 322, 12) +
      arrow(70, 378, 152, 328, 11) +
      arrow(570, 378, 488, 328, 11) +
      arrow(320, 384, 320, 312, 16),
  );
}

/** The cradle held on the studs, the cover offered up before it. */
function trial(): string {
  const seen = quarter(0.19, 290, 205);
  const foot = (y: number, z: number): [number, number] => seen.at(-980, y, z);
  const [[cx1, cy1], [cx2, cy2]] = [foot(0, 620), foot(0, 230)];
  const [[lx, ly], [rx, ry]] = [foot(-170, 300), foot(170, 300)];
  const [[ax, ay], [bx, by]] = [seen.at(-820, 900, 330), seen.at(-440, 900, 330)];
  const cut = seen.moved([-980, 0, 0], 'M60 -120 290L60 -120 380L60 120 380L60 120 290');
  return sheet(
    van(seen, { end: bareEnd(seen) + cradle(seen) }),
    scenery(cover(seen, 980)),
    accentLine(cut, true, 3),
    centreLine(cx1, cy1 - 10, cx2, cy2 + 10),
    path(`M${lx - 14} ${ly + 12}L${rx + 14} ${ry + 12}L${rx + 14} ${ry + 24}L${lx - 14} ${ly + 24}Z`, 'item'),
    path(
      [0.2, 0.35, 0.5, 0.65, 0.8]
        .map((t) => `M${lx + (rx - lx) * t} ${ly + 12 + (ry - ly) * t}V${ly + 20 + (ry - ly) * t}`)
        .join(''),
      'detail',
    ),
    arrow(ax, ay, bx, by, 16),
  );
}

/** The stud that waits for its nut. */
const looseStud = (seen: Camera): string => face(seen, hoop(110, -150, 505, 11, 'front'), SHADE);

function hang(): string {
  const seen = frontView(0.42, 640);
  const [x, y] = seen.at(-40, -150, 505);
  const [nx, ny] = [x - 92, y + 52];
  return sheet(
    van(seen, {
      end:
        bareEnd(seen) +
        cradle(seen) +
        looseStud(seen) +
        studs
          .filter(([sy, z]) => !(sy < 0 && z < 550))
          .map(([sy, z]) => cradleNut(seen, sy, z))
          .join(''),
    }),
    path(`M${x} ${y}L${nx} ${ny}`, 'hidden'),
    scenery(place(nx - x, ny - y, cradleNut(seen, -150, 505, 160), 0)),
    turnArrow(nx, ny, 30, 190, 300),
    arrow(320, 396, 320, 350, 16),
  );
}

function loom(side: 'right' | 'left'): string {
  const seen = frontView(0.42, 690);
  const p = (y: number, z: number): string =>
    seen
      .at(140, y, z)
      .map((c) => Math.round(c))
      .join(' ');
  const s = side === 'right' ? -1 : 1;
  const [plugX, plugY] = s < 0 ? seen.at(140, -560, 770) : seen.at(140, 545, 720);
  const drop = (t: number): string =>
    cable(
      `M${p(t * 205, 640)}C${p(t * 250, 540)} ${p(t * 250, 380)} ${p(t * 190, 330)}C${p(t * 160, 310)} ${p(t * 150, 370)} ${p(t * 142, 400)}`,
    );
  const [lx, ly] = seen.at(140, -140, 410);
  const [rx, ry] = seen.at(140, 140, 410);
  const module = s > 0 ? seen.flat('M120 470 700L120 620 700L120 620 800L120 470 800Z') : '';
  return sheet(
    van(seen, { end: bareEnd(seen) + cradle(seen) + studs.map(([y, z]) => cradleNut(seen, y, z)).join('') }),
    module ? path(module, 'part') : '',
    drop(-1),
    drop(1),
    cable(`M${p(-430, 640)}C${p(-200, 655)} ${p(200, 655)} ${p(430, 640)}`),
    cable(`M${p(s * 430, 640)}C${p(s * 520, 640)} ${p(s * (s < 0 ? 570 : 550), 650)} ${plugX} ${plugY}`),
    ...[-360, -120, 120, 360].map((y) => {
      const [tx, ty] = seen.at(140, y, 648);
      return box(tx - 7, ty - 9, 14, 20, 'part', 2);
    }),
    place(lx, ly, smallPlug(0, 0, 0)),
    place(rx, ry, smallPlug(0, 0, 180)),
    place(plugX, plugY, smallPlug(0, 0, -90)),
  );
}

/** File names under `lamp-cradle/pictures/` and what is drawn in them. */
export const lampCradle: Readonly<Record<string, string>> = {
  arch: arch(),
  undertray: undertray(),
  'top-clip': topClip(),
  'cover-off': coverOff(),
  plug: plugRelease(),
  shutter: shutterOff(),
  trial: trial(),
  notch: notch(),
  bezel: bezel(),
  hang: hang(),
  'loom-halogen': loom('right'),
  'loom-led': loom('left'),
};
