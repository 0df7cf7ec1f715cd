/** The drawings of the flush sensors guide. Marks in `guide.md` are fractions of these 640 × 400 boxes. */
import { clipHead, gripHand, locator, pinchHand, smallPlug, tape } from './hardware.ts';
import {
  arrow,
  box,
  cable,
  centreLine,
  circle,
  ellipse,
  path,
  place,
  poly,
  sheet,
  turnArrow,
} from './pen.ts';

const LEFT_REAR = locator(592, 316, 0.15, 0.99);
const REAR = locator(592, 316, 0.5, 0.99);

const cross = (x: number, y: number, r: number): string =>
  path(`M${x - r} ${y}H${x + r}M${x} ${y - r}V${y + r}`, 'detail');

function curve(): string {
  return sheet(
    path('M620 74H230C120 78 60 116 52 190L60 290C70 322 120 334 200 336H620', 'part'),
    path('M620 110H236C140 112 92 140 84 196L90 290', 'detail'),
    path('M90 300C110 312 150 316 210 316H620', 'detail'),
    box(556, 116, 64, 60, 'back', 4),
    tape(96, 132, 458, 110),
    path('M110 158C140 148 170 146 210 146H540V228H210C176 228 146 232 118 240Z', 'part'),
    path('M240 146V228M384 146V228', 'detail'),
    circle(422, 190, 16, 'item'),
    cross(422, 190, 26),
    ellipse(176, 190, 14, 16, 'item'),
    cross(176, 190, 26),
    centreLine(540, 30, 540, 372),
    gripHand(130, 262, 20),
    gripHand(330, 256, 0, true),
    locator(8, 318, 0.15, 0.99),
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
    locator(8, 8, 0.15, 0.99),
  );
}

const coverSection = path('M230 30H246V140H230ZM230 260H246V370H230Z', 'part');

function holder(): string {
  return sheet(
    coverSection,
    box(248, 96, 10, 62, 'shade'),
    box(248, 242, 10, 62, 'shade'),
    path('M258 96H280V130H300V150H280V158H258ZM258 242H280V250H300V270H280V304H258Z', 'item'),
    arrow(420, 70, 420, 26, 16),
    arrow(370, 200, 312, 200, 18),
    place(300, 118, pinchHand(0, 0, 12)),
    path('M120 60V340', 'detail'),
    path('M120 60L112 74M120 60L128 74', 'detail'),
    LEFT_REAR,
  );
}

function sensor(): string {
  return sheet(
    coverSection,
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
    arrow(560, 200, 488, 200, 20),
    arrow(350, 88, 338, 116, 10),
    arrow(350, 312, 338, 284, 10),
    path('M229 120V280', 'hidden'),
    LEFT_REAR,
  );
}

function inside(): string {
  const xs = [110, 246, 394, 530];
  return sheet(
    path(
      'M30 150C60 110 120 98 200 98H440C520 98 580 110 610 150L596 300C572 330 520 338 440 340H200C120 338 68 330 44 300Z',
      'part',
    ),
    path('M60 170C90 140 140 130 210 130H430C500 130 550 140 580 170', 'detail'),
    path('M60 280H580', 'detail'),
    box(256, 290, 128, 36, 'back', 4),
    ...xs.map((x) => circle(x, 220, 24, 'back') + circle(x, 220, 15, 'part')),
    cable('M90 152C130 134 180 132 230 132H420C480 132 530 136 568 158C584 170 582 200 582 224'),
    ...xs.map((x) =>
      cable(`M${x - 14} ${x < 150 || x > 500 ? 144 : 132}C${x - 18} 170 ${x - 30} 190 ${x - 24} 210`),
    ),
    ...xs.map((x) => place(x - 22, 222, smallPlug(0, 0, 0))),
    ...[160, 200, 320, 390, 470].map((x) => clipHead(x, 132, 9)),
    place(582, 232, smallPlug(0, 0, 90)),
    REAR,
  );
}

function pocket(): string {
  return sheet(
    path('M30 40H520L560 90V360H30Z', 'back'),
    path('M70 70H440V330H70Z', 'part'),
    box(120, 110, 110, 88, 'item', 6),
    path('M134 128H216M134 142H216', 'detail'),
    place(174, 210, smallPlug(0, 0, -90)),
    cable('M174 232C176 270 230 196 300 196C380 196 400 250 460 250'),
    path('M470 90V350', 'bold'),
    path('M480 90V350', 'detail'),
    ellipse(474, 250, 16, 30, 'item'),
    ellipse(474, 250, 8, 14, 'shade'),
    cable('M482 250C520 250 540 290 570 330'),
    cable('M400 224C420 160 440 120 486 112'),
    box(486, 96, 44, 30, 'part', 4),
    place(486, 111, smallPlug(0, 0, 0)),
    path('M530 104H560M530 118H560', 'bold'),
    path('M560 60H616V190H560Z', 'shade'),
    turnArrow(474, 250, 52, 200, 320),
    LEFT_REAR,
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
};
