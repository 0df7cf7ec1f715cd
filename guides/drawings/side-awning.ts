/** The drawings of the side awning guide. Marks in `guide.md` are fractions of these 640 × 400 boxes. */
import { type Camera, camera, hoop } from './camera.ts';
import { face, scenery, van } from './dray.ts';
import { boltSide } from './hardware.ts';
import { arrow, box, circle, GREY, pane, path, place, SHADE, sheet, TINT, turnArrow, window } from './pen.ts';

/** The right-hand side with its sliding door, the nose to the right; a point of the roof rail stands in the box. */
const right = (scale: number, x: number, stands: readonly [number, number]): Camera =>
  camera({ round: 56, above: 9, scale, point: [x, 880, 2370], stands, right: true });

/** Where the three brackets sit: millimetres along the van, from the gap behind the front door. */
const BRACKETS = [2500, 3100, 3700] as const;

const strip = (from: number, to: number, low: number, high: number): string =>
  `M${from} 892 ${low}L${to} 892 ${low}L${to} 886 ${high}L${from} 886 ${high}Z`;

const holes = (v: Camera, x: number, r: number): string =>
  face(v, hoop(x, 890, 2345, r, 'side') + hoop(x, 888, 2395, r, 'side'), SHADE);

function rail(): string {
  const seen = right(0.27, 3000, [310, 130]);
  const joints = [2700, 3000, 3300, 3600].map((x) => `M${x} 892 2318L${x} 886 2422`).join('');
  const crosses = BRACKETS.flatMap((x) =>
    [2345, 2395].map((z) => `M${x - 26} 890 ${z}L${x + 26} 890 ${z}M${x} 890 ${z - 22}L${x} 890 ${z + 22}`),
  ).join('');
  const datum = seen.flat('M2350 884 2300L2350 980 1250L2350 980 700');
  return sheet(
    van(seen, { slides: true }),
    scenery(
      face(seen, strip(2380, 3900, 2295, 2440), '#f3ecd2'),
      face(seen, strip(2420, 3820, 2312, 2426), '#fff'),
      face(seen, joints, 'none'),
      ...BRACKETS.map((x) =>
        face(seen, hoop(x, 890, 2345, 16, 'side') + hoop(x, 888, 2395, 16, 'side'), TINT),
      ),
      face(seen, crosses, 'none'),
    ),
    `<path d="${datum}" fill="none" stroke="#0b6e5f" stroke-width="4"/>`,
  );
}

/** The upper edge of the right-hand side, as a band across the top of a drawing. */
const band = (content: (v: Camera) => string): string => {
  const seen = right(0.2, 3100, [320, 60]);
  return (
    window('edge', pane(0, 0, 640, 138), van(seen, { slides: true }) + scenery(content(seen))) +
    path('M0 138H640', 'bold')
  );
};

/**
 * The roof edge in section, looked at from behind, outside on the right: skin, rain channel, the rail's inner wall and
 * the sliding door below. The face that is drilled stands at x 166.
 */
const edge = (gaps: readonly number[] = []): string =>
  `<path d="M-60 40C120 30 150 44 160 70L166 120V400H-60Z" fill="#eff2f1"/>` +
  path('M-60 30H40C120 30 150 44 160 70L166 120V330H150V126L144 78C136 60 110 48 40 48H-60Z', 'shade') +
  path('M144 84C120 92 96 100 92 128V250C94 284 120 312 150 316', 'bold') +
  path('M160 70C180 66 200 72 204 84', 'bold') +
  path('M150 346H178V400H150Z', 'back') +
  path('M-60 78C10 74 50 90 84 120', 'detail') +
  gaps.map((y) => `<path d="M146 ${y - 7}H170V${y + 7}H146Z" fill="#fff"/>`).join('');

/** What runs behind the rail, well clear of the drill. */
const wires = circle(66, 180, 9, 'item') + circle(76, 198, 9, 'item');

function drillTwice(): string {
  const tool = (bit: string): string =>
    bit +
    path('M96 -18L122 -26V26L96 18Z', 'back') +
    path('M122 -30H320V30H122Z', 'part') +
    path('M140 -30V30M156 -30V30', 'detail');
  const thin = tool(
    path('M-14 0L-4 -4H96V4H-4Z', 'part') +
      box(34, -13, 30, 26, 'item', 3) +
      path('M44 -13V13M54 -13V13', 'detail'),
  );
  const thick = tool(
    path('M-18 0L-4 -11H96V11H-4Z', 'item') +
      path('M10 -11L24 11M32 -11L46 11M54 -11L68 11M76 -11L90 11', 'detail'),
  );
  return sheet(
    window(
      'pilot',
      pane(0, 0, 316, 400),
      place(-40, 0, edge([240]) + wires) + place(106, 240, thin) + arrow(300, 176, 236, 176, 14),
    ),
    window(
      'full',
      pane(324, 0, 316, 400),
      place(-40, 0, edge([240]) + wires) + place(106, 240, thick) + arrow(300, 176, 236, 176, 14),
      324,
    ),
    path('M320 0V400', 'bold'),
  );
}

function rivetNut(): string {
  const [top, low] = [256, 270];
  const skin = (x: number): string => box(x - 90, top, 64, 14, 'back') + box(x + 26, top, 64, 14, 'back');
  const collar = (x: number): string => box(x - 40, top - 12, 80, 12, 'item', 3);
  const threads = (x: number, from: number, to: number): string =>
    path(
      Array.from(
        { length: Math.floor((to - from) / 8) },
        (_, i) => `M${x - 12} ${from + i * 8}L${x + 12} ${from + 4 + i * 8}`,
      ).join(''),
      'detail',
    );
  return sheet(
    band((v) => BRACKETS.map((x) => holes(v, x, 22)).join('')),
    path('M213 150V392M427 150V392', 'detail'),
    skin(106),
    path(`M80 ${top - 6}H132V380H80Z`, 'item'),
    box(94, top, 24, 124, 'part'),
    threads(106, 322, 380),
    collar(106),
    arrow(106, 156, 106, 232, 14),
    skin(320),
    path(`M294 ${top - 6}H346V378H294Z`, 'item'),
    box(308, 160, 24, 226, 'part', 2),
    threads(320, 164, 384),
    collar(320),
    box(284, 204, 72, 38, 'part', 4),
    path('M284 218H356M284 230H356', 'detail'),
    arrow(384, 236, 384, 166, 14),
    skin(534),
    path(
      `M508 ${top - 6}H560V${low}C590 276 590 302 560 308V350H508V308C478 302 478 276 508 ${low}Z`,
      'item',
    ),
    box(522, top, 24, 94, 'part'),
    threads(534, 308, 350),
    collar(534),
  );
}

/** A bracket on the rail in section: plate, bead of sealant, two bolts, and the trough that is open to the top. */
const onRail =
  path('M168 116H186V330H168Z', 'shade') +
  path('M188 80C204 84 214 92 216 106V200H404V150H432V214C432 232 422 240 406 240H324L216 320H188Z', 'item') +
  place(216, 152, boltSide(70, 14), 90) +
  place(216, 250, boltSide(70, 14), 90) +
  path('M188 132V172M188 230V270', 'bold');

function bracket(): string {
  return sheet(
    edge(),
    onRail,
    turnArrow(232, 152, 34, 210, 330),
    window('where', pane(430, 256, 200, 136), overall(0.034, 512, 304)),
    box(430, 256, 200, 136, 'bold'),
    path('M430 310L330 244', 'detail'),
  );
}

/** The right-hand side of the van with the three brackets on its rail. */
function overall(scale: number, x: number, y: number): string {
  const seen = right(scale, 3000, [x, y]);
  return van(seen, { slides: true }) + scenery(...BRACKETS.map((at) => bracketOn(seen, at)));
}

/** A bracket as it stands off the rail. */
const bracketOn = (v: Camera, x: number): string =>
  face(v, `M${x} 892 2300L${x} 1060 2400L${x} 1060 2460L${x} 892 2460Z`, TINT) +
  face(v, `M${x - 40} 1060 2400L${x + 40} 1060 2400L${x + 40} 1060 2460L${x - 40} 1060 2460Z`, TINT) +
  face(v, `M${x - 40} 892 2460L${x + 40} 892 2460L${x + 40} 1060 2460L${x - 40} 1060 2460Z`, '#fff');

/** The rolled awning before the brackets: its front end down by some millimetres, all of it out by others. */
function tube(v: Camera, down: number, out: number): string {
  const [rear, nose] = [4650, 1650];
  const y = 1060 + out;
  const [low, high] = [2400, 2520];
  return (
    face(
      v,
      `M${nose} ${y} ${low - down}L${rear} ${y} ${low}L${rear} ${y} ${high}L${nose} ${y} ${high - down}Z`,
      TINT,
    ) +
    face(
      v,
      `M${nose} ${y} ${low + 40 - down}L${rear} ${y} ${low + 40}M${nose} ${y} ${low + 80 - down}L${rear} ${y} ${low + 80}`,
      'none',
    ) +
    face(
      v,
      `M${nose} ${y} ${low - down}L${nose} ${y - 110} ${low - down}L${nose} ${y - 110} ${high - down}L${nose} ${y} ${high - down}Z`,
      SHADE,
    ) +
    face(
      v,
      `M${nose} ${y} ${high - down}L${nose} ${y - 110} ${high - down}L${rear} ${y - 110} ${high}L${rear} ${y} ${high}Z`,
      '#fff',
    )
  );
}

/** A step platform beside the van. */
const platform = (v: Camera, x: number): string =>
  face(
    v,
    `M${x} 1900 0L${x} 1850 600M${x + 700} 1900 0L${x + 700} 1850 600M${x} 1450 0L${x} 1450 600M${x + 700} 1450 0L${x + 700} 1450 600`,
    'none',
  ) +
  face(v, `M${x} 1450 600L${x + 700} 1450 600L${x + 700} 1850 600L${x} 1850 600Z`, GREY) +
  face(v, `M${x} 1880 300L${x + 700} 1880 300L${x + 700} 2050 300L${x} 2050 300Z`, GREY);

function lift(): string {
  const seen = right(0.106, 2900, [284, 104]);
  const [ax, ay] = seen.at(4500, 1460, 2420);
  const [bx, by] = seen.at(1900, 1460, 1990);
  return sheet(
    van(seen, { slides: true }),
    scenery(
      ...BRACKETS.map((x) => bracketOn(seen, x)),
      platform(seen, 1700),
      platform(seen, 3700),
      tube(seen, 380, 380),
    ),
    arrow(ax, ay - 14, ax, ay - 74, 16),
    arrow(bx, by + 46, bx, by + 14, 10),
  );
}

function lock(): string {
  return sheet(
    edge(),
    onRail,
    path('M452 40H590C620 40 632 60 632 90V200C632 240 610 256 580 256H470C458 256 452 250 452 240Z', 'face'),
    path('M466 60C560 60 612 70 612 134C612 206 560 240 466 236', 'detail'),
    circle(540, 150, 56, 'back'),
    circle(540, 150, 40, 'face'),
    path('M452 96H346C336 96 330 102 330 112V198H394V136H452Z', 'part'),
    path('M354 240V170M370 240V170', 'hidden'),
    place(362, 262, boltSide(70, 13), 180),
    arrow(362, 364, 362, 296, 16),
  );
}

/** The rail along the van, opened: the lance goes in by the plug hole and waxes round the rivet nuts. */
function railWax(): string {
  return sheet(
    band(
      (v) => face(v, hoop(4500, 890, 2370, 40, 'side'), TINT) + BRACKETS.map((x) => bracketOn(v, x)).join(''),
    ),
    place(
      0,
      110,
      path('M60 90H600C620 90 640 96 640 110V250H60Z', 'shade') +
        path('M60 106H640V232H60Z', 'face') +
        [260, 400, 540]
          .map(
            (x) =>
              box(x - 44, 40, 88, 48, 'item', 3) +
              box(x - 14, 88, 28, 6, 'part') +
              box(x - 10, 106, 20, 44, 'item', 2) +
              path(
                `M${x - 10} 116L${x + 10} 120M${x - 10} 126L${x + 10} 130M${x - 10} 136L${x + 10} 140`,
                'detail',
              ),
          )
          .join('') +
        circle(60, 170, 28, 'shade') +
        path('M-10 290C20 280 20 196 60 172C150 166 200 176 320 176', 'bold') +
        circle(328, 176, 8, 'item') +
        [-60, -30, 0, 30, 60, 120, 150, 210, 240]
          .map((turn) => place(328, 176, path('M14 0H38', 'detail'), turn))
          .join('') +
        place(150, 268, circle(0, 0, 20, 'item') + circle(0, 0, 10, 'part')) +
        arrow(128, 256, 90, 206, 12),
    ),
  );
}

/** File names under `side-awning/pictures/`. */
export const sideAwning: Readonly<Record<string, string>> = {
  rail: rail(),
  drill: drillTwice(),
  'rivet-nut': rivetNut(),
  bracket: bracket(),
  lift: lift(),
  lock: lock(),
  'rail-wax': railWax(),
};
