/** The drawings of the swivel seat guide. Marks in `guide.md` are fractions of these 640 × 400 boxes. */
import {
  boltSide,
  clipHead,
  crossHead,
  gripHand,
  lobeHead,
  locator,
  palmHand,
  pinchHand,
  plug,
  ratchet,
  smallPlug,
} from './hardware.ts';
import { arrow, box, cable, circle, type Ink, path, place, sheet, turnArrow, way } from './pen.ts';

const SEAT = locator(592, 316, 0.75, 0.3);

/** The seat from its left side, facing left; the front foot of the rail stands at the origin. */
const seatSide = (ink: Ink = 'part'): string =>
  path(
    'M-10 -70C-24 -70 -28 -50 -16 -42L150 -26C180 -26 190 -40 196 -60L230 -220C234 -240 212 -250 202 -236L156 -84C150 -74 140 -70 128 -70Z',
    ink,
  ) +
  path('M206 -244C200 -262 206 -282 222 -282C240 -282 244 -258 236 -240Z', ink) +
  path('M-14 -44L150 -28M170 -96L208 -224', 'detail') +
  box(-6, -26, 182, 12, 'back', 3) +
  path('M0 -14V0H20V-14M150 -14V0H170V-14', 'part');

const seatBox = (x: number, y: number): string =>
  path(`M${x} ${y}H${x + 210}L${x + 222} ${y + 110}H${x - 12}Z`, 'back') + path(`M20 ${y + 110}H600`, 'bold');

function skirt(): string {
  return sheet(
    path('M210 30C220 16 420 16 430 30L444 176H196Z', 'back'),
    path('M180 176C160 190 164 220 190 224H450C476 220 480 190 460 176Z', 'part'),
    path('M210 200H430', 'detail'),
    path('M170 226H470L484 250H156Z', 'back'),
    path('M126 244H514L530 352H110Z', 'item'),
    path('M146 262H494M140 336H502', 'detail'),
    crossHead(140, 322, 13),
    crossHead(500, 322, 13),
    clipHead(210, 250, 10),
    clipHead(320, 250, 10),
    clipHead(430, 250, 10),
    way(({ arrow }) => arrow(270, 350, 256, 394, 18) + arrow(370, 350, 384, 394, 18)),
    SEAT,
  );
}

function seatBolts(): string {
  const rail = (x: number): string =>
    box(x - 20, 50, 40, 310, 'back', 6) +
    path(`M${x - 8} 96V318M${x + 8} 96V318`, 'detail') +
    lobeHead(x, 80, 16) +
    lobeHead(x, 332, 16);
  return sheet(
    box(140, 30, 300, 350, 'part', 10),
    path('M190 120H390V300H190Z', 'detail'),
    rail(218),
    rail(362),
    arrow(290, 60, 290, 20, 14),
    place(514, 340, ratchet(0, 0)),
    path('M508 340H520V368L514 374L508 368Z', 'item'),
    way(({ turn }) => turn(362, 80, 34, 40, -120)),
    path('M380 96L494 330', 'hidden'),
    SEAT,
  );
}

function tipped(): string {
  return sheet(
    seatBox(190, 280),
    place(352, 268, place(-160, 0, seatSide()), 34),
    gripHand(226, 138, 118),
    cable('M236 284C230 262 232 256 240 246'),
    place(238, 232, smallPlug(0, 0, -60)),
    cable('M280 284C278 274 284 270 292 270'),
    place(300, 264, smallPlug(0, 0, -40)),
    arrow(150, 260, 118, 196, 18),
    place(128, 330, plug(1)),
    path('M84 300C84 290 96 290 108 296', 'bold'),
    arrow(110, 300, 110, 268, 10),
    path('M146 318L226 250', 'hidden'),
    SEAT,
  );
}

function heater(): string {
  return sheet(
    path('M60 60H580C600 60 606 74 600 90L560 330H80L40 90C34 74 40 60 60 60Z', 'part'),
    path('M90 90H550L530 190H110Z', 'back'),
    path('M120 110H520M124 130H516M128 150H512M132 170H508', 'detail'),
    box(80, 208, 480, 26, 'back', 12),
    box(90, 290, 460, 26, 'back', 12),
    place(360, 226, plug(1.8)),
    box(360, 206, 60, 40, 'part', 4),
    path('M390 206V190H430V150', 'bold'),
    way(({ arrow }) => arrow(300, 360, 210, 360, 18)),
    SEAT,
  );
}

function seatOut(): string {
  return sheet(
    seatBox(170, 290),
    place(216, 232, seatSide('item'), 0, 0.8),
    palmHand(206, 222, 0, true),
    palmHand(356, 226),
    path('M530 20C560 60 572 120 572 180V390', 'bold'),
    path('M544 20C574 60 586 120 586 180V390', 'detail'),
    arrow(120, 200, 120, 120, 20),
    arrow(470, 240, 550, 240, 20),
    locator(8, 8, 0.75, 0.3),
  );
}

function adapter(): string {
  return sheet(
    box(150, 36, 340, 328, 'back', 10),
    box(170, 56, 300, 288, 'item', 14),
    circle(320, 200, 118, 'part'),
    circle(320, 200, 96, 'detail'),
    circle(320, 200, 40, 'shade'),
    ...[
      [198, 84],
      [442, 84],
      [198, 316],
      [442, 316],
    ].map(([x = 0, y = 0]) => lobeHead(x, y, 16)),
    path('M462 190H560C576 190 576 214 560 214H462', 'part'),
    arrow(320, 140, 320, 104, 14),
    path('M222 100L418 300M418 100L222 300', 'hidden'),
    locator(8, 8, 0.75, 0.3),
  );
}

function loop(): string {
  return sheet(
    path('M100 230H270V250H100ZM370 230H540V250H370Z', 'back'),
    path('M120 250V370M520 250V370', 'bold'),
    path('M110 196H280V222H110ZM360 196H530V222H360Z', 'item'),
    path('M268 190H292V262H280V204H268ZM372 190H348V262H360V204H372Z', 'part'),
    cable('M320 372V220C320 160 250 160 250 118C250 76 330 74 362 100C388 122 402 84 446 62'),
    turnArrow(320, 296, 56, 160, 40),
    SEAT,
  );
}

function seatOn(): string {
  return sheet(
    seatBox(190, 286),
    box(186, 270, 218, 14, 'item', 4),
    box(210, 258, 170, 12, 'item', 4),
    place(226, 258, seatSide(), 0, 0.85),
    place(232, 300, boltSide(34, 9), 180),
    place(366, 300, boltSide(34, 9), 180),
    path('M196 276H126C114 276 110 286 118 290', 'bold'),
    turnArrow(296, 30, 74, 150, 30),
    place(110, 296, pinchHand(0, 0, 128, false)),
    SEAT,
  );
}

/** File names under the guide's `pictures/`. */
export const swivelSeat: Readonly<Record<string, string>> = {
  skirt: skirt(),
  'seat-bolts': seatBolts(),
  tipped: tipped(),
  heater: heater(),
  'seat-out': seatOut(),
  adapter: adapter(),
  loop: loop(),
  'seat-on': seatOn(),
};
