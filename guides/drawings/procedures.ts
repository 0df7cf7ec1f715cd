/** The drawings of the shared procedures. Marks in the procedures are fractions of these 640 × 400 boxes. */
import { boltSide, clipHead, firTree, hexHead, lever, lobeHead, smallPlug } from './hardware.ts';
import { box, cable, circle, closer, ellipse, path, place, sheet, turnArrow, way } from './pen.ts';
import { lampLines, lampSide, rearCover, tailLampSkin, wicketRear, wicketSide } from './wicket.ts';

/** A grab handle above the door of the load space, from inside; the roof's edge runs above it. */
function handle(): string {
  return sheet(
    path('M0 0H640V56C420 40 220 40 0 56Z', 'back'),
    path('M0 56C220 40 420 40 640 56V96C420 82 220 82 0 96Z', 'part'),
    path('M96 400V200C96 160 110 140 150 136M640 128C440 118 280 120 150 136', 'bold'),
    path('M116 400V210C116 176 126 160 160 156C290 142 440 138 640 148', 'detail'),
    path('M116 400V210C116 176 126 160 160 156C290 142 440 138 640 148V400Z', 'shade'),
    path('M0 240H80M0 256H80M30 256V400', 'detail'),
    path(
      'M140 104H244C258 104 262 114 270 132C294 192 386 192 410 132C418 114 422 104 436 104H540C554 104 558 118 554 134C532 204 466 240 340 240C214 240 148 204 126 134C122 118 126 104 140 104Z',
      'part',
    ),
    box(160, 116, 62, 60, 'shade', 8),
    box(458, 116, 62, 60, 'shade', 8),
    lobeHead(191, 146, 17),
    lobeHead(489, 146, 17),
    path('M160 180L148 220C148 228 220 228 232 220L222 180Z', 'item'),
    path('M458 180L448 220C460 228 532 228 532 220L520 180Z', 'item'),
    turnArrow(108, 182, 34, 300, 420),
    way(({ arrow }) => arrow(340, 262, 340, 340, 20)),
  );
}

/** The roof edge, the side rail and the wall in section, seen from behind; the load space is left below. */
function lining(): string {
  return sheet(
    path('M0 34C200 18 430 18 540 52C584 66 602 96 606 160V400H640V0H0Z', 'back'),
    path('M0 34C200 18 430 18 540 52C584 66 602 96 606 160V400', 'bold'),
    path('M0 50C200 36 420 36 512 62V118H566V168C574 150 572 110 540 84', 'detail'),
    path('M512 62H540C556 76 566 100 566 168H540V118H512Z', 'shade'),
    path('M566 196V400H590V196Z', 'part'),
    path('M566 240H590M566 300H590', 'detail'),
    path(
      'M0 96C160 80 260 84 320 110C380 138 424 186 446 258L430 266C408 202 366 156 312 128C256 102 160 98 0 114Z',
      'item',
    ),
    path('M0 56C200 42 400 46 470 66C500 76 508 96 512 118', 'hidden'),
    path('M250 40V108C250 124 278 124 278 108V40', 'bold'),
    ellipse(388, 52, 9, 5, 'shade'),
    place(398, 138, firTree(), 24),
    path('M392 92L388 62', 'hidden'),
    ellipse(490, 60, 9, 5, 'shade'),
    cable('M150 42C150 60 176 70 166 92'),
    place(164, 116, smallPlug(0, 0, 90)),
    box(120, 104, 44, 12, 'part', 3),
    path('M0 384H560M40 384V400M140 384V400M240 384V400M340 384V400M440 384V400', 'detail'),
    way(({ arrow }) => arrow(300, 166, 262, 236, 18)),
  );
}

/** The left lamp in its corner of the body, with the tailgate open; `x,y` of the view is the left upper corner. */
const LAMP = [62, 134, 3.1] as const;

function tailLamp(): string {
  return sheet(
    closer(...LAMP, wicketRear({ open: true, leftLamp: false })),
    closer(...LAMP, [168, 194].map((y) => hexHead(161, y, 4.6)).join('')),
    path('M150 120L132 146M150 316L132 340', 'hidden'),
    cable('M246 220C262 236 250 262 232 268'),
    place(238, 286, smallPlug(0, 0, 90)),
    place(-62, 24, closer(...LAMP, path(tailLampSkin, 'item') + lampLines)),
    way(({ arrow }) => arrow(132, 236, 74, 316, 22)),
  );
}

function corner(): string {
  const [x, y, scale] = [436, 190, 3] as const;
  return sheet(
    closer(x, y, scale, wicketSide(path(lampSide, 'shade'))),
    place(430, 164, boltSide(30, 12)),
    way(({ turn }) => turn(430, 150, 34, 300, 180)),
    ...[
      [342, 220],
      [354, 272],
      [352, 336],
    ].map(([sx = 0, sy = 0]) => lobeHead(sx, sy, 14)),
  );
}

function rearOff(): string {
  return sheet(
    closer(0, 100, 1, wicketRear({ open: true, cover: false })),
    cable('M326 186C330 210 318 224 326 238'),
    place(326, 250, smallPlug(0, 0, 90)),
    place(32, 54, closer(0, 0, 0.9, rearCover())),
    box(274, 276, 92, 26, 'back', 4),
    ...[196, 258, 320, 382, 444].map((x) => clipHead(x, 352, 11)),
    way(({ arrow }) => arrow(122, 330, 70, 392, 24) + arrow(518, 330, 570, 392, 24)),
  );
}

function eyeCap(): string {
  return sheet(
    closer(392, 226, 3.4, wicketRear()),
    circle(366, 212, 52, 'shade'),
    circle(366, 212, 30, 'back'),
    path('M348 212H384M366 194V230', 'detail'),
    path('M318 226C304 240 292 240 282 230', 'bold'),
    circle(240, 220, 56, 'item'),
    circle(240, 220, 42, 'item'),
    path('M228 274H252V286H228Z', 'shade'),
    lever(242, 280, 32),
    way(({ turn }) => turn(310, 146, 62, 330, 210)),
  );
}

/** File names under `procedures/pictures/`. */
export const procedures: Readonly<Record<string, string>> = {
  handle: handle(),
  lining: lining(),
  'tail-lamp': tailLamp(),
  corner: corner(),
  'rear-off': rearOff(),
  'eye-cap': eyeCap(),
};
