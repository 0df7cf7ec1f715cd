/**
 * The Teal Skerry as its drawings show it: from the port side, the bow to the left, and the hull in section from aft.
 * Closer pictures are parts of these 640 × 400 views.
 */
import { accentLine, box, circle, ellipse, path, rod } from './pen.ts';

const HULL = 'M36 164C150 196 420 204 572 192L566 300C520 322 300 330 200 318C120 306 70 240 36 164Z';

const outboard =
  path('M574 176H600V214H574Z', 'back') +
  path(
    'M580 128C580 112 596 106 616 108C632 110 636 122 636 140L630 186H590C582 170 580 150 580 128Z',
    'part',
  ) +
  path('M588 132H632M590 150H632', 'detail') +
  path('M600 186H624L620 312H634L628 330H596L594 322L604 312Z', 'part') +
  path(
    'M592 326C580 314 582 300 592 306C600 312 600 320 596 326C604 336 598 350 590 348C582 344 586 334 592 326Z',
    'back',
  );

const wheelhouse =
  path('M190 188L210 104H344L356 200H190Z', 'part') +
  path('M202 96H356L350 108H204Z', 'back') +
  path('M222 118H262V160H214ZM274 118H322L326 160H274Z', 'shade') +
  path('M332 118V196', 'detail') +
  path('M290 96V40M284 48H300', 'bold') +
  path('M54 166V138C100 134 150 136 196 148M96 176V137M140 184V137', 'detail');

const cradle =
  path('M20 376H620', 'detail') +
  rod(180, 376, 200, 316, 12, 'back') +
  rod(236, 376, 216, 318, 12, 'back') +
  box(172, 366, 72, 10, 'shade', 2) +
  rod(496, 376, 512, 316, 12, 'back') +
  rod(548, 376, 532, 316, 12, 'back') +
  box(488, 366, 72, 10, 'shade', 2);

/** From the port side, on its cradle; `work` is drawn over the hull, as through its side. */
export const skerrySide = (work = ''): string =>
  cradle +
  outboard +
  wheelhouse +
  path(HULL, 'part') +
  path('M48 184C160 214 420 220 571 210', 'detail') +
  path('M96 254C180 292 420 302 568 280', 'detail') +
  work +
  path('M366 196V168H556V192', 'detail');

/** Through the side into the cockpit: its sole, the bilge locker with its lid, and the housing in the bottom. */
export const bilge = (): string =>
  path('M356 222C420 228 500 226 560 222L558 302C500 314 420 318 356 320C350 290 362 260 356 222Z', 'shade') +
  path('M356 250H560', 'bold') +
  box(404, 244, 96, 11, 'item', 3) +
  path('M400 255V312M504 255V308', 'detail') +
  path('M356 320C420 318 500 314 558 302L559 312C500 324 420 328 355 328Z', 'part') +
  box(440, 292, 22, 24, 'item', 2) +
  path('M431 324H472L468 334H436Z', 'item');

/** From aft, starboard to the right: the keel, the bottom with its strakes, the sole with the locker under it. */
export const skerrySection = (): string =>
  path(
    'M150 340C180 350 196 350 220 340L600 262C616 190 622 120 628 20H612C606 110 600 180 588 250L216 326C196 334 176 334 154 326L20 296V312Z',
    'part',
  ) +
  path('M150 340L160 384H210L220 340', 'part') +
  path('M430 297L446 308L468 289', 'part') +
  path('M596 262C604 190 610 120 616 20M20 304L152 333C178 342 196 342 218 333L596 256', 'detail') +
  path('M20 96H600', 'detail') +
  path('M20 96H150V108H20ZM480 96H598L596 108H480Z', 'back') +
  path('M150 96V150H162V108M480 96V150H468V108', 'bold') +
  path('M250 318V240H282V312Z', 'back');

/** The boat from above in its after part, the bow up: the wheelhouse, the cockpit between its coamings, the engine. */
export const skerryDeck = (): string =>
  path('M92 0C84 120 84 250 100 366H540C556 250 556 120 548 0Z', 'part') +
  path('M132 0C126 110 126 240 138 336H502C514 240 514 110 508 0Z', 'back') +
  path('M132 0H508V40H132Z', 'part') +
  path('M286 8H354V40H286Z', 'shade') +
  path('M154 40V336M486 40V336', 'detail') +
  path('M132 62H508', 'detail') +
  box(286, 340, 68, 60, 'part', 12) +
  path('M300 352H340M300 366H340', 'detail') +
  circle(118, 320, 7, 'shade') +
  circle(522, 320, 7, 'shade');

/** The transducer's housing from the side: nut below its thread, flange across `x`, standing on `y`. */
export const housingSide = (x: number, y: number): string =>
  box(x - 10, y - 40, 20, 44, 'item', 2) +
  box(x - 20, y - 16, 40, 12, 'part', 2) +
  ellipse(x, y + 8, 26, 7, 'item');

/** A cable tie round a cable, across it. */
export const tie = (x: number, y: number): string => accentLine(`M${x} ${y - 9}V${y + 9}`, false, 4);
