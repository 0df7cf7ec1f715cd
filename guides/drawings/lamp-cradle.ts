/** The drawings of the lamp cradle guide. Marks in `guide.md` are fractions of these 640 × 400 boxes. */
import {
  boltSide,
  clipHead,
  gripHand,
  hatch,
  hexHead,
  lampFront,
  lifter,
  lobeHead,
  locator,
  nut,
  palmHand,
  pinchHand,
  plug,
  smallPlug,
  tape,
} from './hardware.ts';
import {
  accentLine,
  arrow,
  box,
  cable,
  centreLine,
  circle,
  ellipse,
  path,
  place,
  sheet,
  turnArrow,
  way,
} from './pen.ts';

const FRONT = locator(590, 316, 0.5, 0.02);

/** The front of the left arch twice: liner on, then folded back so that the arch screw can be reached. */
function arch(): string {
  const cover = 'M12 84H150L176 96C150 150 142 250 150 356H12Z';
  const wing = 'M12 84V40H290V112A150 150 0 0 0 176 96L150 84Z';
  const tyre = 'M290 176A150 150 0 0 0 224 356H290Z';
  const common =
    path(wing, 'back') +
    path(cover, 'part') +
    path('M12 180H146M12 284H144', 'detail') +
    path(tyre, 'back') +
    path('M290 176A150 150 0 0 0 224 356', 'bold');
  const screws: readonly (readonly [number, number])[] = [
    [180, 138],
    [170, 184],
    [166, 230],
  ];
  const clips: readonly (readonly [number, number])[] = [
    [167, 280],
    [169, 322],
  ];
  return sheet(
    path('M320 30V296', 'detail'),
    place(
      8,
      0,
      common +
        path(
          'M176 96C150 150 142 250 150 356H190C184 250 190 160 226 120L290 128V112A150 150 0 0 0 176 96Z',
          'part',
        ) +
        screws.map(([x, y]) => lobeHead(x, y, 11)).join('') +
        clips.map(([x, y]) => clipHead(x, y, 11)).join(''),
    ),
    place(
      332,
      0,
      common +
        path('M176 96C150 150 142 250 150 356H166C160 250 166 150 190 100Z', 'shade') +
        path(
          'M290 112A150 150 0 0 0 240 98C226 150 214 190 206 252C216 262 232 258 236 246C242 200 256 160 290 140Z',
          'part',
        ) +
        path('M206 252C208 240 222 236 236 246', 'detail') +
        place(176, 172, boltSide(50, 11), 180) +
        way(({ arrow, turn }) => turn(150, 330, 84, 290, 332) + arrow(176, 204, 176, 254, 12)),
    ),
    locator(302, 306, 0.08, 0.14),
  );
}

function undertray(): string {
  return sheet(
    box(60, 36, 520, 44, 'back', 16),
    path('M90 70H550L520 360C520 372 512 378 500 378H140C128 378 120 372 120 360Z', 'part'),
    path('M150 130H490L470 340H170Z', 'detail'),
    path('M210 160H430M206 190H434M214 310H426', 'detail'),
    ...[118, 198, 278, 362, 442, 522].map((x) => lobeHead(x, 90, 12)),
    hexHead(128, 200, 12),
    hexHead(512, 200, 12),
    hexHead(144, 340, 12),
    hexHead(496, 340, 12),
    place(
      320,
      250,
      way(({ arrow }) => arrow(0, -40, 0, 40, 20)),
    ),
    locator(20, 300, 0.5, 0.08),
  );
}

function topClip(): string {
  const panels = (x: number): string =>
    box(x - 85, 190, 66, 14, 'part') +
    box(x + 19, 190, 66, 14, 'part') +
    box(x - 85, 204, 66, 14, 'back') +
    box(x + 19, 204, 66, 14, 'back');
  const body = (x: number, y: number, spread: number): string =>
    path(
      `M${x - 40} ${y - 12}H${x + 40}V${y}H${x + 16}L${x + 16 + spread} ${y + 62}L${x + 8} ${y + 84}L${x + 5} ${y + 4}H${x - 5}L${x - 8} ${y + 84}L${x - 16 - spread} ${y + 62}L${x - 16} ${y}H${x - 40}Z`,
      'item',
    );
  const pin = (x: number, y: number): string =>
    path(
      `M${x - 26} ${y - 12}H${x + 26}V${y - 2}H${x + 6}L${x + 5} ${y + 62}L${x} ${y + 70}L${x - 5} ${y + 62}L${x - 6} ${y - 2}H${x - 26}Z`,
      'part',
    );
  return sheet(
    path('M213 50V330M427 50V330', 'detail'),
    panels(108),
    body(108, 190, 12),
    pin(108, 178),
    panels(320),
    body(320, 190, 4),
    pin(320, 146),
    place(298, 146, lifter(0, 0), 196),
    panels(532),
    body(532, 132, 0),
    pin(532, 90),
    way(({ arrow }) => arrow(372, 176, 372, 116) + arrow(590, 176, 590, 92, 14)),
    locator(26, 300, 0.5, 0.03),
  );
}

function coverOff(): string {
  const cover =
    'M60 226C70 196 120 180 200 176H440C520 180 570 196 580 226L572 308C560 338 520 350 440 352H200C120 350 80 338 68 308Z';
  return sheet(
    path('M130 14H510L560 66H80Z', 'back'),
    box(110, 62, 420, 48, 'back', 4),
    path('M120 74H520', 'detail'),
    ellipse(140, 50, 34, 18, 'part'),
    ellipse(500, 50, 34, 18, 'part'),
    box(564, 74, 28, 84, 'shade', 4),
    box(48, 74, 28, 84, 'shade', 4),
    path('M64 160L66 214M576 160L574 214', 'hidden'),
    cable('M320 92C318 112 330 120 326 132'),
    path(cover, 'part'),
    place(326, 150, smallPlug(0, 0, 90)),
    path('M180 232H460L440 280H200Z', 'shade'),
    path('M188 248H454M195 264H446', 'detail'),
    box(278, 298, 84, 28, 'part', 3),
    ellipse(128, 276, 24, 20, 'back'),
    ellipse(512, 276, 24, 20, 'back'),
    gripHand(62, 282, 60),
    gripHand(578, 282, -60, true),
    way(({ arrow }) => arrow(216, 340, 200, 394, 20) + arrow(424, 340, 440, 394, 20)),
  );
}

function plugRelease(): string {
  return sheet(
    path('M420 60C520 60 600 110 604 200C600 290 520 340 420 340Z', 'back'),
    path('M420 110V290', 'detail'),
    box(386, 158, 44, 84, 'part', 4),
    place(366, 200, plug(2.6)),
    place(288, 134, pinchHand(0, 0, 235)),
    way(({ arrow }) => arrow(300, 292, 200, 292, 18)),
    arrow(330, 70, 312, 124, 12),
    locator(24, 300, 0.14, 0.02),
  );
}

function shutter(): string {
  const blades = [0, 1, 2, 3, 4].map((i) => {
    const y = 122 + i * 38;
    return (
      path(`M130 ${y}H500L508 ${y + 12}L500 ${y + 24}H130L122 ${y + 12}Z`, 'part') +
      path(`M130 ${y + 12}H500`, 'detail')
    );
  });
  return sheet(
    box(30, 60, 580, 36, 'back', 6),
    box(60, 330, 510, 30, 'back', 6),
    path('M70 76H570V336H70ZM112 112V316H520V112Z', 'part'),
    ...blades,
    hexHead(90, 96, 13),
    hexHead(550, 96, 13),
    hexHead(90, 316, 13),
    hexHead(550, 316, 13),
    box(528, 160, 44, 92, 'back', 6),
    path('M528 190H572M528 222H572', 'detail'),
    place(572, 196, smallPlug(0, 0, 180)),
    cable('M592 196C612 200 612 240 612 284'),
    way(({ arrow }) => arrow(286, 348, 262, 392, 16) + arrow(354, 348, 378, 392, 16)),
    FRONT,
  );
}

function notch(): string {
  const outline = 'M180 320V206A18 18 0 0 1 198 188H442A18 18 0 0 1 460 206V320';
  return sheet(
    path('M20 90C200 60 440 60 620 90V310C440 322 200 322 20 310Z', 'part'),
    path('M20 128C200 100 440 100 620 128', 'detail'),
    box(256, 96, 128, 40, 'back', 4),
    tape(60, 176, 520, 144),
    path('M20 310C200 322 440 322 620 310', 'bold'),
    hatch(184, 192, 272, 126, 18),
    accentLine(outline, false, 4),
    centreLine(320, 50, 320, 384),
    circle(128, 236, 10, 'item'),
    path('M112 236H144M128 220V252', 'detail'),
    circle(512, 236, 10, 'item'),
    path('M496 236H528M512 220V252', 'detail'),
    FRONT,
  );
}

function bezel(): string {
  return sheet(
    path(
      'M20 70C200 44 440 44 620 70V300H470V196A18 18 0 0 0 452 178H188A18 18 0 0 0 170 196V300H20Z',
      'part',
    ),
    path('M20 110C200 84 440 84 620 110', 'detail'),
    accentLine('M170 300V196A18 18 0 0 1 188 178H452A18 18 0 0 1 470 196V300', false, 7),
    path(
      'M120 370V170A26 26 0 0 1 146 144H494A26 26 0 0 1 520 170V370H492V196A22 22 0 0 0 470 174H170A22 22 0 0 0 148 196V370Z',
      'item',
    ),
    lobeHead(134, 224, 11),
    lobeHead(506, 224, 11),
    path('M134 238V262M506 238V262', 'hidden'),
    arrow(240, 300, 240, 220, 18),
    arrow(400, 300, 400, 220, 18),
    place(134, 224, place(-66, 66, arrow(0, 0, 44, -44, 10))),
    place(506, 224, place(66, 66, arrow(0, 0, -44, -44, 10))),
    FRONT,
  );
}

function beam(y: number): string {
  return (
    path(
      `M30 ${y}C200 ${y - 22} 440 ${y - 22} 610 ${y}V${y + 74}C440 ${y + 52} 200 ${y + 52} 30 ${y + 74}Z`,
      'back',
    ) +
    box(26, y - 4, 34, 82, 'shade', 4) +
    box(580, y - 4, 34, 82, 'shade', 4)
  );
}

function hang(): string {
  return sheet(
    beam(70),
    path('M160 74H240V176H400V74H480V316H160Z', 'part'),
    path('M240 176H400M176 300H464', 'detail'),
    lampFront(256, 246, 46),
    lampFront(384, 246, 46),
    nut(200, 96, 15),
    nut(440, 96, 15),
    nut(440, 136, 15),
    circle(200, 136, 6, 'shade'),
    nut(132, 176, 15),
    path('M192 138L146 170', 'hidden'),
    turnArrow(132, 176, 30, 190, 300),
    place(122, 186, pinchHand(0, 0, 128)),
    palmHand(236, 330, 0, true),
    palmHand(404, 330),
    arrow(320, 372, 320, 312, 18),
    FRONT,
  );
}

function loom(side: 'right' | 'left'): string {
  const x = side === 'right' ? 108 : 532;
  const to = side === 'right' ? 'M150 146C110 140 100 140 108 110' : 'M490 146C530 140 540 140 532 110';
  return sheet(
    ellipse(108, 82, 76, 38, 'back'),
    ellipse(532, 82, 76, 38, 'back'),
    ellipse(108, 82, 44, 24, 'part'),
    ellipse(532, 82, 44, 24, 'part'),
    side === 'left' ? box(500, 64, 64, 42, 'part', 4) + path('M508 76H556M508 88H556', 'detail') : '',
    beam(156),
    path('M180 176H250V226H390V176H460V330H180Z', 'part'),
    ...[
      [206, 190],
      [206, 212],
      [434, 190],
      [434, 212],
    ].map(([px = 0, py = 0]) => nut(px, py, 11)),
    lampFront(262, 290, 38),
    lampFront(378, 290, 38),
    cable(`M150 148C240 138 400 138 490 148`),
    cable(to),
    cable('M224 144C214 200 196 260 214 274C224 280 226 268 222 262'),
    cable('M416 144C426 200 444 260 426 274C416 280 414 268 418 262'),
    ...[190, 280, 360, 450].map((t) => box(t - 8, 134, 16, 20, 'part', 2)),
    place(222, 262, smallPlug(0, 0, 0)),
    place(418, 262, smallPlug(0, 0, 180)),
    place(x, 110, smallPlug(0, 0, -90)),
    FRONT,
  );
}

/** File names under `lamp-cradle/pictures/` and what is drawn in them. */
export const lampCradle: Readonly<Record<string, string>> = {
  arch: arch(),
  undertray: undertray(),
  'top-clip': topClip(),
  'cover-off': coverOff(),
  plug: plugRelease(),
  shutter: shutter(),
  notch: notch(),
  bezel: bezel(),
  hang: hang(),
  'loom-halogen': loom('right'),
  'loom-led': loom('left'),
};
