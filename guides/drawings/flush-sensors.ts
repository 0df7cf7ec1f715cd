/** The drawings of the flush sensors guide. Marks in `guide.md` are fractions of these 640 × 400 boxes. */
import { clipHead, smallPlug, tape } from './hardware.ts';
import {
  arrow,
  box,
  cable,
  centreLine,
  circle,
  closer,
  ellipse,
  path,
  place,
  poly,
  sheet,
  turnArrow,
} from './pen.ts';
import { coverSkin, lampSide, rearCover, wicketRear, wicketSide } from './wicket.ts';

const cross = (x: number, y: number, r: number): string =>
  path(`M${x - r} ${y}H${x + r}M${x} ${y - r}V${y + r}`, 'detail');

/** A trestle under a panel that is laid on it, from the front. */
const trestle = (x: number, y: number): string =>
  box(x - 60, y, 120, 14, 'back', 3) +
  path(
    `M${x - 40} ${y + 14}L${x - 62} 460H${x - 46}L${x - 28} ${y + 14}ZM${x + 40} ${y + 14}L${x + 62} 460H${x + 46}L${x + 28} ${y + 14}Z`,
    'back',
  );

/** The left half of the cover from behind, on its trestle, the paper strip on it. */
function curve(): string {
  return sheet(
    trestle(330, 297),
    closer(
      34,
      210,
      2.2,
      path('M92 240H270V344H124C92 342 70 330 70 306V272C70 252 78 240 92 240Z', 'shade') +
        rearCover() +
        box(268, 240, 104, 30, 'back', 4),
    ),
    tape(92, 116, 520, 98),
    path('M104 142C136 130 170 128 210 128H596V202H210C176 202 140 208 112 220Z', 'part'),
    path('M262 128V202M430 128V202', 'detail'),
    circle(470, 165, 15, 'item'),
    cross(470, 165, 26),
    ellipse(190, 168, 13, 15, 'item'),
    cross(190, 168, 26),
    centreLine(596, 20, 596, 380),
    arrow(560, 238, 440, 238, 14),
    arrow(330, 240, 210, 246, 14),
  );
}

function drillSquare(): string {
  const drill =
    path('M-16 -14H16V-58H-16Z', 'item') +
    path('M-16 -14L-12 -4L-8 -14L-4 -4L0 -14L4 -4L8 -14L12 -4L16 -14', 'bold') +
    path('M-3 -14V16L0 22L3 16V-14', 'part') +
    box(-9, -78, 18, 20, 'back') +
    path('M-22 -78H22L26 -150H-26Z', 'part') +
    path('M-26 -150H26V-196H-26ZM-20 -164H20M-20 -176H20', 'part');
  return sheet(
    path(
      'M40 330C140 236 240 210 330 210C430 210 520 240 610 330L600 342C512 256 428 226 330 226C240 226 146 250 50 342Z',
      'part',
    ),
    poly(
      [
        [210, 250],
        [340, 228],
        [350, 330],
        [224, 352],
      ],
      'back',
    ),
    path('M222 280L342 258M226 312L346 290', 'detail'),
    place(284, 218, drill, -7),
    arrow(206, 96, 214, 176, 16),
    `<g opacity="0.55">${place(470, 228, drill, -18)}</g>`,
    path('M400 70L560 190M560 70L400 190', 'bold'),
    path('M284 236L292 330', 'hidden'),
  );
}

/** The cover in section with the paint to the left; behind it the inside of the cover, its ribs and the place of the next ring. */
const coverSection = (): string =>
  path('M246 30H640V370H246Z', 'back') +
  path('M246 62H640M246 338H640M470 62V338', 'detail') +
  circle(566, 128, 40, 'part') +
  circle(566, 128, 24, 'shade') +
  path('M230 30H246V140H230ZM230 260H246V370H230Z', 'part') +
  path('M230 30C190 30 170 44 150 44M230 370C190 370 176 350 156 350', 'bold');

function holder(): string {
  return sheet(
    coverSection(),
    box(248, 96, 10, 62, 'shade'),
    box(248, 242, 10, 62, 'shade'),
    path('M258 96H280V130H300V150H280V158H258ZM258 242H280V250H300V270H280V304H258Z', 'item'),
    path('M296 180V226M296 180L288 194M296 180L304 194', 'bold'),
    arrow(392, 116, 306, 116, 18),
    arrow(392, 284, 306, 284, 18),
  );
}

function sensor(): string {
  return sheet(
    coverSection(),
    box(248, 96, 10, 62, 'shade'),
    box(248, 242, 10, 62, 'shade'),
    path(
      'M258 96H280V118H330V138L318 144V132H280V158H258ZM258 242H280V268H318V256L330 262V282H280V304H258Z',
      'part',
    ),
    path('M232 146H300V134H316V266H300V254H232Z', 'item'),
    box(316, 164, 120, 72, 'item', 6),
    path('M336 164V236M356 164V236', 'detail'),
    path('M436 180H470V220H436Z', 'part'),
    arrow(570, 200, 488, 200, 20),
    arrow(350, 84, 336, 112, 10),
    arrow(350, 316, 336, 288, 10),
    path('M229 120V280', 'hidden'),
  );
}

/** The inside of the cover on its trestles, the vehicle's left on the right. */
function inside(): string {
  const xs = [120, 252, 388, 520];
  return sheet(
    place(
      0,
      -56,
      [
        trestle(150, 330),
        trestle(490, 330),
        place(-46, -172, path(coverSkin, 'part'), 0, [1.145, 1.45]),
        path(
          'M64 210C60 190 70 176 90 176H550C570 176 580 190 576 210V296C560 312 540 316 510 316H130C100 316 80 312 64 296Z',
          'back',
        ),
        path('M70 194H570M66 288H574M200 176V316M320 176V262M440 176V316', 'detail'),
        box(262, 262, 116, 40, 'shade', 4),
        ...xs.map((x) => circle(x, 240, 24, 'part') + circle(x, 240, 15, 'shade')),
        cable('M96 200C130 186 180 184 230 184H420C480 184 530 186 572 200C596 208 604 230 602 256'),
        ...xs.map((x) =>
          cable(`M${x - 14} ${x < 150 || x > 500 ? 192 : 184}C${x - 18} 206 ${x - 30} 216 ${x - 24} 230`),
        ),
        ...xs.map((x) => place(x - 22, 242, smallPlug(0, 0, 0))),
        ...[170, 214, 320, 424, 476].map((x) => clipHead(x, 184, 9)),
        place(602, 264, smallPlug(0, 0, 90)),
      ].join(''),
    ),
  );
}

/** The left rear of the car from the side, its wall cut away: the module in the side pocket, the loom to the lamp. */
function pocket(): string {
  const [x, y, scale] = [430, 182, 3.3] as const;
  const cut = 'M448 196H520L548 204L560 250H548C540 262 520 256 494 258C468 256 452 262 440 252Z';
  return sheet(
    closer(
      x,
      y,
      scale,
      wicketSide(
        path(cut, 'back') + path(lampSide, 'part') + path('M448 208H550M470 196V256M556 250V206', 'detail'),
      ),
    ),
    path('M424 78V232', 'bold'),
    path('M432 74V232', 'detail'),
    box(150, 96, 104, 84, 'item', 6),
    path('M162 112H242M162 126H242', 'detail'),
    place(202, 192, smallPlug(0, 0, -90)),
    cable('M202 212C204 240 250 216 300 206C350 196 380 204 424 204'),
    ellipse(428, 204, 14, 26, 'item'),
    ellipse(428, 204, 7, 12, 'shade'),
    cable('M436 204C470 206 500 230 516 300'),
    cable('M378 200C390 170 396 136 440 120'),
    box(446, 104, 40, 28, 'part', 4),
    place(446, 118, smallPlug(0, 0, 0)),
    path('M486 112H520M486 124H520', 'bold'),
    turnArrow(428, 204, 46, 200, 320),
  );
}

/** Into the opening of the left tail lamp, from behind: the joint under its bracket, the pick below it. */
function join(): string {
  return sheet(
    closer(62, 134, 3.1, wicketRear({ leftLamp: false })),
    path('M212 96H250V116H232V150H212Z', 'part'),
    circle(240, 106, 5, 'shade'),
    place(198, 196, smallPlug(0, 0, -90), 0, 1.5),
    place(198, 190, smallPlug(0, 0, 90), 0, 1.5),
    cable('M198 168C196 120 170 96 140 84'),
    cable('M198 220C196 260 176 300 170 330'),
    place(
      236,
      224,
      path('M0 0L10 6L34 66L26 70L2 10Z', 'part') + path('M26 70L34 66L66 140C68 150 52 156 48 148Z', 'part'),
    ),
    arrow(262, 206, 262, 148, 14),
  );
}

/** File names under the guide's `pictures/`. */
export const flushSensors: Readonly<Record<string, string>> = {
  curve: curve(),
  drill: drillSquare(),
  holder: holder(),
  sensor: sensor(),
  inside: inside(),
  pocket: pocket(),
  join: join(),
};
