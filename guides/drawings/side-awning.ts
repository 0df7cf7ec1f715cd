/** The drawings of the side awning guide. Marks in `guide.md` are fractions of these 640 × 400 boxes. */
import { boltSide, gripHand, locator, palmHand, pinchHand, tape } from './hardware.ts';
import { arrow, box, circle, path, place, sheet, turnArrow } from './pen.ts';

const RIGHT = locator(8, 318, 0.98, 0.55);

/** The van from its right-hand side, front to the right, from the roof down to `low`. */
const vanRight = (low: number): string =>
  path(`M40 ${low}V96C40 76 50 66 70 66H440C470 66 490 76 506 100L560 190L612 214V${low}`, 'part') +
  path('M40 84H452', 'detail') +
  path(`M416 110V${low}M512 190V${low}`, 'detail') +
  path('M424 122H482L520 190H424Z', 'back') +
  path(`M96 110H404V${low}M96 110V${low}M256 110V${low}`, 'detail');

function rail(): string {
  const pair = (x: number): string =>
    circle(x, 152, 9, 'item') +
    circle(x, 180, 9, 'item') +
    path(`M${x - 14} 152H${x + 14}M${x - 14} 180H${x + 14}M${x} 138V194`, 'detail');
  return sheet(
    path('M20 110C20 90 30 76 60 72H480C520 74 548 96 570 140L620 230V372', 'part'),
    path('M20 118H492C520 120 540 140 556 168', 'bold'),
    path('M20 126H490C514 128 534 146 548 172', 'detail'),
    path('M512 126V372M520 128V372', 'bold'),
    path('M530 176L600 290H530Z', 'back'),
    path('M60 220H490V372', 'detail'),
    tape(96, 130, 400, 72),
    box(110, 138, 372, 56, 'part'),
    path('M184 138V194M258 138V194M334 138V194M408 138V194', 'detail'),
    pair(136),
    pair(296),
    pair(456),
    gripHand(104, 208, 30),
    gripHand(420, 214, -10, true),
    RIGHT,
  );
}

function drillTwice(): string {
  const rail = (hole: number): string =>
    box(30, 232, 110 - hole / 2, 14, 'back') + box(140 + hole / 2, 232, 130 - hole / 2, 14, 'back');
  const chuck =
    path('M-26 -190H26V-120H-26Z', 'part') +
    path('M-26 -170H26M-26 -150H26', 'detail') +
    path('M-18 -120H18L12 -96H-12Z', 'back');
  return sheet(
    path('M320 40V360', 'detail'),
    rail(8) +
      place(
        140,
        250,
        chuck +
          path('M-4 -96V4L0 12L4 4V-96Z', 'part') +
          box(-14, -60, 28, 30, 'item', 3) +
          path('M-14 -50H14M-14 -40H14', 'detail'),
      ),
    arrow(200, 90, 200, 170, 16),
    place(
      300,
      0,
      rail(26) +
        place(
          140,
          254,
          chuck +
            path('M-12 -96V-4L0 10L12 -4V-96Z', 'item') +
            path('M-12 -80L12 -66M-12 -56L12 -42M-12 -32L12 -18', 'detail'),
        ),
    ),
    arrow(500, 90, 500, 170, 16),
    path('M40 330C120 316 200 344 290 330', 'bold'),
    path('M350 330C420 316 520 344 610 330', 'bold'),
    path('M140 256V318M440 266V318', 'hidden'),
    locator(596, 8, 0.98, 0.55),
  );
}

function rivetNut(): string {
  const skin = (x: number): string => box(x - 90, 176, 64, 14, 'back') + box(x + 26, 176, 64, 14, 'back');
  const collar = (x: number): string => box(x - 40, 164, 80, 12, 'item', 3);
  const threads = (x: number, top: number, low: number): string =>
    Array.from({ length: Math.floor((low - top) / 8) }, (_, i) =>
      path(`M${x - 12} ${top + i * 8}L${x + 12} ${top + 4 + i * 8}`, 'detail'),
    ).join('');
  const mandrel = (x: number, low: number): string =>
    box(x - 12, 60, 24, low - 60, 'part', 2) + threads(x, 70, low);
  return sheet(
    path('M213 40V340M427 40V340', 'detail'),
    skin(106),
    path('M80 170H132V300H80Z', 'item'),
    box(94, 176, 24, 124, 'part'),
    threads(106, 240, 300),
    collar(106),
    arrow(106, 40, 106, 140, 16),
    skin(320),
    path('M294 170H346V300H294Z', 'item'),
    mandrel(320, 310),
    collar(320),
    box(284, 120, 72, 40, 'part', 4),
    path('M284 134H356M284 146H356', 'detail'),
    arrow(376, 110, 376, 50, 14),
    skin(534),
    path('M508 170H560V190C590 196 590 222 560 228V270H508V228C478 222 478 196 508 190Z', 'item'),
    box(522, 176, 24, 94, 'part'),
    threads(534, 228, 270),
    collar(534),
    locator(596, 8, 0.98, 0.55),
  );
}

function bracket(): string {
  return sheet(
    path('M40 30C120 30 150 44 160 70L166 120V372H150V126L144 78C136 60 110 48 40 48Z', 'back'),
    path('M160 70C180 66 200 72 204 84', 'bold'),
    path('M168 116H186V330H168Z', 'shade'),
    path(
      'M188 80C204 84 214 92 216 106H420C450 106 462 126 462 150C462 180 440 196 412 196H392V172H410C424 172 430 164 430 152C430 142 424 136 412 136H330L216 320H188Z',
      'item',
    ),
    place(216, 152, boltSide(70, 14), 90),
    place(216, 240, boltSide(70, 14), 90),
    path('M188 132V172M188 220V260', 'bold'),
    place(262, 158, pinchHand(0, 0, 20)),
    turnArrow(232, 152, 34, 210, 330),
    RIGHT,
  );
}

function lift(): string {
  return sheet(
    vanRight(372),
    ...[100, 248, 396].map((x) => path(`M${x - 12} 78H${x + 12}V112H${x + 4}V92H${x - 12}Z`, 'item')),
    place(246, 150, box(-196, -14, 392, 28, 'item', 10) + path('M-186 -4H186M-186 5H186', 'detail'), 5),
    palmHand(120, 160, 0, true),
    palmHand(152, 162),
    palmHand(350, 182, 0, true),
    palmHand(382, 184),
    arrow(66, 112, 66, 44, 18),
    box(70, 330, 130, 12, 'back', 3),
    path('M84 342V390M186 342V390', 'bold'),
    box(310, 330, 130, 12, 'back', 3),
    path('M324 342V390M426 342V390', 'bold'),
    locator(596, 8, 0.98, 0.55),
  );
}

function lock(): string {
  return sheet(
    path(
      'M60 60H420C470 60 500 90 500 140V210C500 260 470 280 430 280H240V230H420C440 230 450 220 450 200V150C450 126 438 112 414 112H60Z',
      'item',
    ),
    path('M250 120H400V222H250Z', 'part'),
    path('M266 136H384M266 150H384', 'detail'),
    path('M318 222V120M342 222V120', 'hidden'),
    path('M318 230V280M342 230V280', 'hidden'),
    place(330, 318, boltSide(30, 16), 180),
    arrow(390, 376, 390, 306, 18),
    RIGHT,
  );
}

/** The rail from its end, opened: the lance goes in by the plug hole and waxes round the rivet nuts. */
function railWax(): string {
  return sheet(
    path('M60 110H560C580 110 590 120 590 140V250C590 270 580 280 560 280H60Z', 'part'),
    path('M76 126H556C568 126 574 132 574 144V246C574 258 568 264 556 264H76Z', 'back'),
    ...[280, 440].map(
      (x) =>
        box(x - 8, 126, 16, 44, 'item', 2) +
        path(`M${x - 20} 110H${x + 20}V96H${x - 20}Z`, 'part') +
        path(`M${x - 8} 136L${x + 8} 140M${x - 8} 146L${x + 8} 150M${x - 8} 156L${x + 8} 160`, 'detail'),
    ),
    path('M240 96V40H480V96', 'shade'),
    circle(60, 196, 30, 'shade'),
    path('M-10 330C20 300 20 220 60 200C160 190 220 200 330 200', 'bold'),
    circle(338, 200, 8, 'item'),
    ...[-60, -30, 0, 30, 60, 120, 150, 210, 240].map((turn) =>
      place(338, 200, path('M14 0H40', 'detail'), turn),
    ),
    place(150, 340, circle(0, 0, 24, 'item') + circle(0, 0, 12, 'part')),
    arrow(120, 318, 88, 252, 14),
    RIGHT,
  );
}

/** File names under the guide's `pictures/`. */
export const sideAwning: Readonly<Record<string, string>> = {
  rail: rail(),
  drill: drillTwice(),
  'rivet-nut': rivetNut(),
  bracket: bracket(),
  lift: lift(),
  lock: lock(),
  'rail-wax': railWax(),
};
